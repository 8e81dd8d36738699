// WebKit, the engine of every browser on an iPhone: Debian's WebKitWebDriver with its small browser, on a screen of its own
// (Xvfb), over plain WebDriver. Its window is never narrower than 447 px and has a mouse, no touch; widths, touch, colours of
// the dark and a slowed processor are looked at in Chromium alone.

import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { refuser } from './refuser.js';

const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';
const KEYS = { Tab: '\uE004', Enter: '\uE007', Escape: '\uE00C', Backspace: '\uE003' };
const WAIT_MS = 30_000;

function smallBrowser() {
  const lib = readdirSync('/usr/lib').map((folder) => `/usr/lib/${folder}/webkit2gtk-4.1`);
  for (const folder of lib) {
    try {
      if (readdirSync(folder).includes('MiniBrowser')) return join(folder, 'MiniBrowser');
    } catch { /* no such folder */ }
  }
  throw new Error('no MiniBrowser: apt-get install webkit2gtk-driver xvfb');
}

/** A port nobody listens on. */
function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

async function until(what, tries = 100) {
  for (let i = 0; i < tries; i += 1) {
    try { return await what(); } catch { await new Promise((go) => setTimeout(go, 100)); }
  }
  return what();
}

class Tab {
  constructor(browser, handle) {
    this.browser = browser;
    this.handle = handle;
    this.errors = [];
  }

  /** Every command goes to this tab's window, whichever was used last. */
  async call(method, path, body) {
    if (this.browser.current !== this.handle) {
      await this.browser.call('POST', '/window', { handle: this.handle });
      this.browser.current = this.handle;
    }
    return this.browser.call(method, path, body);
  }

  async go(url) {
    await this.call('POST', '/url', { url });
    await this.browser.prepare(this);
  }

  async reload() {
    await this.call('POST', '/refresh', {});
    await this.browser.prepare(this);
  }

  back() { return this.call('POST', '/back', {}); }

  async run(code, ...args) {
    const script = `const done = arguments[arguments.length - 1];
      Promise.resolve().then(() => (${code})(...${JSON.stringify(args)})).then((it) => done({ it: it?.nodeType ? true : it }), (error) => done({ error: String(error) }));`;
    const { it, error } = await this.call('POST', '/execute/async', { script, args: [] });
    if (error) throw new Error(error);
    return it;
  }

  async element(code, ...args) {
    const script = `return (${code})(...${JSON.stringify(args)});`;
    // What the page draws anew at this very moment is not there yet.
    const found = await this.call('POST', '/execute/sync', { script, args: [] }).catch((error) => {
      if (!/stale element/.test(error.message)) throw error;
    });
    return found?.[ELEMENT] ?? null;
  }

  tap(element) { return this.call('POST', `/element/${element}/click`, {}); }

  async fill(element, text) {
    await this.call('POST', `/element/${element}/clear`, {});
    await this.call('POST', `/element/${element}/value`, { text });
  }

  hand(element, path) { return this.call('POST', `/element/${element}/value`, { text: path }); }

  async press(key) {
    const parts = key.split('+');
    const value = KEYS[parts.at(-1)] ?? parts.at(-1);
    const shift = parts.length > 1 ? '\uE008' : null;
    const actions = [{ type: 'keyDown', value }, { type: 'keyUp', value }];
    if (shift) {
      actions.unshift({ type: 'keyDown', value: shift });
      actions.push({ type: 'keyUp', value: shift });
    }
    return this.call('POST', '/actions', { actions: [{ type: 'key', id: 'keys', actions }] });
  }

  async type(text) {
    const actions = [...text].flatMap((value) => [{ type: 'keyDown', value }, { type: 'keyUp', value }]);
    return this.call('POST', '/actions', { actions: [{ type: 'key', id: 'keys', actions }] });
  }

  async picture(path) { writeFileSync(path, Buffer.from(await this.call('GET', '/screenshot'), 'base64')); }

  async close() {
    await this.call('DELETE', '/window');
    this.browser.current = null;
  }
}

