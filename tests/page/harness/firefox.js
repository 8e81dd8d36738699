// Firefox as a phone: 360 x 740 and touch, over plain WebDriver BiDi, which Firefox speaks by itself. A device is dark from the
// start or never; printing, a slowed processor and the insides of a worker are looked at in Chromium alone.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PHONE } from './chromium.js';
import { refuser } from './refuser.js';

const { WebSocket } = createRequire(new URL('../../browser/package.json', import.meta.url))('ws');
const KEYS = { Tab: '\uE004', Enter: '\uE007', Escape: '\uE00C', Backspace: '\uE003', Shift: '\uE008', Space: ' ' };
const WAIT_MS = 30_000;

/** A phone; and a browser that asks for nothing by itself, so that what is in `asked` is the page's. */
const SETTINGS = {
  'dom.w3c_touch_events.enabled': 1, 'ui.primaryPointerCapabilities': 1, 'ui.allPointerCapabilities': 1, 'ui.useOverlayScrollbars': 1,
  'browser.startup.page': 0, 'browser.startup.homepage_override.mstone': 'ignore', 'browser.shell.checkDefaultBrowser': false,
  'browser.aboutwelcome.enabled': false, 'browser.newtabpage.enabled': false, 'datareporting.policy.dataSubmissionEnabled': false,
  'app.normandy.enabled': false, 'services.settings.server': 'data:,#remote-settings-dummy/v1', 'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false, 'network.trr.mode': 5, 'toolkit.telemetry.server': '', 'dom.push.connection.enabled': false,
  'extensions.systemAddon.update.enabled': false, 'media.gmp-manager.updateEnabled': false,
};

/** Brings an element where a finger reaches it, once it rests; where to touch, or what is in the way. Runs inside the page. */
async function reached(element) {
  const next = () => new Promise((go) => { requestAnimationFrame(go); });
  const box = () => element.getClientRects()[0];
  const inView = () => { const { left, top, width, height } = box(); return document.elementFromPoint(left + width / 2, top + height / 2); };
  if (!element.isConnected || !box()) return 'it is gone';
  if (!element.contains(inView())) element.scrollIntoView({ block: 'center' });
  for (let was = null, i = 0; i < 50; i += 1) {
    const now = JSON.stringify(box());
    if (now === was) break;
    was = now;
    await next();
  }
  if (!box()) return 'it is gone';
  const there = inView();
  return element.contains(there) || there?.closest('label')?.contains(element) ? '' : `in the way: ${there?.outerHTML.slice(0, 100)}`;
}

class Tab {
  constructor(browser, context) {
    this.browser = browser;
    this.context = context;
    this.errors = [];
  }

  /** Comes to the front: a page behind another draws nothing. */
  async front() {
    if (this.browser.current === this.context) return;
    this.browser.current = this.context;
    await this.browser.call('browsingContext.activate', { context: this.context });
  }

  async call(method, params) {
    await this.front();
    return this.browser.call(method, { context: this.context, ...params });
  }

  go(url) { return this.call('browsingContext.navigate', { url, wait: 'complete' }); }
  reload() { return this.call('browsingContext.reload', { wait: 'complete' }); }
  back() { return this.call('browsingContext.traverseHistory', { delta: -1 }); }

  async close() {
    await this.call('browsingContext.close');
    this.browser.current = null;
  }

  /** What `code`, a function by its own source, gives for these; `elements` are handed over as they are. */
  async evaluate(code, args, elements = []) {
    await this.front();
    const { result, exceptionDetails } = await this.browser.call('script.callFunction', {
      functionDeclaration: `(...elements) => (${code})(...elements, ...${JSON.stringify(args)})`, arguments: elements, target: { context: this.context },
      awaitPromise: true, userActivation: true, serializationOptions: { maxDomDepth: 0 },
    });
    if (exceptionDetails) throw new Error(exceptionDetails.text);
    return result;
  }

  async run(code, ...args) {
    const whole = `async (...given) => {
      const it = await (${code})(...given);
      return JSON.stringify(it?.nodeType ? true : it);
    }`;
    const { value } = await this.evaluate(whole, args);
    return value === undefined ? undefined : JSON.parse(value);
  }

  async element(code, ...args) {
    const { sharedId } = await this.evaluate(code, args);
    return sharedId ? { sharedId } : null;
  }

  act(...actions) { return this.call('input.performActions', { actions }); }

  async tap(element) {
    const { value } = await this.evaluate(reached, [], [element]);
    if (value) throw new Error(value);
    const origin = { type: 'element', element };
    await this.act({ type: 'pointer', id: 'finger', parameters: { pointerType: 'touch' }, actions: [
      { type: 'pointerMove', x: 0, y: 0, origin }, { type: 'pointerDown', button: 0 }, { type: 'pointerUp', button: 0 }] });
  }

  async fill(element, text) {
    await this.evaluate((field) => { field.focus(); field.select(); }, [], [element]);
    // What is long comes at once, as it does when it is pasted.
    if (text.length > 99) await this.evaluate((words) => { document.execCommand('insertText', false, words); }, [text]);
    else await (text ? this.type(text) : this.press('Backspace'));
  }

  hand(element, path) { return this.call('input.setFiles', { element, files: [path] }); }

