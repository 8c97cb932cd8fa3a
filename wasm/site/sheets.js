// What goes on paper: asks the clerk to lay the pages out, shows them, prints exactly
// those, and hands them and what a workshop's machine reads over as files.
'use strict';
(() => {
  const about = {
    work: 'What to cut, where and in which order, to take to the bench. Of one option.',
    client: 'The door as found beside up to three options: what each costs and what will be seen, in plain words, with room for a signature.',
    template: 'Lines that are not straight and marks close together, at full size, to prick through. Of one option.',
  };
  const most = 3; // options on a client's sheet
  const root = document.documentElement;
  const byID = id => document.getElementById(id);
  const chosen = name => [...document.querySelectorAll(`[name=${name}]:checked`)].map(e => e.value);
  let job = null; // what stood on the bench when the pages were asked for
  let names = []; // of its options
  let paper = '';
  let laid = { title: '', pages: [] };

  const el = (tag, text, className) => {
    const e = document.createElement(tag);
    if (text) e.textContent = text;
    if (className) e.className = className;
    return e;
  };
  const say = text => { byID('sheets-state').textContent = text; };

  // A page as an element. Its lines were broken by the widths of a common sans-serif
  // face (game/draw/writing.go); a system's own may be wider.
  const drawn = text => {
    const page = document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
    page.setAttribute('font-family', `Arial, Helvetica, 'Liberation Sans', Roboto, ${page.getAttribute('font-family')}`);
    return page;
  };

  const give = (name, type, text) => {
    const url = URL.createObjectURL(new Blob([text], { type }));
    const a = el('a');
    a.href = url;
    a.download = `${job.file}-${name}`;
    a.click();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
  };

  const wait = is => {
    byID('sheets-pages').ariaBusy = String(is);
    byID('sheets-print').disabled = is || !laid.pages.length;
    for (const id of ['sheets-csv', 'sheets-dxf']) byID(id).disabled = is || !laid.pages.length || chosen('sheet-option').length > 1;
  };
  const put = (text, is) => {
    laid = is;
    byID('sheets-pages').replaceChildren(...laid.pages.map((text, i) => {
      const figure = el('figure');
      const save = el('button', 'Save this page as SVG', 'plain');
      save.type = 'button';
      save.id = 'sheets-svg-' + i;
      save.addEventListener('click', () => give(`${chosen('sheet')[0]}-${i + 1}.svg`, 'image/svg+xml', text));
      const caption = el('figcaption', `Page ${i + 1} of ${laid.pages.length}`);
      caption.append(save);
      figure.append(drawn(text), caption);
      return figure;
    }));
    wait(false);
    say(text);
  };
  const none = text => put(text, { title: '', pages: [] });
  const capital = text => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? '' : '.');

  const question = () => ({ ...job, kind: chosen('sheet')[0], options: chosen('sheet-option').map(Number), paper });
  const ask = () => {
    const kind = chosen('sheet')[0];
    paper = chosen('paper')[0];
    byID('sheets-about').textContent = about[kind];
    if (kind !== 'client' && !names.length) {
      none('No way to make it fit has been tried on this door yet, and this sheet is of one. Try a way, or ask for advice, and come back.');
      return;
    }
    wait(true);
    say('Laying it out');
    const q = question();
    clerk.ask('sheet', q).then(a => {
      if (a.fault) {
        none(capital(a.fault));
        return;
      }
      put(`${a.pages.length === 1 ? 'One page' : a.pages.length + ' pages'} of ${q.paper}. Print at 100 %, not fitted to the page; then measure the check line at the foot.`, a);
    }, e => none(e.message));
  };

  // One option for the bench, up to most of them for a client.
  const list = () => {
    const client = chosen('sheet')[0] === 'client';
    const is = client ? names.map((_, i) => i < most) : names.map((_, i) => i === Math.max(0, job.shown));
    byID('sheets-options').hidden = !names.length;
    byID('sheets-list').replaceChildren(...names.map((name, i) => {
      const label = el('label', '', 'check');
      const input = el('input');
      input.type = client ? 'checkbox' : 'radio';
      input.name = 'sheet-option';
      input.id = 'sheet-option-' + i;
      input.value = i;
      input.checked = is[i];
      label.append(input, el('span', name || `Option ${i + 1}`));
      return label;
    }));
    few();
  };
  const few = () => {
    const full = chosen('sheet')[0] === 'client' && chosen('sheet-option').length >= most;
    for (const e of document.querySelectorAll('[name=sheet-option]')) e.disabled = full && !e.checked;
  };

  const open = () => {
    job = clerk.job(true);
    if (!job) return; // the frame starts afresh
    names = (JSON.parse(job.job).options || []).map(o => o.name);
    if (!paper) byID(job.words === 'US' ? 'paper-letter' : 'paper-a4').checked = true;
    if (!names.length) byID('sheet-client').checked = true;
    list();
    byID('sheets').showModal();
    ask();
  };
  const file = (what, name, type) => clerk.ask('files', question()).then(a => {
    if (a.fault) say(capital(a.fault));
    else give(name, type, a[what]);
  }, e => say(e.message));

  document.addEventListener('DOMContentLoaded', () => {
    const press = (id, does) => byID(id).addEventListener('click', does);
    press('sheets-open', open);
    press('sheets-close', () => byID('sheets').close());
    press('sheets-print', () => window.print());
    press('sheets-csv', () => file('csv', 'gaps-and-cuts.csv', 'text/csv'));
    press('sheets-dxf', () => file('dxf', 'outlines.dxf', 'image/vnd.dxf'));
    byID('sheets').addEventListener('click', e => {
      if (e.target === byID('sheets')) byID('sheets').close(); // on the backdrop
    });
    byID('sheets').addEventListener('change', e => {
      if (e.target.name === 'sheet') list();
      few();
      ask();
    });
    byID('sheets').addEventListener('close', () => none(''));
  });
  document.addEventListener('changed', ({ detail: is }) => { byID('sheets-open').hidden = !is; });

  // While the pages are on show, they are what is printed, on their own paper to its
  // edges. Said under a page's name in the style sheet this does not reach the paper in
  // every browser.
  const papers = { A4: '210mm 297mm', Letter: '215.9mm 279.4mm' };
  const edges = new CSSStyleSheet();
  let title = '';
  window.addEventListener('beforeprint', () => {
    if (!byID('sheets').open || !laid.pages.length) return;
    title = document.title;
    document.title = laid.title;
    root.dataset.paper = paper;
    edges.replaceSync(`@page { size: ${papers[paper]}; margin: 0; }`);
    document.adoptedStyleSheets = [edges];
    byID('paper').replaceChildren(...laid.pages.map(text => {
      const page = el('div', '', 'page');
      page.append(drawn(text));
      return page;
    }));
  });
  window.addEventListener('afterprint', () => {
    if (!root.dataset.paper) return;
    document.title = title;
    delete root.dataset.paper;
    document.adoptedStyleSheets = [];
    byID('paper').replaceChildren();
  });
})();