class WebKit {
  name = 'WebKit';
  asked = [];
  processes = [];
  hooks = [];

  /** Everything goes through a proxy that refuses and remembers, but what is asked of this machine by number, for a folder that is served. */
  async start({ served = false, language = 'en_US.UTF-8' } = {}) {
    this.home = mkdtempSync(join(tmpdir(), 'heapcast-webkit-'));
    this.proxy = await refuser(this.asked);
    const display = await this.screen();
    const port = await freePort();
    const env = {
      ...process.env, DISPLAY: display, HOME: this.home, XDG_DATA_HOME: join(this.home, 'data'), XDG_CACHE_HOME: join(this.home, 'cache'),
      XDG_CONFIG_HOME: join(this.home, 'config'), LANG: language, LC_ALL: language, LIBGL_ALWAYS_SOFTWARE: '1', GTK_A11Y: 'none', NO_AT_BRIDGE: '1',
    };
    // WebKit's own sandbox does not start as root, as which a build machine runs; only pages of this project are opened here.
    if (process.getuid() === 0) env.WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS = '1';
    this.processes.push(spawn('WebKitWebDriver', [`--port=${port}`], { env, stdio: 'ignore' }));
    this.base = `http://127.0.0.1:${port}`;
    await until(() => fetch(`${this.base}/status`));
    const alwaysMatch = {
      'webkitgtk:browserOptions': { binary: smallBrowser(), args: ['--automation'] },
      proxy: { proxyType: 'manual', httpProxy: `127.0.0.1:${this.proxy.port}`, sslProxy: `127.0.0.1:${this.proxy.port}`, ...(served ? { noProxy: ['127.0.0.1'] } : {}) },
    };
    const { sessionId } = await this.call('POST', '/session', { capabilities: { alwaysMatch } }, '');
    this.session = `/session/${sessionId}`;
    await this.call('POST', '/window/rect', { width: 360, height: 780 });
    return this;
  }

  async call(method, path, body, session = this.session) {
    const answer = await fetch(`${this.base}${session ?? ''}${path}`, {
      method, body: body && JSON.stringify(body), signal: AbortSignal.timeout(WAIT_MS),
    });
    const { value } = await answer.json();
    if (value?.error) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value;
  }

  /** Starts a screen and gives its name, which the server writes when it is ready. */
  screen() {
    const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1280x1000x24', '-nolisten', 'tcp'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
    this.processes.push(server);
    return new Promise((resolve, reject) => {
      server.on('error', reject);
      server.stdio[3].once('data', (data) => resolve(`:${data.toString().trim()}`));
    });
  }

  async tab(url) {
    let handle;
    if (this.current === undefined) handle = (await this.call('GET', '/window/handles'))[0];
    else handle = (await this.call('POST', '/window/new', { type: 'window' })).handle;
    const tab = new Tab(this, handle);
    if (url) await tab.go(url);
    return tab;
  }

  /** Runs in every page when it has loaded: WebDriver knows no way to come before it. */
  async before(code, ...args) { this.hooks.push(`(${code})(...${JSON.stringify(args)})`); }

  async prepare(tab) {
    for (const hook of this.hooks) await tab.call('POST', '/execute/sync', { script: hook, args: [] });
  }

  async stop() {
    await this.call('DELETE', '').catch(() => {});
    this.proxy?.stop();
    for (const one of this.processes.reverse()) {
      one.kill();
      await new Promise((gone) => (one.exitCode === null && one.signalCode === null ? one.once('exit', gone) : gone()));
    }
    // Its own helpers write for a moment longer than it runs.
    for (let left = 25; ; left -= 1) {
      try {
        return rmSync(this.home, { recursive: true, force: true });
      } catch (error) {
        if (error.code !== 'ENOTEMPTY' || left === 0) throw error;
        await new Promise((later) => { setTimeout(later, 200); });
      }
    }
  }
}

export const startWebKit = (how) => new WebKit().start(how);
