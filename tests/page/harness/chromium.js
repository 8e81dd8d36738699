// Chromium as a phone: 360 x 740, touch, no network. Whatever is asked of the network is kept in `asked`.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

// One set of packages serves every test that needs a browser.
const shared = createRequire(new URL('../../browser/package.json', import.meta.url));
const { chromium } = shared('playwright-core');
const AXE = readFileSync(shared.resolve('axe-core/axe.min.js'), 'utf8');

export const PHONE = { width: 360, height: 740 };
const FLAGS = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/** One open page. Every function handed over runs inside it, by its own source: it sees nothing of the test. */
class Tab {
  constructor(browser, page) {
    this.browser = browser;
    this.page = page;
    this.errors = [];
    page.on('pageerror', (error) => this.errors.push(`error: ${error}`));
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) this.errors.push(`console: ${message.text()}`);
    });
  }

  go(url) { return this.page.goto(url); }
  reload() { return this.page.reload(); }
  back() { return this.page.goBack(); }
  close() { return this.page.close(); }
  run(code, ...args) { return this.page.evaluate(`(${code})(...${JSON.stringify(args)})`); }

  async element(code, ...args) {
    const handle = await this.page.evaluateHandle(`(${code})(...${JSON.stringify(args)})`);
    return handle.asElement();
  }

  tap(element) { return element.tap({ timeout: 5000 }); }
  fill(element, text) { return element.fill(text); }
  hand(element, path) { return element.setInputFiles(path); }
  press(key) { return this.page.keyboard.press(key); }
  type(text) { return this.page.keyboard.type(text); }
  picture(path, fullPage = true) { return this.page.screenshot({ path, fullPage }); }
  resize(width, height) { return this.page.setViewportSize({ width, height }); }
  media(what) { return this.page.emulateMedia(what); }

  /** What axe-core finds wrong, as `rule: help: elements`; with `strict`, whether the contrast of these is 7 to 1. Reports in frames have tests of
   * their own. */
  async axe({ strict } = {}) {
    if (strict && !(await this.run((of) => !!document.querySelector(of), strict))) return [];
    await this.page.evaluate(AXE);
    const how = strict ? { runOnly: ['color-contrast-enhanced'], iframes: false } : { iframes: false, rules: { 'target-size': { enabled: true } } };
    const { violations } = await this.page.evaluate(([where, options]) => window.axe.run(where ?? document, options), [strict, how]);
    return violations.map(({ id, help, nodes }) =>
      `axe ${id}: ${help}: ${nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')}`);
  }
}

class Chromium {
  name = 'Chromium';
  asked = [];

  async start({ offline = true, own = [], touch = true } = {}) {
    this.profile = mkdtempSync(join(tmpdir(), 'heapcast-page-'));
    this.own = own;
    this.context = await chromium.launchPersistentContext(this.profile, {
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: FLAGS, viewport: PHONE, hasTouch: touch, acceptDownloads: true,
    });
    await this.context.route('**/*', (route) => {
      const url = route.request().url();
      if (this.own.some((start) => url.startsWith(start))) return route.continue();
      this.asked.push(url);
      return route.abort();
    });
    if (offline) await this.context.setOffline(true);
    return this;
  }

  async tab(url) {
    const tab = new Tab(this, await this.context.newPage());
    if (url) await tab.go(url);
    return tab;
  }

  /** Runs before anything of a page does, in every page opened from now on. */
  before(code, ...args) { return this.context.addInitScript(`(${code})(...${JSON.stringify(args)})`); }
  offline(is) { return this.context.setOffline(is); }
  cdp(tab) { return this.context.newCDPSession(tab.page); }

  async stop() {
    await this.context?.close();
    rmSync(this.profile, { recursive: true, force: true });
  }
}

/** A Chromium that may ask for what begins with one of `own` and nothing else. */
export const startChromium = (how) => new Chromium().start(how);
