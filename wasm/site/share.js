// A job as a link. The job is packed into the fragment of the page's address, the part
// that no browser sends anywhere:
//
//   #job=FORM.PACKED.SUM
//
// PACKED is the base64url of the deflated text, SUM the CRC-32 of its bytes in eight
// hexadecimal digits; they stand last, so that a link cut short shows itself. The text
// is a line with the words, the unit and the door shown, then the job file.
// A link that is opened is only looked at: the first program shows the job and keeps
// nothing of it, until it is made a job of one's own.
'use strict';
(() => {
  const form = '1';
  const mark = '#job=';
  const largest = 1 << 20; // bytes, of a job file: as the first program has it
  const longest = 2000; // letters that a phone message carries in one piece (common practice, no published source)
  const again = 'Ask for it again, or for the job as a file.';
  const root = document.documentElement;
  const byID = id => document.getElementById(id);
  const stage = () => byID('stage').contentWindow;

  // What came with a link and how the first program tells what became of it, null where
  // nothing came.
  window.linked = null;

  const sum = bytes => {
    let c = ~0;
    for (const b of bytes) {
      c ^= b;
      for (let i = 0; i < 8; i++) c = c >>> 1 ^ (c & 1 ? 0xedb88320 : 0);
    }
    return (~c >>> 0).toString(16).padStart(8, '0');
  };
  // The whole of a stream, or a fault once there is more of it than any job has.
  const all = async stream => {
    const parts = [];
    let size = 0;
    for (const reader = stream.getReader(); ;) {
      const { done, value } = await reader.read();
      if (done) break;
      parts.push(value);
      size += value.length;
      if (size > largest) {
        reader.cancel().catch(() => {});
        throw new Error('The link unpacks to more than a megabyte, which no job is.');
      }
    }
    return new Blob(parts).arrayBuffer();
  };
  const through = (bytes, turn) => all(new Blob([bytes]).stream().pipeThrough(turn));

  // The fragment for what stands on the bench.
  const pack = async ({ job, words, inches, shown }) => {
    const text = `${words} ${inches ? 'in' : 'mm'} ${shown}\n${JSON.stringify(JSON.parse(job))}`;
    const bytes = new Uint8Array(await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw')));
    const letters = btoa(Array.from(bytes, b => String.fromCharCode(b)).join(''));
    return mark + [form, letters.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', ''), sum(bytes)].join('.');
  };

  // What a fragment holds. Errors are sentences.
  const unpack = async fragment => {
    if (fragment.length > 2 * largest) throw new Error(`The link has ${fragment.length} letters, more than any job needs.`);
    const [made, packed, sealed, ...more] = fragment.slice(mark.length).split('.');
    if (/^\d{1,6}$/.test(made) && made !== form) {
      throw new Error(`The link is of form ${made}, and this page reads form ${form}. Load the page anew for its latest version, or ask for the job as a file.`);
    }
    if (made === form && (sealed === undefined || sealed.length < 8) && !more.length) {
      throw new Error(`The link was cut short: it stops after ${fragment.length} letters. ${again}`);
    }
    if (made !== form || more.length || !/^[\w-]+$/.test(packed) || !/^[0-9a-f]{8}$/.test(sealed)) {
      throw new Error(`The link is damaged: what stands behind ${mark} is not a packed job. ${again}`);
    }
    let bytes;
    try {
      bytes = Uint8Array.from(atob(packed.replaceAll('-', '+').replaceAll('_', '/')), c => c.charCodeAt(0));
    } catch {
      throw new Error(`The link is damaged: its ${packed.length} packed letters are too many or too few. ${again}`);
    }
    if (sum(bytes) !== sealed) throw new Error(`The link is damaged: its check sum is ${sum(bytes)}, and ${sealed} stands at its end. ${again}`);
    if (!window.DecompressionStream) throw new Error('This browser is too old to unpack a link. Ask for the job as a file.');
    let text;
    try {
      text = new TextDecoder('utf-8', { fatal: true }).decode(await through(bytes, new DecompressionStream('deflate-raw')));
    } catch (e) {
      throw e.message.startsWith('The link') ? e : new Error(`The link is damaged: it cannot be unpacked. ${again}`);
    }
    const head = text.match(/^([A-Z]{2}) (mm|in) (-?\d{1,4})\n/);
    if (!head) throw new Error(`The link is damaged: it does not begin as a job does. ${again}`);
    return { job: text.slice(head[0].length), words: head[1], inches: head[2] === 'in', shown: +head[3] };
  };

  const bare = () => history.replaceState(null, '', location.pathname + location.search);
  const say = text => {
    byID('link-text').textContent = text;
    byID('link').hidden = false;
  };
  const guest = is => {
    if (is) root.dataset.guest = 'yes';
    else delete root.dataset.guest;
    byID('guest').hidden = !is;
    if (!is) return;
    byID('guest-own').disabled = true; // until it is shown
    for (const d of document.querySelectorAll('dialog[open]')) d.close();
    byID('panel').scrollTop = 0;
    scrollTo(0, 0);
  };
  const bad = why => {
    window.linked = null;
    guest(false);
    bare();
    say(`${why}\nNothing was opened and nothing of yours was changed.`);
  };
  const named = job => {
    try {
      return String(JSON.parse(job).name || '').slice(0, 120);
    } catch {
      return ''; // the first program says what is wrong with it
    }
  };

  // Takes in the link that the address holds, and tells whether there is one.
  const take = async () => {
    const fragment = location.hash;
    if (!fragment.startsWith(mark)) return false;
    try {
      const linked = await unpack(fragment);
      if (location.hash !== fragment) return false; // another one came meanwhile
      window.linked = {
        ...linked,
        own: false,
        bad: why => bad(`The job in the link could not be read.\n${why}`),
        kept: is => {
          const { job } = window.linked;
          window.linked = null;
          guest(false);
          if (is) bare();
          say(`“${named(job) || 'This door'}” is a job of your own now${is ? ', kept in this browser on this device' : ', but the browser did not keep it: save it as a file'}.`);
          byID('link-close').focus();
        },
      };
      byID('guest-name').textContent = named(linked.job) || 'A door without a name';
      byID('link').hidden = true;
      guest(true);
      return true;
    } catch (e) {
      bad(e.message);
      return false;
    }
  };
  const afresh = () => stage().location.reload();
  const leave = () => {
    window.linked = null;
    guest(false);
    if (location.hash) bare();
    byID('findings').focus({ preventScroll: true });
    afresh();
  };

  // The first program is not started before this is known.
  window.linking = take().catch(() => {});

  window.addEventListener('hashchange', async () => {
    if (!location.hash.startsWith(mark)) {
      if (!location.hash && window.linked) leave();
      return;
    }
    if (root.dataset.saved === 'no') {
      bare();
      say('A link was opened, but the job shown here is not kept in the browser. Save it as a file first, then open the link again.');
      return;
    }
    if (await take()) afresh();
  });

  // Sending.
  let link = '';
  let file = null;
  const offer = async () => {
    const q = clerk.job(true);
    if (!q) return;
    const at = location.origin + location.pathname;
    const here = /^(localhost|127\..*|\[::1\])$/.test(location.hostname);
    link = '';
    let state;
    if (!window.CompressionStream) {
      state = 'This browser is too old to make a link. The job goes as a file.';
    } else {
      link = at + await pack(q);
      state = `The link has ${link.length} letters.`;
      if (link.length > longest) {
        state = `The link would have ${link.length} letters, and a phone message may cut off what is longer than ${longest}. The job goes as a file: whoever gets it opens it here under Jobs.`;
        link = '';
      } else if (here) {
        state += ' This page comes from your own computer, so the link leads nowhere on another one. Send the file, or use the page where others can reach it.';
      }
    }
    file = new File([q.job], q.file + '.json', { type: 'application/json' });
    if (!navigator.canShare?.({ files: [file] })) file = new File([q.job], q.file + '.txt', { type: 'text/plain' }); // some share only what they know
    if (!navigator.canShare?.({ files: [file] })) file = null;
    byID('send-state').textContent = state;
    byID('send-link').value = link;
    for (const id of ['send-link-box', 'send-copy']) byID(id).hidden = !link;
    byID('send-share').hidden = !link || !navigator.share;
    byID('send-file').hidden = !file;
    for (const [id, main] of [['send-copy', !navigator.share], ['send-file', !link], ['send-save', !link && !file]]) byID(id).classList.toggle('main', main);
    byID('send').showModal();
  };
  const share = what => navigator.share(what).catch(e => {
    if (e.name !== 'AbortError') byID('send-state').textContent = `It was not sent (${e.message}). Copy the link, or save the file.`;
  });
  const copy = async () => {
    const field = byID('send-link');
    try {
      await navigator.clipboard.writeText(link);
    } catch { // forbidden, or the page is not from a secure host
      field.select();
      if (!document.execCommand('copy')) {
        byID('send-state').textContent = 'The browser did not let the link be copied. It is selected: copy it by hand.';
        return;
      }
    }
    byID('send-state').textContent = 'The link is copied. Paste it into a message.';
  };

  const press = (id, does) => byID(id).addEventListener('click', does);
  document.addEventListener('DOMContentLoaded', () => {
    press('guest-own', () => {
      byID('guest-own').disabled = true;
      window.linked.own = true;
      afresh();
    });
    press('guest-leave', leave);
    press('link-close', () => {
      byID('link').hidden = true;
      byID('findings').focus({ preventScroll: true });
    });
    press('send-open', offer);
    press('send-close', () => byID('send').close());
    press('send-share', () => share({ title: document.title, url: link }));
    press('send-file', () => share({ files: [file] }));
    press('send-copy', copy);
    press('send-save', () => byID('save').click());
    byID('send').addEventListener('click', e => {
      if (e.target === byID('send')) byID('send').close(); // on the backdrop
    });
  });
  document.addEventListener('changed', () => {
    byID('out-box').hidden = false;
    if (!window.linked) return;
    byID('status').textContent = 'A copy to look at';
    byID('guest-own').disabled = window.linked.own;
  });
})();
