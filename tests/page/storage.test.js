// Nothing that was typed is lost: with storage refused or full, with two tabs at once, and with jobs kept by an older page.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, afterEach, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { startFirefox } from './harness/firefox.js';
import { Hand, until } from './harness/hand.js';

const OLD = JSON.parse(readFileSync(new URL('kept/jobs.json', import.meta.url), 'utf8'));

const shownText = (hand) => hand.tab.run(async () => (await heapcast.store.get(location.hash.split('/')[2]))?.text ?? '');
const people = (text) => Number(/\[\[raker\]\][\s\S]*?count = (\d+)/.exec(text)?.[1] ?? 1);

/** One more person raking, as a hand does it. */
async function onePerson(hand) {
  await hand.value('rakers');
  await hand.tap('^more: ', { place: '.stepper' });
  await hand.tap('^keep$');
}

async function saved(hand) {
  await hand.catchFiles();
  await hand.tap('^share$');
  await hand.tap('save the file');
  const [file] = await hand.caught();
  await hand.tab.back();
  return Buffer.from(file.base64, 'base64').toString();
}

const REFUSALS = {
  'by a window that keeps nothing': () => {
    indexedDB.open = IDBFactory.prototype.open = () => { throw new DOMException('not here', 'SecurityError'); };
    Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('not here', 'SecurityError'); } });
  },
  'by an error that comes later': () => {
    IDBFactory.prototype.open = () => {
      const asked = {};
      setTimeout(() => asked.onerror?.(new Event('error')), 50);
      return asked;
    };
  },
  'by no answer at all': () => { IDBFactory.prototype.open = () => ({}); },
};

// What comes before everything in a page is put there in Chromium; WebKit knows no way to, Firefox refuses by itself below.
describe('storage that is not given', () => {
  let browser;
  afterEach(() => browser?.stop());

  async function withoutStorage(hand) {
    await hand.sees('keeps nothing');
    await hand.tap('^new job$');
    await hand.answer();
    await onePerson(hand);
    await until(async () => people(await shownText(hand)) === 2, 'the change is lost');
    assert.equal(people(await saved(hand)), 2);
    await hand.answer();
    assert.deepEqual(hand.tab.errors.filter((one) => one.startsWith('error')), []);
  }

  for (const [how, refuse] of Object.entries(REFUSALS)) {
    test(`refused ${how}: it is said, and all works until the page is closed`, async () => {
      browser = await startChromium({ own: [SINGLE.url] });
      await browser.before(refuse);
      await withoutStorage(new Hand(await browser.tab(SINGLE.url)));
    });
  }

  test('refused by Firefox itself, which is told to let no page keep anything: the same', async () => {
    browser = await startFirefox({ settings: { 'network.cookie.cookieBehavior': 2 } });
    await withoutStorage(new Hand(await browser.tab(SINGLE.url)));
  });

  test('full: it is said, the change stays in the page, and is written once there is room', async () => {
    browser = await startChromium({ own: [SINGLE.url] });
    await browser.before(() => {
      const put = IDBObjectStore.prototype.put;
      // As a browser without room does it: the request is taken, the transaction ends with this error.
      IDBObjectStore.prototype.put = function (...args) {
        if (!window.isFull) return put.apply(this, args);
        const { transaction } = this;
        Object.defineProperty(transaction, 'error', { get: () => new DOMException('no room', 'QuotaExceededError') });
        const request = put.apply(this, args);
        transaction.abort();
        return request;
      };
    });
    const hand = new Hand(await browser.tab(SINGLE.url));
    await hand.tap('^new job$');
    await hand.answer();
    await hand.tab.run(() => { window.isFull = true; });
    await onePerson(hand);
    await hand.sees('no room');
    assert.equal(people(await shownText(hand)), 2);
    assert.equal(people(await saved(hand)), 2);
    await hand.tab.run(() => { window.isFull = false; });
    await hand.tap('^try again$');
    await until(async () => !/no room/.test(await hand.text()), 'still no room');
    await hand.tab.reload();
    await hand.answer();
    assert.equal(people(await shownText(hand)), 2);
  });
});

for (const { name, start } of BROWSERS) {
  describe(`two tabs at once, and older jobs, in ${name}`, () => {
    let browser;
    let one;
    let two;
    before(async () => {
      browser = await start({ own: [SINGLE.url] });
      one = new Hand(await browser.tab(SINGLE.url));
      await one.tap('^new job$');
      await one.answer();
    });
    after(() => browser?.stop());

    test('a change in one is seen in the other', async () => {
      const hash = await one.tab.run(() => location.hash);
      two = new Hand(await browser.tab(`${SINGLE.url}${hash}`));
      await two.answer();
      await onePerson(one);
      await until(async () => people(await shownText(two)) === 2, 'the other tab reads the old job');
      // WebKit takes no word from one page of a file to another: there a page looks when it comes to the front again.
      if (name === 'WebKit') await two.tab.run(() => document.dispatchEvent(new Event('visibilitychange')));
      await two.sees('changed in another tab');
      await two.answer();
      await until(() => two.tab.run(() => /2|two/.test(document.querySelector('[data-key*="raker"]')?.textContent ?? '')), 'the other tab shows the old job');
    });

    test('what is typed in one while the other changes the job is not lost', async () => {
      await two.value('volume');
      await two.write('', '41', { kinds: '#typed' });
      await onePerson(one);
      await until(async () => people(await shownText(one)) === 3, 'the change is lost');
      if (name === 'WebKit') await two.tab.run(() => document.dispatchEvent(new Event('visibilitychange')));
      await until(() => two.tab.run(() => document.querySelector('dialog[open] #typed')?.value.startsWith('41')), 'the half-typed figure is gone');
      await two.tap('^keep$');
      const texts = await until(async () => {
        const all = await two.tab.run(async () => (await heapcast.store.list()).map(({ text }) => text));
        return all.some((text) => /volume = "41 /.test(text)) && all.some((text) => people(text) === 3) ? all : null;
      }, 'one of both changes is lost');
      assert.ok(texts.length <= 2);
    });

    test('jobs kept by older pages open, one of a newer page is left alone', async () => {
      await one.tab.run(async (records) => {
        const db = await new Promise((done) => { indexedDB.open('heapcast').onsuccess = ({ target }) => done(target.result); });
        await new Promise((done) => {
          const all = db.transaction('jobs', 'readwrite');
          for (const record of records) all.objectStore('jobs').put(record);
          all.oncomplete = done;
        });
        db.close();
      }, OLD);
      await one.tab.go('about:blank');
      await one.tab.go(SINGLE.url);
      for (const { id, title, text, v } of OLD.filter((record) => (record.v ?? 0) <= 1)) {
        await one.sees(title ?? 'before-versions');
        await one.tab.run((of) => { location.hash = `#/job/${of}`; }, id);
        await one.answer();
        assert.equal(await shownText(one), text, `version ${v}`);
        await one.tab.run(() => { location.hash = '#/'; });
      }
      const newer = OLD.find((record) => record.v > 1);
      await one.sees(newer.title);
      await one.tab.run((of) => { location.hash = `#/job/${of}`; }, newer.id);
      await one.sees('newer heapcast');
      const there = await one.tab.run((of) => new Promise((done) => {
        indexedDB.open('heapcast').onsuccess = ({ target }) => {
          target.result.transaction('jobs').objectStore('jobs').get(of).onsuccess = (got) => done(got.target.result);
        };
      }), newer.id);
      assert.deepEqual(there, newer);
    });
  });
}
