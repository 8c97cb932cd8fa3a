// The second program, away from the page's own thread. It is fetched when it is first
// asked for something.
'use strict';
importScripts('wasm_exec.js');

// What is asked before the program stands is kept for it.
const early = [];
self.onmessage = e => { early.push(e); };
self.take = answer => {
  self.onmessage = answer;
  early.forEach(answer);
};

const go = new Go();
WebAssembly.instantiateStreaming(fetch('clerk.wasm'), go.importObject)
  .then(made => go.run(made.instance))
  .then(() => Promise.reject(new Error('the program ended')))
  .catch(e => self.postMessage({ failed: String(e.message || e) }));
