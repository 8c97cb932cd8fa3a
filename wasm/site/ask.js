// Asks the second program, which is fetched when it is first asked and works in a
// worker. The first program tells what stands on the bench.
'use strict';
(() => {
  let worker = null;
  let id = 0;
  const asked = new Map(); // what is wanted, to the last question and who waits for its answer

  const failed = why => {
    if (worker) worker.terminate();
    worker = null;
    const all = [...asked.values()];
    asked.clear();
    for (const a of all) a.fail(new Error(`The program for this does not run (${why}). It needs a signal the first time.`));
  };
  const start = () => {
    worker = new Worker(document.body.dataset.worker);
    worker.onmessage = ({ data }) => {
      if (data.failed) { failed(data.failed); return; }
      document.dispatchEvent(new Event('clerk'));
      const a = asked.get(data.want);
      if (!a || a.id !== data.id) return;
      asked.delete(data.want);
      a.done(data);
    };
    worker.onerror = () => failed('it could not be fetched');
  };

  // Asks for something, in the place of what was asked before for the same want: that
  // promise is never kept. The question holds what wasm/clerk says of its want.
  const ask = (want, question) => new Promise((done, fail) => {
    const q = { ...question, want, id: ++id };
    asked.set(want, { id: q.id, done, fail });
    if (!worker) start();
    worker.postMessage(q);
  });

  // What stands on the bench, as the second program is told it; undefined while the
  // drawing's frame starts afresh. With its options and its name where they matter. Its
  // parts are in order, so that two texts of it differ only where it does.
  const job = whole => {
    const is = document.getElementById('stage').contentWindow.benchJob?.(!!whole);
    return is && Object.fromEntries(Object.entries(is).sort());
  };

  window.clerk = { ask, job };

  // What is not needed at once has its script fetched when its button is first pressed,
  // and pressed for it then.
  document.addEventListener('DOMContentLoaded', () => {
    for (const button of document.querySelectorAll('[data-script]')) {
      const load = () => {
        const style = Object.assign(document.createElement('link'), { rel: 'stylesheet', href: button.dataset.style });
        const script = Object.assign(document.createElement('script'), { src: button.dataset.script });
        script.onload = () => {
          button.removeEventListener('click', load);
          document.dispatchEvent(new Event('clerk'));
          button.click();
        };
        script.onerror = () => {
          script.remove();
          style.remove();
          button.nextElementSibling.hidden = false;
        };
        button.nextElementSibling.hidden = true;
        document.head.append(style, script);
      };
      button.addEventListener('click', load);
    }
  });

  // A lesson, or what someone did in one, is opened like a job, by file or dropped; the
  // first program gets all other files.
  let passed = null;
  const pass = async input => {
    const f = input.files[0];
    const lesson = f && f.size < 2e6 && /^\s*{\s*"leafwright_(lesson|session)"/.test(await f.slice(0, 200).text());
    if (lesson) {
      input.value = '';
      input.closest('dialog').close();
      window.lessonFile = f;
      document.getElementById('practice-begin').click();
    } else {
      passed = f;
      input.dispatchEvent(new Event('change'));
    }
  };
  document.addEventListener('change', e => {
    if (e.target.id !== 'file') return;
    if (passed) passed = null;
    else {
      e.stopPropagation();
      pass(e.target);
    }
  }, true);
  // A file may be dropped anywhere, on the drawing too, which is a document of its own. What
  // is wrong with it is said in the list of jobs.
  const takesFiles = on => {
    on.addEventListener('dragover', e => { if (e.dataTransfer.types.includes('Files')) e.preventDefault(); });
    on.addEventListener('drop', e => {
      if (!e.dataTransfer.files.length) return;
      e.preventDefault();
      const input = document.getElementById('file');
      if (!input.closest('dialog').open) document.getElementById('jobs-open').click();
      input.files = e.dataTransfer.files;
      input.dispatchEvent(new Event('change'));
    });
  };
  takesFiles(document);
  document.addEventListener('DOMContentLoaded', () => {
    const stage = document.getElementById('stage');
    stage.addEventListener('load', () => takesFiles(stage.contentDocument));
  });

  // Called by the first program whenever something changed: there is a door, or not.
  window.changed = is => document.dispatchEvent(new CustomEvent('changed', { detail: is }));
})();
