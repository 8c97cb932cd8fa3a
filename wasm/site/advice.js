// What would make the door fit: asks the clerk and shows its answer. The first program
// tries what is chosen.
'use strict';
(() => {
  const rest = 300; // how long nothing must change before advice is asked for anew, ms
  const wishes = ['hinges', 'strip', 'stiles', 'rail'];
  const byID = id => document.getElementById(id);
  const bench = () => byID('stage').contentWindow;
  let timer = 0;
  let asked = ''; // the last question
  let on = false; // advice was asked for

  const el = (tag, text, className) => {
    const e = document.createElement(tag);
    if (text) e.textContent = text;
    if (className) e.className = className;
    return e;
  };
  const button = (id, text, press) => {
    const b = el('button', text);
    b.type = 'button';
    b.id = id;
    b.addEventListener('click', press);
    return b;
  };

  // What stands there is out of date, or not.
  const wait = is => {
    byID('advice').ariaBusy = String(is);
    for (const b of byID('advice').querySelectorAll('button')) b.disabled = is;
  };
  const put = (text, ...parts) => {
    const focus = document.activeElement.id;
    byID('advice').replaceChildren(...parts);
    wait(false);
    byID('advice-state').textContent = text;
    const again = byID(focus);
    if (again && again !== document.activeElement) again.focus({ preventScroll: true });
  };

  const plan = (p, i) => {
    const all = el('article', '', 'plan');
    const moves = el('ol');
    moves.append(...p.moves.map(m => el('li', m)));
    const stages = el('ul');
    stages.append(...p.stages.map(s => el('li', s)));
    all.append(el('h3', p.title), ...p.lines.map(l => el('p', l, 'quiet')), el('p', p.then), ...p.cares.map(c => el('p', c, 'minded')), moves,
      ...p.stages.length ? [el('h4', 'Not all at once'), stages] : [],
      button('advice-try-' + i, 'Try this', () => {
        bench().putOption(p.option);
        byID('ways').scrollIntoView({ block: 'nearest' });
      }));
    return all;
  };

  // What timber buys in evenness: the more of it, the farther right; the more even, the lower.
  const traded = data => {
    if (!data.traded) return [];
    const xs = data.trade.filter((_, i) => i % 2 === 0);
    const ys = data.trade.filter((_, i) => i % 2 === 1);
    const at = (all, x, size) => size * (x - Math.min(...all)) / (Math.max(...all) - Math.min(...all) || 1);
    const draw = (tag, attributes) => {
      const e = document.createElementNS('http://www.w3.org/2000/svg', tag);
      for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
      return e;
    };
    const svg = draw('svg', { viewBox: '0 0 280 100', 'aria-hidden': 'true', focusable: 'false' });
    const points = xs.map((x, i) => [10 + at(xs, x, 260), 90 - at(ys, ys[i], 80)]);
    svg.append(draw('path', { d: 'M2 2V98H278', class: 'axes' }), draw('polyline', { points: points.join(' ') }),
      ...points.map(([cx, cy]) => draw('circle', { cx, cy, r: 3 })));
    const axes = draw('text', { x: 276, y: 14, 'text-anchor': 'end' }); // nothing else is ever up there
    axes.textContent = 'higher: less even, farther right: more timber';
    svg.append(axes);
    const figure = el('figure', '', 'trade');
    figure.append(svg, el('figcaption', data.traded, 'quiet'));
    return [figure];
  };

  const told = data => {
    if (data.fault) put(data.fault);
    else put(data.said[0], ...data.said.slice(1).map(s => el('p', s)), ...data.plans.map(plan), ...traded(data));
  };
  const failed = why => {
    asked = '';
    put(why.message, button('advice-again', 'Ask again', () => ask()));
  };

  // Asks, unless just that was asked last.
  const ask = () => {
    if (!on || byID('advice-box').hidden) return;
    const question = clerk.job();
    if (!question) return; // the frame starts afresh, and will tell
    byID('wish-rail').parentNode.hidden = !question.neighbour;
    question.prefer = document.querySelector('[name=prefer]:checked').value;
    for (const w of wishes) question[w] = byID('wish-' + w).checked;
    const now = JSON.stringify(question);
    if (now === asked) return;
    asked = now;
    wait(true);
    byID('advice-state').textContent = 'Working it out';
    clerk.ask('advice', question).then(told, failed);
  };

  document.addEventListener('changed', ({ detail: is }) => {
    byID('advice-box').hidden = !is;
    clearTimeout(timer);
    if (on && is) timer = setTimeout(ask, rest);
  });

  document.addEventListener('DOMContentLoaded', () => {
    byID('advice-ask').addEventListener('click', () => {
      on = true;
      byID('advice-ask').hidden = true;
      byID('wishes').hidden = false;
      ask();
      document.querySelector('[name=prefer]:checked').focus();
    });
    byID('wishes').addEventListener('change', ask);
  });
})();
