// The leaf through the year, and what it hangs on: asks the clerk while a section stands
// open, and shows its answer. The first program shows the leaf in the month chosen.
'use strict';
(() => {
  const rest = 300; // how long nothing must change before the clerk is asked anew, ms
  const byID = id => document.getElementById(id);
  const bench = () => byID('stage').contentWindow;
  const el = (tag, text, ...parts) => {
    const e = document.createElement(tag);
    e.textContent = text;
    e.append(...parts);
    return e;
  };

  // A section that asks the clerk while it stands open: gives what asks, unless just that
  // was asked last. ready comes before every look at what stands on the bench.
  const follow = (want, ready, told) => {
    const box = byID(want);
    const state = byID(want + '-state');
    let asked = '';
    let timer = 0;
    const busy = is => { byID(want + '-told').ariaBusy = String(is); };
    // Without data what stands there is out of date, and goes on looking so.
    const put = (text, data) => {
      if (data) told(data);
      if (state.textContent !== text) state.textContent = text;
      busy(!data);
    };
    const failed = why => {
      asked = '';
      const again = el('button', 'Ask again');
      again.type = 'button';
      again.addEventListener('click', ask);
      put(why.message);
      state.append(' ', again);
    };
    const ask = () => {
      const question = box.open && !box.hidden && clerk.job(true);
      if (!question) return; // the frame starts afresh, and will tell
      ready(question);
      delete question.season;
      const now = JSON.stringify(question);
      if (now === asked) return;
      asked = now;
      busy(true);
      if (!state.textContent) state.textContent = 'Working it out';
      clerk.ask(want, question).then(data => put(data.fault || data.said || '', !data.fault && data), failed);
    };
    box.addEventListener('toggle', ask);
    document.addEventListener('changed', e => {
      box.hidden = !e.detail;
      clearTimeout(timer);
      if (box.open && e.detail) timer = setTimeout(ask, rest);
    });
    return ask;
  };

  const said = (as, all) => {
    const of = all.map(l => el(as ? 'li' : 'p', l));
    return as ? [el(as, '', ...of)] : of;
  };
  const parts = all => all.flatMap(p => [...(p.title ? [el('h3', p.title)] : []), ...said(p.as, p.lines)]);

  // A field of the job's form once more: what is done in the one is done in the other.
  const twin = path => {
    const of = () => byID('f:' + path);
    const copy = of().cloneNode(true);
    const text = copy.type === 'text';
    if (copy.options) copy.options[0].text = 'not said';
    const fault = el('p', '');
    const label = el('label', of().labels[0].textContent);
    const box = el('div', '', label, el('div', '', copy), fault);
    copy.id = 's:' + path;
    label.htmlFor = copy.id;
    fault.id = copy.id + ':fault';
    fault.className = 'fault';
    copy.setAttribute('aria-describedby', fault.id);
    box.className = 'field short';
    box.children[1].className = 'box has-unit';
    if (text) box.children[1].append(el('span', '%'));
    if (copy.type === 'checkbox') {
      box.className = '';
      label.className = 'check';
      label.replaceChildren(copy, el('span', label.textContent));
      box.children[1].remove();
    } else if (text) {
      box.children[1].lastChild.className = 'unit';
      box.children[1].lastChild.ariaHidden = 'true';
    }
    const pass = (...types) => types.forEach(type => copy.addEventListener(type, () => {
      of().value = text ? copy.value || '0' : copy.value;
      of().checked = copy.checked;
      of().dispatchEvent(new Event(type));
    }));
    if (text) pass('input', 'blur');
    else pass('change');
    box.follow = () => {
      if (!text || document.activeElement !== copy) copy.value = text && of().value === '0' ? '' : of().value; // not read is no 0 %
      copy.checked = of().checked;
      copy.ariaInvalid = of().ariaInvalid;
      fault.textContent = byID(of().id + ':fault').textContent;
    };
    return box;
  };

  document.addEventListener('DOMContentLoaded', () => {
    const slider = byID('season-month');
    const graph = byID('season-graph');
    const where = byID('season-where');
    let year = null; // the clerk's last answer
    let on = false; // the slider's month is to be drawn
    let drawn = false; // one is
    let frame = 0;

    // The first program's leaf follows the slider, at most once a frame.
    const show = () => {
      const month = year.months[slider.value];
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => {
        if (!on && !drawn) return;
        drawn = on;
        bench().putSeason(on ? month.wider : 0, on ? month.when : '');
      });
      byID('season-says').textContent = slider.ariaValueText = month.says;
      for (const g of graph.querySelectorAll('g')) g.classList.toggle('on', g.dataset.month === slider.value);
      byID('season-now').disabled = byID('headline-now').hidden = !on;
      byID('season-shows').textContent = on ? month.shows : 'Slide to see a month in the drawing.';
    };
    const today = () => year && year.month >= 0 ? year.month : now;
    const back = () => {
      on = false;
      slider.value = today();
      show();
    };

    const told = data => {
      year = data;
      if (!on) slider.value = today();
      metered();
      graph.replaceChildren(document.importNode(new DOMParser().parseFromString(data.graph, 'image/svg+xml').documentElement, true));
      byID('season-key').textContent = data.key;
      byID('season-table').replaceChildren(...data.rows.map((row, i) => el('tr', '', ...row.map(t => el(i ? 'td' : 'th', t)))));
      byID('season-fit').replaceChildren(...parts([{ title: 'To fit to today', lines: year.fitting }]));
      byID('season-why').replaceChildren(...parts([{ lines: [...year.air, ...year.moves, year.caution] }]));
      show();
    };

    // Where the leaf hangs and when it was read is the job's. A month not said is no month:
    // the leaf is taken as in the middle of the year, and the slider stands at the calendar's.
    const names = [...Array(12).keys()].map(m => new Date(2000, m).toLocaleString('en', { month: 'long' }).toLowerCase());
    const now = new Date().getMonth();
    slider.value = now;
    const fields = [];
    // What a meter read in the month the door was read in stands beside it.
    const metered = () => {
      const said = byID('f:house.month').value;
      const month = names.includes(said) ? said : names[year ? year.month : -1] || '';
      if (fields[4] && fields[4].dataset.month === month) return;
      if (fields[4]) fields.pop().remove();
      if (!month) return;
      fields[4] = twin('meter.' + month);
      fields[4].dataset.month = month;
      fields[4].follow();
      where.append(fields[4]);
    };
    const settle = question => {
      if (!fields.length) {
        for (const path of ['house.climate', 'house.room', 'house.south', 'house.month']) fields.push(twin(path));
        where.replaceChildren(...fields);
      }
      metered();
      for (const f of fields) f.follow();
      const fresh = drawn && !question.season; // another job, or the frame started anew
      if (fresh) on = drawn = false;
      if (fresh) show();
    };
    follow('season', settle, told);
    slider.addEventListener('input', () => {
      if (!year) return;
      on = true;
      show();
    });
    for (const id of ['season-now', 'headline-now']) byID(id).addEventListener('click', () => {
      back();
      slider.focus({ preventScroll: true }); // the button is gone
    });
    byID('season').addEventListener('toggle', () => { if (on && !byID('season').open) back(); });
    document.addEventListener('changed', e => { if (on && !e.detail) back(); }); // no door any more
    follow('leaf', () => {}, data => byID('leaf-told').replaceChildren(...parts(data.parts)));
  });
})();
