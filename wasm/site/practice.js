// Practice: doors that can be spoiled for nothing. The clerk holds the door and says
// what is seen; what a learner did is a text kept on this device, one line an act, and
// nothing else is kept.
'use strict';
(() => {
  const byID = id => document.getElementById(id);
  const keep = 'leafwright-practice:'; // then a lesson's name: its session
  const onward = 'leafwright-practice-level'; // of doors drawn by chance, by what was understood
  const files = 'leafwright-lesson:'; // then a name: a lesson that was opened from a file
  const root = document.documentElement;
  let list = null; // what ships with the page
  let now = null; // the lesson on show: name, file, session, shown
  let swing = 0;
  let composed = ''; // the move being composed
  let compose = ''; // and its kind

  const el = (tag, props, ...children) => {
    const e = Object.assign(document.createElement(tag), props);
    e.append(...children.filter(c => c !== null && c !== undefined));
    return e;
  };
  const button = (text, press, props) => {
    const b = el('button', { type: 'button', textContent: text, ...props });
    b.addEventListener('click', press);
    return b;
  };
  const field = (label, input, ...rest) => el('div', { className: 'field' },
    el('label', { htmlFor: input.id, textContent: label }), el('div', { className: 'box long' }, input), ...rest);
  const slide = (label, range, out) => el('div', { className: 'field' }, el('div', { className: 'slide-head' }, el('label', { htmlFor: range.id, textContent: label }), out), range);
  const select = (id, choices, value) => {
    const s = el('select', { id }, ...choices.map(c => el('option', { value: c.kind ?? c.value, textContent: c.name ?? c.label })));
    if (value !== undefined) s.value = value;
    return s;
  };
  const paragraphs = all => all.map(text => el('p', { textContent: text }));
  const picture = svg => document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true);
  // The tools on the picture come with a script of their own.
  let hands = null;
  const handed = new Promise((done, fail) => {
    const script = Object.assign(document.createElement('script'), { src: 'practicehand.js', onerror: () => fail(new Error('This needs a signal the first time.')) });
    script.onload = () => {
      hands = practiceHand({
        el, button, field, select, picture, failed: why => failed(why), ask: (want, q) => ask(want, q), question: () => about(), composed: () => composed,
        form: (move, kind) => fillForm(move, kind), make: () => work(), redraw: () => again(), swinger: () => swinger(),
      });
      done();
    };
    document.head.append(script);
  });
  const say = text => { byID('practice-state').textContent = text; };
  const dark = () => root.dataset.theme === 'dark' || (root.dataset.theme !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches);

  // Storage may be forbidden; then a session lives as long as the page.
  const only = new Map();
  const read = key => { try { return localStorage.getItem(key) ?? only.get(key) ?? ''; } catch { return only.get(key) ?? ''; } };
  const write = (key, text) => {
    only.set(key, text);
    try { localStorage.setItem(key, text); } catch { say('This browser does not keep what you do here. Save it for your teacher before you leave.'); }
  };
  const kept = prefix => {
    const names = new Set([...only.keys()].filter(k => k.startsWith(prefix)));
    try {
      for (let i = 0; i < localStorage.length; i++) if (localStorage.key(i).startsWith(prefix)) names.add(localStorage.key(i));
    } catch { /* only what is here */ }
    return [...names].map(k => k.slice(prefix.length)).sort();
  };
  const save = (name, text) => {
    const a = el('a', { download: name, href: URL.createObjectURL(new Blob([text], { type: 'text/plain' })) });
    a.click();
    setTimeout(() => URL.revokeObjectURL(a.href), 10000);
  };
  const fetched = async name => {
    const kept = read(files + name);
    if (kept) return kept;
    if (!/^[\w-]+$/.test(name)) throw new Error(`There is no lesson called ${name} here: open its file first.`);
    const answer = await fetch('lessons/' + name + '.json');
    if (!answer.ok) throw new Error(`There is no lesson called ${name} here: open its file first.`);
    return answer.text();
  };
  const speech = () => {
    const j = clerk.job(false);
    return { inches: !!j?.inches, words: j?.words ?? 'UK', dark: dark() };
  };
  // Both pictures where there is room for them; else the front, and the plan while the
  // leaf is swung. A door with its figures, or under a tool, wants more room.
  const size = (figures, open) => {
    const box = getComputedStyle(byID('practice'));
    const all = byID('practice').clientWidth - parseFloat(box.paddingLeft) - parseFloat(box.paddingRight);
    const beside = innerWidth >= 1000; // what is done stands beside the picture, not under it
    const width = Math.max(280, beside ? all - 444 : all);
    byID('practice').classList.toggle('tall', figures && !beside);
    const part = beside ? (hands.tool() && !figures ? 0.6 : 0.7) : figures ? 0.6 : hands.tool() ? 0.5 : 0.38;
    const height = Math.round(Math.min(width * 1.4, innerHeight * part));
    return { width, height, show: width >= 560 ? '' : open > (figures ? 1 : 0.2) ? 'plan' : 'front' };
  };
  const ask = (want, question) => {
    const q = { ...speech(), swing, ...question };
    const ends = /"(done|give up)"/.test(q.act ?? ''); // then the figures are shown
    return clerk.ask(want, { ...q, ...size(ends || !!now?.data?.over, q.swing ?? 2) });
  };

  // Shows one of the two halves of the dialog and what is in it.
  const show = (title, picture, ...body) => { // picture is what stands under it, or null for none at all
    const focus = document.activeElement?.id;
    byID('practice-title').textContent = title;
    byID('practice').classList.toggle('plain', !picture);
    byID('practice-picture').replaceChildren(...picture ? [hands.view, picture] : []);
    byID('practice-body').replaceChildren(...body.filter(Boolean));
    byID('practice-back').hidden = !now;
    const again = focus && byID(focus);
    if (again && again !== document.activeElement) again.focus({ preventScroll: true });
  };
  const failed = why => say(why.message);

  // The path: the lessons, the levels, the explanations.
  const stateOf = session => {
    if (!session) return '';
    if (session.includes('{"act": "done"}')) return 'done';
    return session.includes('{"act": "give up"}') ? 'looked up' : 'begun';
  };
  // take opens a file: a lesson, or what someone did in one.
  const take = async f => {
    const text = await f.text();
    if (/^\s*{\s*"leafwright_session"/.test(text)) { handedIn(text); return; }
    const called = f.name.replace(/\.[^.]*$/, '');
    say('Reading the lesson');
    try {
      const data = await ask('practice', { do: 'begin', name: called, lesson: text, session: '' });
      if (data.fault) { say(`${f.name} cannot be used as a lesson as it is:\n${data.fault}`); return; }
      write(files + called, text);
      begin(called);
    } catch (why) { failed(why); }
  };
  const path = async () => {
    now = null;
    list ??= await (await fetch('lessons/list.json')).json();
    const row = (name, title, press) => {
      const state = stateOf(read(keep + name));
      const b = button('', press, { id: 'practise-' + name.replaceAll(' ', '-'), className: 'lesson' });
      b.append(el('span', { textContent: title }), el('span', { className: 'quiet', textContent: state }));
      return el('li', {}, b);
    };
    const name = e => e.file.replace(/\.json$/, '');
    const own = kept(files);
    const attempts = kept(keep).filter(n => n.startsWith('attempt '));
    const level = select('practice-level', [1, 2, 3, 4, 5, 6].map(n => ({ value: String(n), label: ['One fault, a new door', 'One fault, an older door', 'Two faults, a new door', 'Two faults, an old door', 'Three faults', 'Three faults, an old door, faint'][n - 1] })), read(onward) || '1');
    const file = el('input', { type: 'file', id: 'practice-file', accept: '.json,.txt,application/json,text/plain', hidden: true, tabIndex: -1, ariaLabel: 'Lesson file' });
    file.addEventListener('change', () => { if (file.files[0]) take(file.files[0]); });
    show('Practice', null,
      el('p', { textContent: 'Doors that can be spoiled for nothing. Try the door, read it where you like, say what is wrong, and put it right: a cut is a cut here too.' }),
      el('h3', { textContent: 'Lessons' }),
      el('ol', { className: 'lessons' }, ...list.filter(e => !e.why).map((e, i) => row(name(e), `${i + 1}. ${e.title}`, () => begin(name(e))))),
      el('h3', { textContent: 'A door of your own' }),
      el('div', { className: 'row practice-own' }, field('How hard', level), button('Draw a door', () => begin('attempt ' + level.value + ' ' + (1 + crypto.getRandomValues(new Uint32Array(1))[0] % 1000000)), { id: 'practice-draw', className: 'main' })),
      attempts.length ? el('ul', { className: 'lessons' }, ...attempts.map(n => row(n, 'Door ' + n.split(' ')[2] + ', level ' + n.split(' ')[1], () => begin(n)))) : null,
      own.length ? el('h3', { textContent: 'From your teacher' }) : null,
      own.length ? el('ul', { className: 'lessons' }, ...own.map(n => row(n, n, () => begin(n)))) : null,
      el('div', { className: 'row' }, button('Open a lesson file', () => file.click(), { id: 'practice-open' }), file),
      el('h3', { textContent: 'Why it is so' }),
      el('ul', { className: 'lessons' }, ...list.filter(e => e.why).map(e => row(name(e), e.title, () => explain(name(e))))));
    say('');
  };

  // A lesson.
  const begin = async name => {
    try {
      const attempt = name.startsWith('attempt ');
      say(attempt ? 'Looking for a door that can be put right' : 'Fetching the lesson');
      now = { name, lesson: attempt ? '' : await fetched(name), session: read(keep + name), upto: -1 };
      composed = compose = '';
      swing = 0;
      hands.drop();
      await again();
      byID('practice').scrollTop = 0;
    } catch (why) { failed(why); }
  };
  // What a learner handed in is looked at, and not kept among one's own.
  const handedIn = async text => {
    try {
      let head;
      try { head = JSON.parse(text.trimStart().split('\n')[0]); } catch { throw new Error('This is no session as it is: its first line cannot be read.'); }
      const attempt = String(head.lesson).startsWith('attempt ');
      hands.drop();
      swing = 0;
      now = { name: head.lesson, lesson: attempt ? '' : await fetched(head.lesson), session: text, upto: -1, theirs: head.learner || 'a learner' };
      await again();
    } catch (why) { failed(why); }
  };
  const about = () => ({ lesson: now.lesson, name: now.name, session: now.session, upto: now.upto, tool: now.data?.over || now.theirs !== undefined ? '' : hands.tool(), theirs: now.theirs !== undefined });
  // One question after the other; an act that is asked for while one is done is none, a
  // button pressed twice.
  let line = Promise.resolve();
  let acting = false;
  const send = question => {
    if (question.do === 'act') {
      if (acting) return line;
      acting = true;
    }
    byID('practice-body').ariaBusy = 'true';
    const before = line;
    const mine = before.then(() => sent(question)).catch(failed).then(() => {
      if (question.do === 'act') acting = false;
      if (line === mine) byID('practice-body').ariaBusy = 'false';
    });
    line = mine;
    return mine;
  };
  const sent = async question => {
    const mine = now;
    if (!mine || mine.explain) return;
    const data = await ask('practice', { ...about(), ...question });
    if (data.fault || data.refused) {
      say(data.fault || data.refused);
      if (!mine.data && now === mine) now = null; // what was on show stays
      return;
    }
    if (mine.theirs === undefined) {
      if (data.session !== mine.session) {
        write(keep + mine.name, data.session);
        if (data.next) write(onward, String(data.next));
      }
      mine.session = data.session;
    }
    mine.data = data;
    if (now !== mine) return;
    say('');
    lesson(data);
  };
  const again = () => send({ do: 'begin' });
  const act = (a, more) => {
    now.upto = -1;
    return send({ do: 'act', act: JSON.stringify(a), ...more });
  };

  const look = () => {
    const q = { ...about(), do: 'begin' };
    ask('look', q).then(data => { if (now && !data.fault) hands.put(data.svg, data.hand); }, () => {});
  };
  const swinger = () => {
    const range = el('input', { type: 'range', id: 'practice-swing', min: 0, max: 90, step: 1, value: swing });
    const out = el('output', { htmlFor: 'practice-swing', textContent: swing + '°' });
    range.addEventListener('input', () => { swing = Number(range.value); out.textContent = swing + '°'; look(); });
    return slide('Swing the leaf', range, out);
  };
  const fold = (id, title, ...body) => el('details', { id, name: 'practice-do' }, el('summary', {}, el('h3', { textContent: title })), ...body);
  const passage = p => [el('h3', { textContent: p.title }), ...paragraphs(p.lines)];

  const readFold = data => {
    const kinds = el('select', { id: 'practice-read-kind' },
      el('optgroup', { label: 'With the leaf hung' }, ...data.reads.filter(r => r.first).map(r => el('option', { value: r.kind, textContent: r.name }))),
      el('optgroup', { label: 'Of leaf, frame and hinges' }, ...data.reads.filter(r => !r.first).map(r => el('option', { value: r.kind, textContent: r.name }))));
    kinds.value = now.kind ?? data.reads[0].kind;
    const box = el('div', { id: 'practice-read' });
    const needs = async () => {
      now.kind = kinds.value;
      const n = await ask('form', { ...about(), do: 'read', kind: kinds.value });
      if (n.fault) { say(n.fault); return; }
      const was = now.places ?? {};
      const inputs = {};
      const text = id => field('', inputs[id] = el('input', { type: 'text', id: 'practice-' + id, inputMode: n.unit === 'mm' ? 'decimal' : 'text', autocomplete: 'off', spellcheck: false, value: was[id] ?? '' }));
      const side = n.sides.length ? select('practice-side', n.sides, n.sides.some(s => s.kind === was.side) ? was.side : undefined) : null;
      const hinge = n.hinges ? select('practice-hinge', Array.from({ length: n.hinges }, (_, i) => ({ value: String(i + 1), label: i === 0 ? 'top' : i === n.hinges - 1 ? 'bottom' : 'middle' }))) : null;
      const angle = n.angle ? el('input', { type: 'text', id: 'practice-angle', inputMode: 'decimal', value: '45' }) : null;
      // where a place is counted from, and one to begin with: the middle of that side
      const places = [n.at && text('at'), n.span && text('from'), n.span && text('to')].filter(Boolean);
      const along = () => {
        const across = side ? ['head', 'floor'].includes(side.value) : n.across;
        const where = across ? 'across from the hinges' : 'up from the floor';
        places.forEach((p, i) => {
          const input = p.querySelector('input');
          const said = n.at && i === 0 ? where : (i === (n.at ? 1 : 0) ? 'from, ' : 'to, ') + where;
          p.querySelector('label').textContent = `${said[0].toUpperCase()}${said.slice(1)}, ${n.unit}`;
          const usual = said.startsWith('from') ? '0' : across ? n.over : n.up;
          if (!input.value || input.value === input.dataset.usual) input.value = usual;
          input.dataset.usual = usual;
        });
      };
      side?.addEventListener('change', along);
      along();
      box.replaceChildren(...[
        side && field('Where', side), hinge && field('Hinge', hinge),
        ...places,
        angle && field('At an angle of, °', angle),
        n.sign && el('p', { className: 'quiet', textContent: n.sign }),
        button('Read it', () => {
          const a = { act: 'read', kind: kinds.value };
          if (side) a.side = side.value;
          if (hinge) a.hinge = Number(hinge.value);
          const places = {};
          for (const [id, input] of Object.entries(inputs)) { a[id] = 0; places[id] = input.value; }
          if (angle) a.angle = Number(angle.value.replace(',', '.'));
          now.places = { ...now.places, ...places, side: a.side };
          act(a, places);
        }, { id: 'practice-read-do', className: 'main' }),
      ].filter(Boolean));
    };
    kinds.addEventListener('change', needs);
    const d = fold('practice-reading', 'Read it', field('What', kinds), box);
    d.addEventListener('toggle', () => { if (d.open && !box.childElementCount) needs(); });
    return d;
  };

  const nameFold = data => {
    const boxes = data.faults.map(f => el('label', { className: 'check' },
      el('input', { type: 'checkbox', id: 'fault-' + f.kind.replaceAll(' ', '-'), value: f.kind, checked: !!now.ticked?.includes(f.kind) }), el('span', { textContent: f.name })));
    const d = fold('practice-naming', 'Say what is wrong', el('fieldset', { className: 'faults' }, el('legend', { className: 'unseen', textContent: 'Faults' }), ...boxes),
      button('That is what is wrong', () => {
        if (now.ticked?.length) act({ act: 'name', faults: now.ticked });
        else say('Tick what you think is wrong first.');
      }, { id: 'practice-name-do', className: 'main' }));
    d.addEventListener('change', () => { now.ticked = [...d.querySelectorAll('input:checked')].map(c => c.value); });
    return d;
  };

  // The form of a move is filled in step by step: what was typed last is in it before it is
  // made. The move's own text is put in as it is: its numbers are to the last digit.
  let filling = Promise.resolve();
  let unfit = false; // what stands in it cannot be made
  const work = () => filling.then(() => {
    if (unfit || !composed) return;
    const act = `{"act": "move", "move": ${composed}}`;
    composed = '';
    now.upto = -1;
    send({ do: 'act', act });
  });
  // fillForm puts a move into the form, or opens it for a kind of move.
  let fillForm = () => {};
  const moveFold = data => {
    const kinds = select('practice-move-kind', data.moves, compose || undefined);
    const box = el('div', { id: 'practice-move', className: 'fields' });
    const told = el('p', { id: 'practice-move-said' });
    // stays as it is while the fields are put anew: it may just be pressed
    const done = button('Make it, for keeps', work, { id: 'practice-move-do', className: 'main' });
    let putting = false; // fields that go away tell nothing
    const showMove = question => (filling = filling.then(() => showing(question)).catch(failed));
    const showing = async ({ fresh, ...question }) => {
      if (fresh) composed = '';
      compose = kinds.value;
      const n = await ask('form', { ...about(), do: 'move', kind: kinds.value, move: composed, ...question });
      if (n.fault) { say(n.fault); return; }
      composed = n.move;
      unfit = n.bad;
      const at = document.activeElement;
      const focus = at?.id;
      const typing = box.contains(at) && at.type === 'text' && at.value !== at.defaultValue && at.id !== 'practice:' + question.path ? at.value : null; // not told yet
      putting = true;
      box.replaceChildren(...n.fields.map(f => {
        const id = 'practice:' + f.path;
        let input;
        if (f.choices.length) input = select(id, f.choices, f.value);
        else if (f.kind === 'flag') input = el('input', { type: 'checkbox', id, checked: f.value === 'true' });
        else input = el('input', { type: 'text', id, defaultValue: f.value, inputMode: f.unit === 'ft in' ? 'text' : 'decimal', autocomplete: 'off', spellcheck: false });
        const tell = () => {
          if (putting) return;
          input.defaultValue = input.value; // told
          showMove({ path: f.path, value: f.kind === 'flag' ? String(input.checked) : input.value });
        };
        input.addEventListener('change', tell);
        if (input.type === 'text') input.addEventListener('blur', () => { if (input.value !== input.defaultValue) tell(); });
        if (f.fault) input.setAttribute('aria-invalid', 'true');
        return field(f.unit ? `${f.label}, ${f.unit}` : f.label, input, f.help ? el('p', { className: 'help', textContent: f.help }) : null, f.fault ? el('p', { className: 'fault', role: 'alert', textContent: f.fault }) : null);
      }));
      if (!done.isConnected) d.append(told, done);
      told.textContent = n.said;
      done.disabled = n.bad;
      hands.told(n.said, !n.bad);
      const again = focus && byID(focus);
      if (again && again !== document.activeElement) again.focus({ preventScroll: true });
      if (again && typing !== null) again.value = typing;
      putting = false;
    };
    kinds.addEventListener('change', () => showMove({ fresh: true }));
    fillForm = (move, kind) => {
      if (!move) d.open = true;
      filling = filling.then(() => {
        compose = kinds.value = move ? JSON.parse(move).do : composed ? compose : kind;
        if (move) composed = move;
        unfit = false;
      });
      if (d.open) showMove({}).then(() => { if (!move) kinds.focus(); });
    };
    const d = fold('practice-working', 'Work on it', field('What', kinds), box);
    d.addEventListener('toggle', () => { if (d.open && !box.childElementCount) showMove({}); });
    return d;
  };

  const handIn = () => {
    const name = el('input', { type: 'text', id: 'practice-learner', autocomplete: 'name', maxLength: 100, value: read('leafwright-learner') });
    return el('div', {}, field('Your name, for your teacher', name), button('Save for your teacher', () => {
      write('leafwright-learner', name.value);
      const [head, ...acts] = now.session.split('\n');
      const learner = name.value.trim();
      save(now.name.replaceAll(' ', '-') + '-session.txt', [JSON.stringify({ ...JSON.parse(head), ...(learner && { learner }) }), ...acts].join('\n'));
    }, { id: 'practice-save' }));
  };

  const words = { try: 'You tried it', read: 'You read it', name: 'You said what is wrong', move: 'You worked on it', hint: 'A hint', done: 'You called it done', 'give up': 'You gave up' };
  const lesson = data => {
    const opened = byID('practice-body').querySelector('details[open]')?.id;
    const shown = now.upto < 0 ? data.number : now.upto;
    const entry = a => [el('h4', { textContent: words[a.deed] }), ...(a.deed === 'done' || a.deed === 'give up' ? [] : paragraphs(a.said))];
    const log = el('ol', { className: 'acts', id: 'practice-acts' }, ...data.acts.slice(0, shown).map(a => el('li', {}, ...entry(a))));
    const last = el('div', { className: 'acts', id: 'practice-last', ariaLive: 'polite' }, ...(shown > 0 ? [el('div', {}, ...entry(data.acts[shown - 1]))] : []));
    const still = data.over || now.theirs !== undefined; // nothing more is done to it
    const doing = still ? [] : [
      el('div', { className: 'row' },
        button('Try the door', () => act({ act: 'try' }), { id: 'practice-try', className: 'main' }),
        button('A hint', () => act({ act: 'hint' }), { id: 'practice-hint' })),
      readFold(data), nameFold(data), moveFold(data),
      el('div', { className: 'row' },
        button('It is done', () => act({ act: 'done' }), { id: 'practice-done' }),
        button('Give up and see', () => act({ act: 'give up' }), { id: 'practice-give-up', className: 'plain' }))];
    const step = n => { now.upto = n >= data.number ? -1 : n; again(); };
    const replay = data.number === 0 || !data.over && now.theirs === undefined ? [] : [el('div', { className: 'row replay', role: 'group', ariaLabel: 'Step by step' },
      button('Back a step', () => step(Math.max(0, shown - 1)), { id: 'practice-step-back', disabled: shown === 0 }),
      el('span', { className: 'quiet', textContent: `${shown} of ${data.number}` }),
      button('On a step', () => step(shown + 1), { id: 'practice-step-on', disabled: shown === data.number }))];
    const over = !data.judged ? [] : [
      ...data.judged.flatMap(passage),
      ...(data.after.length ? [el('h3', { textContent: 'Afterwards' }), ...paragraphs(data.after)] : []),
      fold('practice-answer', 'What it was', ...data.answer.flatMap(passage)),
      ...(now.theirs !== undefined ? [] : [handIn(),
        button('Begin again', () => {
          save(now.name.replaceAll(' ', '-') + '-session.txt', now.session); // nothing done is thrown away
          now.session = '';
          now.upto = -1;
          write(keep + now.name, '');
          again();
        }, { id: 'practice-again', className: 'plain' })])];
    const before = fold('practice-before', 'The job', ...paragraphs(data.before));
    before.open = data.number === 0;
    const all = fold('practice-all', `All you did (${data.number})`, log);
    if (still) hands.drop();
    hands.put(data.svg, data.hand);
    show(now.theirs === undefined ? data.title : data.title + ': ' + now.theirs, still ? swinger() : hands.tools(data), before, last, el('p', { id: 'practice-spent', className: 'quiet', textContent: data.spent }),
      ...replay, ...doing, all, ...over);
    if (opened && opened !== 'practice-before' && byID(opened)) byID(opened).open = true;
    if (data.number > (now.told ?? 0)) last.scrollIntoView({ block: 'nearest' });
    now.told = data.number;
  };

  // An explanation, with the door in it to play with.
  const explain = async name => {
    try {
      const text = await fetched(name);
      now = { name, explain: true }; // what is asked from here on is one picture
      let at = null;
      let open = JSON.parse(text).open ?? 0;
      const question = () => ({ do: 'explain', name, lesson: text, at, swing: open });
      const first = await ask('practice', question());
      if (first.fault) { say(first.fault); return; }
      at = first.sliders.map(s => s.at);
      const redraw = () => ask('look', question()).then(d => {
        if (d.fault) return;
        hands.put(d.svg);
        byID('why-watch').replaceChildren(...paragraphs(d.watch));
        d.sliders.forEach((s, i) => { byID('why-says-' + i).textContent = s.says; });
      }, () => {});
      const sliders = first.sliders.map((s, i) => {
        const out = el('output', { id: 'why-says-' + i, htmlFor: 'why-' + i, textContent: s.says });
        const range = el('input', { type: 'range', id: 'why-' + i, min: s.from, max: s.to, step: s.step || 'any', value: s.at });
        range.addEventListener('input', () => { at[i] = Number(range.value); redraw(); });
        return slide(s.label, range, out);
      });
      const turn = el('input', { type: 'range', id: 'why-swing', min: 0, max: 90, step: 0.1, value: open });
      const turned = el('output', { htmlFor: 'why-swing', textContent: open + '°' });
      turn.addEventListener('input', () => { open = Number(turn.value); turned.textContent = open + '°'; redraw(); });
      const watch = el('div', { id: 'why-watch', ariaLive: 'polite' }, ...paragraphs(first.watch));
      hands.drop();
      hands.put(first.svg);
      show(first.title, el('div'), watch, ...sliders, slide('Swing the leaf', turn, turned), ...paragraphs(first.text));
      say('');
      byID('practice').scrollTop = 0;
    } catch (why) { failed(why); }
  };

  const dialog = byID('practice');
  byID('practice-begin').addEventListener('click', async () => {
    dialog.showModal();
    try { await handed; } catch (why) { failed(why); return; }
    const f = window.lessonFile; // opened as a job is
    window.lessonFile = null;
    if (f) {
      await path().catch(failed);
      take(f);
      return;
    }
    if (now && !now.explain) again();
    else path().catch(failed);
  });
  dialog.addEventListener('drop', e => {
    const f = e.dataTransfer.files[0];
    if (!f) return;
    e.preventDefault();
    e.stopPropagation();
    path().then(() => take(f), failed);
  });
  byID('practice-close').addEventListener('click', () => dialog.close());
  byID('practice-back').addEventListener('click', () => path().then(() => byID('practice-title').focus(), failed));
})();
