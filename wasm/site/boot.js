// Starts the program inside the drawing's frame. The engine that draws asks for
// sixty frames a second and listens to everything; here it gets frames only when
// something has changed, and pointer, keys and wheel go to the program directly.
'use strict';
(() => {
  // The engine looks requestAnimationFrame up once, when it starts.
  const frame = window.requestAnimationFrame.bind(window);
  let held = null;
  let owed = 3;
  window.ticks = 0; // frames asked of the browser, for tests
  let given = Infinity; // when the last was
  const give = next => {
    owed--;
    window.ticks++;
    given = performance.now();
    return frame(next);
  };
  window.requestAnimationFrame = next => {
    if (owed > 0) return give(next);
    held = next;
    return 0;
  };
  window.wake = frames => {
    owed = Math.max(owed, frames);
    if (held) {
      const next = held;
      held = null;
      give(next);
    }
  };

  // It also looks ten times a second whether it is hidden. Once nothing has been drawn for
  // a while, whatever the program waits for by the clock has come: then once a second will
  // do. Any event has it look at once.
  const later = window.setTimeout.bind(window);
  window.timers = 0; // how often the clock was asked, for tests
  window.setTimeout = (next, ms, ...more) => {
    window.timers++;
    return later(next, performance.now() - given > 2000 ? Math.max(ms, 1000) : ms, ...more);
  };

  const tell = (name, detail) => window.dispatchEvent(new CustomEvent(name, { detail }));
  const mine = { capture: true, passive: true };
  for (const type of ['mousedown', 'mousemove', 'mouseup', 'touchstart', 'touchmove', 'touchend', 'touchcancel', 'keyup', 'contextmenu']) {
    window.addEventListener(type, e => e.stopImmediatePropagation(), mine);
  }
  for (const type of ['pointerdown', 'pointermove', 'pointerup', 'pointercancel', 'pointerout']) {
    window.addEventListener(type, e => {
      if (e.target.tagName !== 'CANVAS' || !e.isPrimary || (type === 'pointerdown' && e.button !== 0)) return;
      if (type === 'pointerdown') {
        e.target.setPointerCapture(e.pointerId);
        e.target.dataset.by = 'hand'; // no frame round it: whoever drags sees what is held
        e.target.focus({ preventScroll: true });
      }
      tell('stage:pointer', { type: type.slice(7), x: e.clientX, y: e.clientY, touch: e.pointerType === 'touch', alt: e.altKey || e.shiftKey });
    }, true);
  }
  // The wheel stays the page's own wherever the page itself can scroll.
  window.addEventListener('wheel', e => {
    e.stopImmediatePropagation();
    const page = parent.document.documentElement;
    if (e.ctrlKey || page.scrollHeight > page.clientHeight) return;
    tell('stage:wheel', { y: Math.sign(e.deltaY) });
  }, mine);
  const keys = new Set(['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Home', 'End', 'PageUp', 'PageDown', '+', '-', 'Escape', 'Enter', '[', ']', ',', '.', '1', '2', '3', '4', '5']);
  window.addEventListener('keydown', e => {
    delete e.target.dataset.by;
    e.stopImmediatePropagation(); // Tab and the browser's own keys keep their meaning
    const plain = !e.ctrlKey && !e.metaKey && !e.altKey;
    if (plain && keys.has(e.key)) {
      e.preventDefault();
      tell('stage:key', { key: e.key, shift: e.shiftKey });
    } else if ((e.ctrlKey || e.metaKey) && !e.altKey && e.key.toLowerCase() === 'z') {
      e.preventDefault();
      tell('stage:undo', { redo: e.shiftKey });
    }
  }, true);

  // The engine remembers the first pixel ratio it sees, so another one (zoom, a
  // second screen) restarts the frame; the program takes up its saved state again.
  const ratio = window.devicePixelRatio;
  let restarts = false; // once: a restart broken off by another is an error in some browsers
  const check = () => {
    if (window.devicePixelRatio === ratio || restarts) return;
    restarts = true;
    window.location.reload();
  };
  for (const w of [window, parent]) w.matchMedia(`(resolution: ${ratio}dppx)`).addEventListener('change', check);
  for (const type of ['resize', 'pointerover', 'focus', 'visibilitychange']) window.addEventListener(type, check);
  for (const type of ['resize', 'focus', 'visibilitychange']) parent.addEventListener(type, check);

  new MutationObserver((_, seen) => {
    const canvas = document.querySelector('canvas');
    if (!canvas || !canvas.hasAttribute('tabindex')) return;
    seen.disconnect();
    canvas.tabIndex = 0;
    canvas.addEventListener('blur', () => { delete canvas.dataset.by; });
    canvas.setAttribute('role', 'img');
    canvas.setAttribute('aria-label', 'The door in its opening. Everything it shows and lets you do is also in the panel beside it. Arrow keys swing the leaf and move the cut.');
    canvas.style.touchAction = 'none';
    canvas.style.outline = '';
  }).observe(document.documentElement, { childList: true, subtree: true, attributes: true });

  // The engine paints the frame as one texture, and ends where the graphics hold none so
  // large: a browser that will not be known by them says 2048 of all. Without graphics it
  // has a still picture stand in.
  const canvases = HTMLCanvasElement.prototype;
  const context = canvases.getContext;
  canvases.getContext = function (kind, ...more) {
    const made = context.call(this, kind, ...more);
    if (kind !== 'webgl2' || !made) return made;
    const longest = Math.max(window.screen.width, window.screen.height, parent.innerWidth, parent.innerHeight) * ratio;
    return made.isContextLost() || made.getParameter(made.MAX_TEXTURE_SIZE) >= Math.max(4096, longest) ? made : null;
  };

  // A frame that is left while it still fetches has not failed.
  let left = false;
  window.addEventListener('pagehide', () => { left = true; });
  const go = new Go();
  WebAssembly.instantiateStreaming(fetch('leafwright.wasm'), go.importObject)
    .then(made => go.run(made.instance))
    .then(() => Promise.reject(new Error('the program ended')))
    .catch(e => {
      if (left) return;
      console.error(String(e));
      const page = parent.document;
      page.documentElement.dataset.failed = 'yes';
      page.getElementById('status').textContent =
        `The program stopped (${e.message || e}). What you entered is kept. Reload the page to go on.`;
    });
})();
