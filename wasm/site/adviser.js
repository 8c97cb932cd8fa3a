// The second program: it works advice out, away from the page's own thread. It is
// fetched when advice is first asked for.
'use strict';
importScripts('wasm_exec.js');

// What is asked before the program stands is kept for it; of several only the last counts.
let asked = null;
self.onmessage = e => { asked = e; };
self.take = answer => {
  self.onmessage = answer;
  if (asked) answer(asked);
  asked = null;
};

const go = new Go();
WebAssembly.instantiateStreaming(fetch('adviser.wasm'), go.importObject)
  .then(made => go.run(made.instance))
  .then(() => Promise.reject(new Error('the program ended')))
  .catch(e => self.postMessage({ failed: String(e.message || e) }));
