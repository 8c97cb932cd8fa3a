// The page's own small part, at work before the program arrives: light or dark,
// use without a signal, and the word that a new version is there.
'use strict';
(() => {
  const root = document.documentElement;
  try {
    const theme = localStorage.getItem('leafwright:theme');
    if (theme === 'light' || theme === 'dark') root.dataset.theme = theme;
  } catch { /* storage is blocked; the program says so */ }

  // The program is fetched once the page's own words are on the screen, and it is known
  // whether the address holds a job.
  document.addEventListener('DOMContentLoaded', () => {
    const stage = document.getElementById('stage');
    requestAnimationFrame(() => requestAnimationFrame(() => window.linking.then(() => { stage.src = stage.dataset.src; })));
  });

  // On a phone the picture stands over what is read: lower once its tools are scrolled away.
  document.addEventListener('scroll', () => {
    root.toggleAttribute('data-reading', document.getElementById('panel').getBoundingClientRect().top < 0.45 * innerHeight);
  }, { passive: true });

  // A folded section tells its foremost values.
  const foremost = {
    leaf: ['leaf.width', 'leaf.height', 'leaf.thickness'], anatomy: ['leaf.make', 'leaf.timber'],
    opening: ['opening.width', 'opening.height'], latch: ['opens'], house: ['house.climate', 'house.room'],
  };
  const tell = () => {
    for (const box of document.querySelectorAll('#sections > details')) {
      const name = box.id.slice('section-'.length);
      if (box.querySelector('[aria-invalid="true"]')) continue; // what is no value is not told as one
      const values = (foremost[name] || []).flatMap(path => {
        const field = document.getElementById('f:' + path);
        const is = field?.selectedOptions?.[0]?.text.split(',')[0] ?? field?.value;
        return is && is !== 'not said' ? is + (path === 'opens' ? '°' : '') : [];
      });
      const items = { hinges: '.group', readings: '.list > details' }[name];
      const text = items ? box.querySelectorAll(items).length || '' : values.join(/^\d/.test(values[0]) ? ' × ' : ', ');
      const says = box.querySelector(':scope > summary > .quiet') || Object.assign(document.createElement('span'), { className: 'quiet' });
      if (says.textContent === String(text)) continue;
      says.textContent = text;
      box.querySelector('summary').append(says);
    }
  };
  let telling = 0;
  document.addEventListener('changed', () => {
    clearTimeout(telling);
    telling = setTimeout(tell, 300);
  });

  if (!('serviceWorker' in navigator) || location.search.includes('nosw')) return;
  const workers = navigator.serviceWorker;
  const followed = workers.controller !== null;
  const saved = () => root.dataset.saved !== 'no';
  let waiting = null;

  const offer = () => {
    const notice = document.getElementById('update');
    if (notice) notice.hidden = false;
  };
  const watch = registration => {
    if (registration.waiting && workers.controller) {
      waiting = registration.waiting;
      offer();
    }
    registration.addEventListener('updatefound', () => {
      const next = registration.installing;
      if (next) next.addEventListener('statechange', () => {
        if (next.state === 'installed' && workers.controller) {
          waiting = next;
          offer();
        }
      });
    });
  };
  // The worker fetches the whole page once more, so it waits until the first
  // drawing stands and what it asks for is there already.
  const ready = new MutationObserver(() => {
    if (!root.dataset.ready) return;
    ready.disconnect();
    workers.register('sw.js').then(r => {
      watch(r);
      return r.update();
    }).catch(() => { /* no signal, or a browser that forbids it: the page works as it is */ });
  });
  // The second program is kept like the rest of the page once it is fetched, or a while
  // after someone begins to work here, for sheets and advice where there is no signal.
  // Who only looks does not pay for it.
  const quiet = 5000; // ms
  const rest = () => workers.ready.then(r => r.active.postMessage('keep the rest'));
  document.addEventListener('clerk', rest, { once: true });
  const later = () => setTimeout(() => { if (!navigator.connection?.saveData) rest(); }, quiet);
  document.addEventListener('input', later, { once: true });
  document.addEventListener('DOMContentLoaded', () => document.getElementById('guest-own').addEventListener('click', later, { once: true }));
  ready.observe(root, { attributes: true, attributeFilter: ['data-ready'] });
  document.addEventListener('DOMContentLoaded', () => {
    document.getElementById('update-now').addEventListener('click', () => {
      if (!saved()) {
        document.getElementById('update-text').textContent = 'This job is not saved in the browser. Save it as a file first, then reload.';
        return;
      }
      if (waiting?.state === 'installed') waiting.postMessage('take over');
      else location.reload(); // another window had it take over
    });
  });
  // Every page that was under the old version comes along, unless its work stands only there.
  workers.addEventListener('controllerchange', () => {
    if (!followed) return;
    if (saved()) location.reload();
    else offer();
  });
})();