  press(keys) {
    const values = keys.split('+').map((key) => KEYS[key] ?? key);
    const ups = values.toReversed().map((value) => ({ type: 'keyUp', value }));
    return this.act({ type: 'key', id: 'keys', actions: [...values.map((value) => ({ type: 'keyDown', value })), ...ups] });
  }

  type(text) {
    const actions = [...text].flatMap((value) => [{ type: 'keyDown', value }, { type: 'keyUp', value }]);
    return this.act({ type: 'key', id: 'keys', actions });
  }

  resize(width, height) { return this.call('browsingContext.setViewport', { viewport: { width, height } }); }

  async picture(path, fullPage = true) {
    const { data } = await this.call('browsingContext.captureScreenshot', { origin: fullPage ? 'document' : 'viewport' });
    writeFileSync(path, Buffer.from(data, 'base64'));
  }
}

class Firefox {
  name = 'Firefox';
  asked = [];
  waiting = new Map();
  tabs = new Map();
  count = 0;

  /** Everything goes through a proxy that refuses and remembers, but what is asked of this machine by number, for a folder that is served.
   * `settings` are Firefox's own, as in about:config. */
  async start({ served = false, settings = {} } = {}) {
    this.profile = mkdtempSync(join(tmpdir(), 'heapcast-firefox-'));
    this.proxy = await refuser(this.asked);
    const { port } = this.proxy;
    const all = {
      ...SETTINGS, 'network.proxy.type': 1, 'network.proxy.http': '127.0.0.1', 'network.proxy.http_port': port, 'network.proxy.ssl': '127.0.0.1',
      'network.proxy.ssl_port': port, 'network.proxy.allow_hijacking_localhost': !served, ...settings,
    };
    const lines = Object.entries(all).map(([name, value]) => `user_pref("${name}", ${JSON.stringify(value)});\n`);
    writeFileSync(join(this.profile, 'user.js'), lines.join(''));
    this.process = spawn(process.env.FIREFOX ?? 'firefox-esr', [
      '--headless', '--no-remote', '--profile', this.profile, '--remote-debugging-port', '0', 'about:blank',
    ], {
      // Without the last its own server's address stands fast.
      stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, HOME: this.profile, MOZ_REMOTE_SETTINGS_DEVTOOLS: '1' },
    });
    this.gone = new Promise((done) => { this.process.once('close', done); });
    try {
      await this.connect(await this.address());
      await this.call('session.new', { capabilities: {} });
      await this.call('session.subscribe', { events: ['log.entryAdded'] });
    } catch (error) {
      await this.stop();
      throw error;
    }
    return this;
  }

  address() {
    return new Promise((resolve, reject) => {
      let said = '';
      const failed = (why) => reject(new Error(`Firefox ${why}: ${said}`));
      setTimeout(failed, WAIT_MS, 'does not start').unref();
      this.process.on('error', failed);
      this.process.on('exit', () => failed('ended'));
      this.process.stderr.on('data', (data) => {
        said += data;
        const [, address] = /BiDi listening on (ws:\S+)\n/.exec(said) ?? [];
        if (address) resolve(`${address}/session`);
      });
    });
  }

  async connect(address) {
    this.socket = new WebSocket(address, { perMessageDeflate: false });
    await new Promise((resolve, reject) => { this.socket.once('open', resolve).once('error', reject); });
    this.socket.on('message', (data) => {
      const { id, method, params, type, result, error, message } = JSON.parse(data);
      if (method === 'log.entryAdded') this.note(params);
      const asked = this.waiting.get(id);
      this.waiting.delete(id);
      if (type === 'error') asked?.reject(new Error(`${asked.method}: ${error}: ${message}`));
      else asked?.resolve(result);
    });
  }

  call(method, params) {
    const id = this.count += 1;
    return new Promise((resolve, reject) => {
      const patience = setTimeout(() => reject(new Error(`${method}: no answer`)), WAIT_MS);
      const end = (how) => (what) => { clearTimeout(patience); how(what); };
      this.waiting.set(id, { method, resolve: end(resolve), reject: end(reject) });
      this.socket.send(JSON.stringify({ id, method, params }));
    });
  }

  note({ level, type, text, source }) {
    if (['error', 'warn'].includes(level)) this.tabs.get(source.context)?.errors.push(`${type === 'javascript' ? 'error' : 'console'}: ${text}`);
  }

  async tab(url) {
    const { context } = await this.call('browsingContext.create', { type: 'window' });
    const tab = new Tab(this, context);
    this.tabs.set(context, tab);
    await tab.resize(PHONE.width, PHONE.height);
    if (url) await tab.go(url);
    return tab;
  }

  /** Runs before anything of a page does, in every page opened from now on. */
  before(code, ...args) { return this.call('script.addPreloadScript', { functionDeclaration: `() => { (${code})(...${JSON.stringify(args)}); }` }); }

  async stop() {
    this.proxy.stop();
    this.socket?.close();
    // Nothing of its profile is kept: it need not take leave, which takes a second.
    this.process.kill('SIGKILL');
    await this.gone;
    rmSync(this.profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 });
  }
}

export const startFirefox = (how) => new Firefox().start(how);
