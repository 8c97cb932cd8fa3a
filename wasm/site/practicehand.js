// The tools on the picture of a lesson, by pointer or finger. The clerk says what a tool
// takes hold of and which move a stroke comes to; nothing is made before it is asked for,
// since a move made is made for keeps. Keys do the same by the form of moves.
'use strict';
window.practiceHand = ({ el, button, field, select, picture, ask, question, composed, form, make, redraw, swinger, failed }) => {
  const tap = 6; // px; a press that moves less is a tap
  let tool = null; // in hand, as the clerk offers it
  let shaving = '';
  let tapped = ''; // what a tap on a hinge does
  let stroke = null; // what the pointer does
  let asking = false;
  let bar = null;

  const view = el('div', { id: 'practice-view', className: 'practice-view' });
  const over = svg => {
    view.querySelector('.over')?.remove();
    if (!svg) return;
    const p = picture(svg);
    p.classList.add('over');
    p.setAttribute('aria-hidden', 'true');
    view.append(p);
  };
  // put shows a picture, and what lies over it.
  const put = (svg, hand) => {
    view.replaceChildren(picture(svg));
    over(hand);
  };

  const at = e => {
    const box = view.firstElementChild.getBoundingClientRect();
    const k = view.firstElementChild.viewBox.baseVal.width / box.width;
    return [(e.clientX - box.left) * k, (e.clientY - box.top) * k];
  };
  const said = (text, made) => {
    if (!bar) return;
    bar.said.textContent = text;
    bar.make.disabled = !made;
  };
  // follow asks what the stroke comes to, one question at a time; once it lets go that is
  // the move composed.
  const follow = async () => {
    if (asking || !stroke) return;
    asking = true;
    const s = stroke;
    const { to, moved, done } = s;
    try {
      const n = await ask('hand', { ...question(), do: 'hand', from: s.from, to, moved, shaving: Number(shaving), tap: tapped, move: s.before });
      if (n.fault) throw new Error(n.fault);
      if (stroke === s) {
        over(n.over);
        if (done) {
          stroke = null;
          if (n.move) form(n.move);
          said(n.said, !!n.move);
          if (n.move) {
            bar.make.focus({ preventScroll: true });
            bar.make.scrollIntoView({ block: 'nearest' });
          }
        }
      }
    } catch (why) {
      stroke = null;
      failed(why);
    }
    asking = false;
    if (stroke && (stroke !== s || s.to !== to || s.moved !== moved || s.done !== done)) follow();
  };
  view.addEventListener('pointerdown', e => {
    if (!tool || e.button || stroke) return;
    e.preventDefault();
    view.setPointerCapture(e.pointerId);
    const from = at(e);
    stroke = { id: e.pointerId, x: e.clientX, y: e.clientY, from, to: from, moved: false, done: false, before: composed() };
    follow();
  });
  view.addEventListener('pointermove', e => {
    if (stroke?.id !== e.pointerId || stroke.done) return;
    stroke.to = at(e);
    stroke.moved ||= Math.hypot(e.clientX - stroke.x, e.clientY - stroke.y) >= tap;
    if (stroke.moved) follow();
  });
  view.addEventListener('pointerup', e => {
    if (stroke?.id !== e.pointerId) return;
    stroke.to = at(e);
    stroke.done = true;
    follow();
  });
  view.addEventListener('pointercancel', e => {
    if (stroke?.id === e.pointerId) stroke = null;
  });

  const take = to => {
    tool = to;
    stroke = null;
    view.classList.toggle('held', !!tool);
    view.closest('dialog').scrollTop = 0;
    redraw();
  };
  // tools gives the bar under the picture of a lesson that goes on.
  const tools = data => {
    const choice = (t, name) => {
      const id = 'practice-tool-' + (t?.kind ?? 'none');
      const r = el('input', { type: 'radio', name: 'practice-tool', id, value: t?.kind ?? '', checked: (t?.kind ?? '') === (tool?.kind ?? '') });
      r.addEventListener('change', () => take(t));
      return el('label', {}, r, el('span', { textContent: name }));
    };
    const row = el('div', { className: 'choice tools-choice', role: 'radiogroup', ariaLabel: 'In hand, over the picture' }, choice(null, 'Look'), ...data.tools.map(t => choice(t, t.name)));
    if (!tool) {
      bar = null;
      return el('div', { id: 'practice-hand', className: 'practice-hand' }, row, swinger());
    }
    const shavings = select('practice-shaving', data.shavings, data.shavings.some(s => s.value === shaving) ? shaving : undefined);
    if (!data.shavings.some(s => s.value === shaving)) shavings.value = data.shavings[1].value;
    shaving = shavings.value;
    shavings.addEventListener('change', () => { shaving = shavings.value; });
    const taps = select('practice-tap', [{ value: '', label: 'lets it in deeper' }, { value: 'packs', label: 'packs it out' }, { value: 'home', label: 'draws it home' }], tapped);
    taps.addEventListener('change', () => { tapped = taps.value; });
    bar = {
      said: el('p', { id: 'practice-hand-said', ariaLive: 'polite' }),
      make: button('Make it, for keeps', make, { id: 'practice-hand-do', className: 'main', disabled: true }),
    };
    return el('div', { id: 'practice-hand', className: 'practice-hand' }, row,
      el('p', { className: 'quiet' }, tool.use, el('span', { className: 'unseen', textContent: ' With the keyboard the same is done in figures, by the form under Work on it.' })),
      tool.kind === 'saw' ? null : el('div', { className: 'practice-set' }, ...[
        tool.kind === 'hinge' && field('A tap', taps),
        field(tool.kind === 'hinge' ? 'By' : 'A shaving', shavings)].filter(Boolean)),
      bar.said, el('div', { className: 'row' }, bar.make, button('In figures', () => form('', tool.move), { id: 'practice-hand-form' })));
  };

  return {
    view, put, tools,
    // told says anew what stands in the form, where it came from the picture.
    told: (text, good) => { if (bar?.said.textContent) said(text, good); },
    tool: () => tool?.kind ?? '',
    drop: () => { if (tool) { tool = null; view.classList.remove('held'); } stroke = null; bar = null; },
  };
};
