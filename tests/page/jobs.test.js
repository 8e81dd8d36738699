// The list of jobs: titles, files that come in, all jobs out and in, a device of no known language, a page cut off from its storage.

import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, afterEach, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SHIPPED, SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { Hand, until } from './harness/hand.js';

const PICK = 'input[type=file][multiple]';
const folder = mkdtempSync(join(tmpdir(), 'heapcast-jobs-'));
after(() => rmSync(folder, { recursive: true, force: true }));

/** A file on the device. */
function file(name, content) {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}
const shipped = (name) => readFileSync(join(SHIPPED, name), 'utf8');
const kept = (hand) => hand.tab.run(async () => (await heapcast.store.list()).map(({ id, title, name, text, files }) => ({ id, title, name, text, files })));
const titles = async (hand) => (await kept(hand)).map(({ title }) => title).sort();
const toList = (hand) => hand.tab.run(() => { location.hash = '#/'; });
const said = (hand) => hand.tab.run(() => document.querySelector('#messages').innerText);
const more = (hand, title) => hand.tap(`^more about ${title}`, { kinds: 'summary' });

for (const { name, start } of BROWSERS) {
  describe(`the list of jobs in ${name}`, () => {
    let browser;
    let hand;
    before(async () => {
      browser = await start({ own: [SINGLE.url] });
      hand = new Hand(await browser.tab(SINGLE.url));
    });
    after(() => browser?.stop());

    test('two new jobs of a day have titles of their own', async () => {
      for (let count = 1; count < 3; count += 1) {
        await toList(hand);
        await hand.tap('^new job$');
        await until(async () => (await kept(hand)).length === count, 'no new job');
      }
      const [first, second] = await titles(hand);
      assert.equal(second, `${first} (2)`);
    });

    test('the text for a code to scan is the same job without its notes', async () => {
      const told = await hand.tab.run(async () => {
        const { engine, share } = heapcast;
        const said = async (job) => JSON.stringify(Object.values(await engine.read(job, {})).slice(0, 8));
        const odd = { name: 'odd.toml', text: 'title = "a # b" # c\n[[zone]] # it\'s one\nname = \'# 1\'\n', files: [] };
        const all = [...(await engine.about()).shipped, { name: 'new.toml', text: await engine.starter({ units: 'us', title: 'new' }), files: [] }, odd];
        return Promise.all(all.map(async (job) => {
          const text = share.bare(job.text);
          return { name: job.name, notes: /^\s*#/m.test(text), shorter: text.length < job.text.length, same: (await said(job)).replace(/"line":\d+,"column":\d+/g, '').replace(/:\d+:\d+:/g, '') === (await said({ ...job, text })).replace(/"line":\d+,"column":\d+/g, '').replace(/:\d+:\d+:/g, '') };
        }));
      });
      assert.ok(told.length > 10);
      for (const one of told) assert.deepEqual(one, { name: one.name, notes: false, shorter: true, same: true });
    });

    test('an example opens as a copy, every time', async () => {
      for (let count = 1; count < 3; count += 1) {
        await hand.tab.run(() => { location.hash = '#/examples'; });
        await hand.tap('^Round pen');
        await until(async () => (await kept(hand)).filter(({ text }) => text === shipped('round-pen.toml')).length === count, 'no copy');
      }
    });

    test('a new title that is half typed survives a reload and is then written into the file, its comments left', async () => {
      for (const { id } of (await kept(hand)).filter(({ title }) => !title.startsWith('Round'))) await hand.tab.run((of) => heapcast.store.remove(of), id);
      await hand.tab.run((of) => heapcast.store.remove(of), (await kept(hand))[0].id);
      await toList(hand);
      await more(hand, 'Round pen');
      await hand.tap('^rename$');
      await hand.write('title of the job', 'Pen "two" \\ <b>');
      await hand.tab.reload();
      await hand.sees('Pen "two"');
      await hand.tap('^keep$');
      await until(async () => (await titles(hand))[0] === 'Pen "two" \\ <b>', 'the title is not kept');
      const [{ text }] = await kept(hand);
      assert.equal(text.replace(/^title = .*$/m, ''), shipped('round-pen.toml').replace(/^title = .*$/m, ''));
    });

    test('a duplicate has a title of its own; what is deleted comes back as it was', async () => {
      await more(hand, 'Pen');
      await hand.tap('^duplicate$');
      await until(async () => (await kept(hand)).length === 2, 'no duplicate');
      assert.equal(new Set(await titles(hand)).size, 2);
      const was = await kept(hand);
      await more(hand, 'Pen');
      await hand.tap('^delete$');
      await until(async () => (await kept(hand)).length === 1, 'not deleted');
      await hand.tap('^undo$');
      await until(async () => (await kept(hand)).length === 2, 'not brought back');
      const order = (all) => all.toSorted((a, b) => a.id.localeCompare(b.id));
      assert.deepEqual(order(await kept(hand)), order(was));
    });

    test('all jobs go out as one file and come in again, none twice', async () => {
      const was = await kept(hand);
      await hand.tab.run(() => { location.hash = '#/settings'; });
      await hand.catchFiles();
      await hand.tap('^save all jobs');
      const [{ base64 }] = await hand.caught();
      const all = file('all.json', Buffer.from(base64, 'base64'));
      await hand.give(PICK, all);
      await until(async () => /0 jobs added\. 2 were here/.test(await said(hand)), 'not said');
      for (const { id } of was) await hand.tab.run((of) => heapcast.store.remove(of), id);
      await hand.give(PICK, all);
      await until(async () => (await kept(hand)).length === 2, 'not brought in');
      const plain = (jobs) => jobs.map(({ title, name: of, text, files }) => ({ title, of, text, files })).toSorted((a, b) => a.title.localeCompare(b.title));
      assert.deepEqual(plain(await kept(hand)), plain(was));
      for (const [bad, words] of [['{', 'no file of jobs'], ['{"heapcast":"jobs","jobs":[null,{"name":"x","text":"y","files":[{}]}]}', '2 could not be read']]) {
        await hand.give(PICK, file('bad.json', bad));
        await until(async () => (await said(hand)).includes(words), `${bad}: not refused`);
      }
      assert.equal((await kept(hand)).length, 2);
    });

    test('observed values that come after their scenario are given to it; what is no text is refused', async () => {
      for (const { id } of await kept(hand)) await hand.tab.run((of) => heapcast.store.remove(of), id);
      await toList(hand);
      const text = `\ufeff${shipped('vineyard-rows.toml')}`;
      await hand.give(PICK, file('own-rows.toml', text));
      await until(async () => (await kept(hand)).length === 1, 'not opened');
      await toList(hand);
      await hand.give(PICK, file('vineyard-loads.csv', shipped('vineyard-loads.csv')));
      await until(async () => (await kept(hand))[0].files.length === 1, 'not given');
      assert.deepEqual((await kept(hand)).map(({ name: of, text: has, files }) => [of, has, files]),
        [['own-rows.toml', text, [{ name: 'vineyard-loads.csv', text: shipped('vineyard-loads.csv') }]]]);
      for (const [of, content, words] of [['a.bin', Buffer.from([0xff, 0xfe, 0, 1]), 'no text'], ['b.toml', 'x'.repeat(9_000_000), 'too large'],
        ['vineyard-loads.csv', '1', 'no job here lacks it']]) {
        await hand.give(PICK, file(of, content));
        await until(async () => (await said(hand)).includes(words), `${of}: not refused`);
      }
      assert.equal((await kept(hand)).length, 1);
    });

    test('a link of a job can be pasted, and replaces nothing', async () => {
      const [{ id, text }] = await kept(hand);
      const packed = await hand.tab.run(async (of) => heapcast.engine.pack(await heapcast.store.get(of)), id);
      await toList(hand);
      await hand.tap('^paste a link', { kinds: 'summary' });
      await hand.write('A link', `look: https://example.org/#${packed} `);
      await hand.tap('^open$');
      await hand.sees('on this device already');
      await hand.tap('^keep it$');
      await until(async () => (await kept(hand)).length === 2, 'not kept');
      assert.deepEqual((await kept(hand)).map((job) => job.text), [text, text]);
    });

    test('a page cut off from its storage while it rested opens the way again', async () => {
      await toList(hand);
      const { id } = (await kept(hand))[0];
      await hand.tab.run(async (of) => {
        const was = IDBDatabase.prototype.transaction;
        const job = await heapcast.store.get(of);
        IDBDatabase.prototype.transaction = function (...given) {
          IDBDatabase.prototype.transaction = was;
          this.close();
          return was.apply(this, given);
        };
        job.text += '# later\n';
        await heapcast.store.put(job);
      }, id);
      assert.deepEqual(await hand.tab.run(() => [heapcast.store.trouble(), heapcast.store.unwritten()]), ['', 0]);
      await hand.tab.reload();
      await hand.sees('on this device');
      assert.ok((await kept(hand)).some((job) => job.id === id && job.text.endsWith('# later\n')));
    });
  });
}

// What a page finds of its device is put there before it begins, in Chromium; WebKit knows no way to.
describe('the language of the device', () => {
  let browser;
  afterEach(() => browser?.stop());
  const WANTED = [['en-US', 'us', 'am'], ['en-GB', 'metric', '24'], ['fr-CA', 'metric', '24'], ['de', 'metric', '24'], ['C.UTF-8', 'us', 'am'], [undefined, 'us', 'am']];
  for (const [language, units, clock] of WANTED) {
    test(`${language}: ${units}, ${clock}`, async () => {
      browser = await startChromium({ own: [SINGLE.url] });
      await browser.before((of) => Object.defineProperty(navigator, 'language', { get: () => of ?? undefined }), language ?? null);
      const hand = new Hand(await browser.tab(SINGLE.url));
      await hand.sees('new job');
      assert.deepEqual(await hand.tab.run(() => heapcast.store.settings()), { units, clock, look: '' });
    });
  }
});
