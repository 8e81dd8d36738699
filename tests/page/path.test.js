// The path of a person: from opening the page with the network cut to a job of their own, a message for the client and the job
// on another device. The same steps in Chromium and in Firefox (phones) and in WebKit.

import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SHIPPED, SINGLE } from './harness/built.js';
import { Hand, until } from './harness/hand.js';
import { startWebKit } from './harness/webkit.js';

const MOST_TOUCHES = 12;
const CLOCK = '\\d{1,2}:\\d\\d';
const kept = mkdtempSync(join(tmpdir(), 'heapcast-path-'));
after(() => rmSync(kept, { recursive: true, force: true }));

const jobs = (hand) => hand.tab.run(async () => (await heapcast.store.list()).map(({ id, title, name, text }) => ({ id, title, name, text })));
const shownJob = (hand) => hand.tab.run(async () => (await heapcast.store.get(location.hash.split('/')[2]))?.text ?? '');
const plan = (hand) => hand.answer();
/** All that the answer says. */
const card = async (hand) => { await plan(hand); return hand.tab.run(() => document.querySelector('.card .body').textContent); };

/** The text of a file the page saves after `act`. */
async function saved(hand, act) {
  await hand.catchFiles();
  await act();
  return hand.caught();
}

for (const { name, start } of BROWSERS) {
  describe(`a person's path in ${name}`, () => {
    let browser;
    let hand;
    let own;
    before(async () => {
      browser = await start({ own: [SINGLE.url] });
      hand = new Hand(await browser.tab(SINGLE.url));
      await hand.tab.run(() => heapcast.store.settings({ units: 'us', clock: 'am' }));
    });
    after(() => browser?.stop());

    test('an answer stands there after one touch, with nothing typed', async () => {
      await hand.tap('^new job$');
      await plan(hand);
      assert.deepEqual([hand.touches, hand.keys], [1, 0]);
    });

    test('a job like the round pen takes at most twelve touches', async () => {
      for (const { id } of await jobs(hand)) await hand.tab.run((of) => heapcast.store.remove(of), id);
      await hand.tab.go(SINGLE.url);
      [hand.touches, hand.keys] = [0, 0];
      await hand.tap('^new job$');
      await hand.value('material.name');
      await hand.write('', 'shredded', { kinds: '#typed' });
      await hand.tap('^shredded wood mulch$');
      await hand.left();
      for (const [key, figure] of [['volume', '24'], ['on_hand', '28'], ['heaped', '12']]) {
        await hand.value(key);
        await hand.write('', figure, { kinds: '#typed' });
        await hand.tab.press('Enter');
        await hand.left();
      }
      await until(async () => /heaped = "12 ft3"/.test(await shownJob(hand)), 'the last value is not kept');
      await hand.rests();
      own = await card(hand);
      const text = await shownJob(hand);
      for (const part of [/name = "shredded wood mulch"/, /volume = "24 yd3"/, /on_hand = "28 yd3"/, /heaped = "12 ft3"/, /distance = "30 yd"/]) assert.match(text, part);
      console.log(`${name}: ${hand.touches} touches and ${hand.keys} keys to a job like the round pen`);
      assert.ok(hand.touches <= MOST_TOUCHES, `${hand.touches} touches`);
    });

    test('one thing changed: the difference is told before it is kept, and taken back with one touch', async () => {
      const before = await shownJob(hand);
      await hand.value('rakers');
      await hand.tap('^more: ', { place: '.stepper' });
      const told = await until(() => hand.tab.run(() => {
        const said = document.querySelector('dialog .difference')?.textContent ?? '';
        return /plan on/i.test(said) && said;
      }), 'no difference is told');
      assert.match(told, /\d+ min|\d+ h/, told);
      assert.match(told, /more|faster|sooner|saves|earlier|days/i, told);
      await hand.tap('^keep$');
      await until(async () => (await shownJob(hand)) !== before, 'the change is not kept');
      await until(async () => (await card(hand)) !== own, 'the answer stays as it was');
      await hand.tap('^undo$');
      await until(async () => (await shownJob(hand)) === before, 'undo does not give the job back');
      await until(async () => (await card(hand)) === own, 'undo does not give the answer back');
    });

    test('a message for the client says the day, the time and, if wanted, the price', async () => {
      await hand.tap('^client$');
      assert.match(await hand.sees(CLOCK), new RegExp(CLOCK));
      await hand.write('price', '$1,850');
      await hand.tab.press('Tab');
      const message = await hand.sees('1,850[\\s\\S]*\\d{1,2}:\\d\\d|\\d{1,2}:\\d\\d[\\s\\S]*1,850');
      assert.doesNotMatch(message, /undefined|NaN|null/);
      await hand.tab.back();
      await hand.rests();
    });

    test('the link opened in a second window gives the same job', async () => {
      const text = await shownJob(hand);
      await hand.tap('^share$');
      const link = await until(() => hand.tab.run(() => document.querySelector('#link')?.value ?? ''), 'no link');
      await until(() => hand.tab.run(() => Boolean(document.querySelector('.code svg'))), 'no code of so small a job');
      const packed = link.slice(link.indexOf('#') + 1);
      const other = new Hand(await browser.tab(`${SINGLE.url}#${packed}`));
      await other.tap('^keep it$');
      await plan(other);
      assert.equal(await shownJob(other), text);
      await other.tab.close();
      await hand.tab.back();
      await hand.rests();
    });

    test('exported, deleted, undone, deleted and imported, a job is the same bytes', async () => {
      const example = readFileSync(join(SHIPPED, 'riding-arena.toml'));
      const file = join(kept, 'riding-arena.toml');
      writeFileSync(file, example);
      await hand.tab.go(SINGLE.url);
      await hand.give('input[type=file][multiple]', file);
      await plan(hand);
      await hand.tap('^share$');
      const [out] = await saved(hand, () => hand.tap('save the file'));
      assert.deepEqual([out.name, Buffer.from(out.base64, 'base64').equals(example)], ['riding-arena.toml', true]);

      await hand.tab.go(SINGLE.url);
      const all = await jobs(hand);
      const title = all.find(({ text }) => text === example.toString()).title;
      const remove = async () => {
        await hand.tap(`more about ${title}`, { kinds: 'summary' });
        await hand.tap('^delete$', { place: 'li.job:has(details[open])' });
        await hand.sees('deleted');
      };
      await remove();
      assert.equal((await jobs(hand)).length, all.length - 1);
      await hand.tap('^undo$');
      await until(async () => (await jobs(hand)).length === all.length, 'undo brings no job back');
      await remove();
      writeFileSync(file, Buffer.from(out.base64, 'base64'));
      await hand.give('input[type=file][multiple]', file);
      await plan(hand);
      assert.equal(await shownJob(hand), example.toString());
    });

    test('what is half typed is there after a reload without a network', async () => {
      await hand.value('distance');
      await hand.write('', '7', { kinds: '#typed' });
      await hand.tab.type('3');
      await hand.tab.reload();
      await until(() => hand.tab.run(() => document.querySelector('dialog[open] #typed')?.value.startsWith('73')), 'the half-typed figure is gone');
      await hand.tap('^keep$');
      await hand.left();
      await until(async () => /distance = "73 yd"/.test(await shownJob(hand)), 'what was half typed cannot be kept');
    });

    test('the report opens whole, without a script in it', async () => {
      await hand.tap('^more$');
      await hand.tap('^forecast', { kinds: 'a' });
      await hand.tap('^answer$');
      await hand.tap('^report$');
      const report = await until(() => hand.tab.run(() => {
        const inside = document.querySelector('iframe.paper')?.contentDocument;
        return inside?.querySelector('.answer') ? { text: inside.body.textContent, scripts: inside.scripts.length, high: inside.documentElement.scrollHeight } : null;
      }), 'no report');
      assert.match(report.text, /Plan on/i);
      assert.equal(report.scripts, 0);
      assert.ok(report.high > 700, `${report.high} px high`);
      await hand.tap('^close$');
      // The page takes its own step back; one on top of it before it is done would be lost.
      await until(() => hand.tab.run(() => !document.querySelector('dialog[open]') && !history.state?.over), 'the report stays open');
    });

    test('a quote and a list of buckets are answered', async () => {
      await hand.tab.back();
      await hand.tap('^quote', { kinds: 'a' });
      await hand.tap('^answer$');
      await hand.sees('\\$\\s?[\\d,]+', 60_000);
      await hand.tab.back();
      await hand.tap('^buckets', { kinds: 'a' });
      await hand.tap('^answer$');
      await until(() => hand.tab.run(() => document.querySelector('section[aria-label="The answer"] dl, section[aria-label="The answer"] .headline')), 'buckets without an answer', 60_000);
    });

    test('nothing was asked of the network, and nothing went wrong', () => {
      assert.deepEqual([browser.asked, hand.tab.errors], [[], []]);
    });
  });
}

test('a device whose language no browser knows gets its page, in WebKit', async () => {
  const browser = await startWebKit({ language: 'C' });
  try {
    const hand = new Hand(await browser.tab(SINGLE.url));
    await hand.tap('^new job$');
    await plan(hand);
  } finally {
    await browser.stop();
  }
});
