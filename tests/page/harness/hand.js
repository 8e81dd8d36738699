// A person's hand on the page, the same in every browser: finds what to touch by the words on it, and counts the touches.

/**
 * The control whose name fits `words` (a regular expression), of what lies on top and is shown. Runs inside the page.
 * @returns {Element | null}
 */
function control(words, { kinds, place, disabled = false }) {
  const fits = new RegExp(words, 'iu');
  const clean = (text) => (text ?? '').replace(/\s+/g, ' ').trim();
  const name = (element) => clean(element.getAttribute('aria-label')
    || (element.labels?.length ? [...element.labels].map((label) => label.textContent).join(' ') : '') || element.textContent);
  const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document;
  const within = place ? [...top.querySelectorAll(place)] : [top];
  const all = within.flatMap((one) => [...one.querySelectorAll(kinds)]);
  return all.find((one) => one.checkVisibility() && (disabled || !one.disabled) && one.getClientRects().length && fits.test(name(one))) ?? null;
}

/** What a person can read now. Runs inside the page. */
function readable() {
  const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
  const fields = [...top.querySelectorAll('input, textarea')].filter((one) => one.checkVisibility()).map((one) => one.value);
  return [top.innerText, ...fields].join('\n');
}

const CONTROLS = 'button, a[href], summary, label.button, label.choice, [role=button]';
const FIELDS = 'input:not([type=file]), textarea, select';
const WAIT_MS = 20_000;

const pause = (ms) => new Promise((go) => setTimeout(go, ms));

/** Asks until the answer is one, or the patience ends. */
export async function until(ask, what, ms = WAIT_MS) {
  const end = Date.now() + ms;
  for (;;) {
    const found = await ask();
    if (found) return found;
    if (Date.now() > end) throw new Error(`${typeof what === 'function' ? await what() : what}, not within ${ms} ms`);
    await pause(40);
  }
}

export class Hand {
  touches = 0;
  keys = 0;

  constructor(tab) { this.tab = tab; }

  /** A control with these words, waited for. */
  find(words, { kinds = CONTROLS, place = '', ms = WAIT_MS, disabled = false } = {}) {
    const missing = async () => `nothing to touch named /${words}/ among:\n${(await this.text()).slice(0, 1500)}`;
    return until(() => this.tab.element(control, words, { kinds, place, disabled }), missing, ms);
  }

  /** One touch on what `find` finds, if anything; what was found can be drawn anew before it is touched, so a few tries are made. */
  async touch(find) {
    for (let tries = 0; ; tries += 1) {
      const element = await find();
      if (!element) return;
      try {
        await this.tab.tap(element);
        break;
      } catch (error) {
        if (tries === 4) throw error;
        await pause(60);
      }
    }
    this.touches += 1;
  }

  tap(words, how) { return this.touch(() => this.find(words, how)); }

  /** Touches the value of this key in the sentence; where it is folded away, what it is folded under first. */
  async value(key) {
    const at = (end) => [...document.querySelectorAll('.value')].find((one) => one.dataset.key.endsWith(end)) ?? null;
    const fold = (end) => {
      const value = [...document.querySelectorAll('.value')].find((one) => one.dataset.key.endsWith(end));
      return value?.closest('details:not([open])')?.querySelector('summary') ?? null;
    };
    const there = () => until(() => this.tab.element(at, key), async () => `the sentence has no ${key}:\n${(await this.text()).slice(0, 1500)}`);
    await there();
    await this.touch(() => this.tab.element(fold, key));
    // The sentence is drawn anew whenever an answer comes.
    await this.touch(there);
  }

  /** Waits until the sheet is gone. */
  left() { return until(() => this.tab.run(() => !document.querySelector('dialog[open]')), 'the sheet stays open'); }

  /** Touches a field and writes into it. */
  async write(words, text, how = {}) {
    const element = await this.find(words, { kinds: FIELDS, ...how });
    await this.tab.tap(element);
    await this.tab.fill(element, text);
    this.touches += 1;
    this.keys += text.length;
  }

  /** Gives files to a field for files, whose button opens the device's own dialog. */
  async give(place, path) {
    const field = await until(() => this.tab.element((at) => document.querySelector(at), place), `no field ${place}`);
    await this.tab.hand(field, path);
  }

  text() { return this.tab.run(readable); }

  /** Waits until this can be read; gives what can be. */
  async sees(words, ms = WAIT_MS) {
    const fits = new RegExp(words, 'iu');
    let last = '';
    await until(async () => fits.test(last = await this.text()), () => `/${words}/ cannot be read in:\n${last.slice(0, 3000)}`, ms);
    return last;
  }

  /** Waits for the answer of the job on the screen; gives the time it plans on. */
  async answer(ms = WAIT_MS) {
    let last = '';
    const shown = () => this.tab.run(() => (/^#\/job\/[^/]+$/.test(location.hash) && document.querySelector('.card .body:not(.old) .plan')?.textContent) || '');
    await until(async () => /\d:\d\d/.test(last = await shown()), async () => `no answer in:\n${(await this.text()).slice(0, 2000)}`, ms);
    return last.replace(/\s+/g, ' ').trim();
  }

  /** Waits until nothing is being worked out. */
  async rests(ms = 60_000) {
    await until(() => this.tab.run(() => !document.querySelector('main [aria-busy=true], main progress:not(.idle)')), 'still busy', ms);
  }

  /** Keeps what the page saves as files, from now on in this page. */
  catchFiles() {
    return this.tab.run(() => {
      if (window.caught) return;
      window.caught = [];
      const click = HTMLAnchorElement.prototype.click;
      HTMLAnchorElement.prototype.click = function () {
        if (!this.download) return click.call(this);
        window.caught.push(fetchBlob(this));
      };
      const blobs = new Map();
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => {
        const url = make.call(URL, blob);
        blobs.set(url, blob);
        return url;
      };
      const fetchBlob = (link) => ({ name: link.download, blob: blobs.get(link.href) });
    });
  }

  /** The files saved since, as `{ name, base64 }`. */
  async caught(least = 1) {
    await until(() => this.tab.run((n) => window.caught.length >= n, least), `fewer than ${least} files saved`);
    return this.tab.run(async () => Promise.all(window.caught.splice(0).map(async ({ name, blob }) => {
      const bytes = new Uint8Array(await blob.arrayBuffer());
      let text = '';
      for (const byte of bytes) text += String.fromCharCode(byte);
      return { name, base64: btoa(text) };
    })));
  }
}
