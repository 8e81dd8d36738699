// What is measured of the page, printed for the log of a build. A clock judges nothing here but gross faults; sizes and lines are judged.

import assert from 'node:assert/strict';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { FOLDER, ROOT, SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { Hand } from './harness/hand.js';
import { forecast } from './harness/native.js';
import { keepShipped } from './harness/screens.js';
import { slow } from './harness/slow.js';

const ENGINE = readdirSync(FOLDER).filter((name) => /\.(wasm|lzma)$/.test(name));
const WEB = join(ROOT, 'reports/page/web');
const say = (words) => console.log(`measured: ${words}`);
const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const kB = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;

/** How long the engine takes for so many runs of a shipped job. Runs in the page. */
async function took(name, runs) {
  const job = (await heapcast.engine.about()).shipped.find((one) => one.name === name);
  const start = performance.now();
  await heapcast.engine.ask({ question: 'forecast', jobs: [job], options: [['runs', runs]] });
  return performance.now() - start;
}

test('all HTML, CSS and JavaScript stay below 2,500 lines, each file below 300', () => {
  const lines = readdirSync(WEB, { recursive: true }).filter((name) => /\.(html|css|js)$/.test(name))
    .map((name) => ({ name, count: readFileSync(join(WEB, name), 'utf8').trimEnd().split('\n').length }));
  const all = lines.reduce((sum, { count }) => sum + count, 0);
  // How large they may be is judged by the tests of the engine.
  say(`single file ${kB(statSync(SINGLE.path).size)}, ${ENGINE.map((name) => `${name} ${kB(statSync(join(FOLDER, name)).size)}`).join(', ')}`);
  say(`${all} lines in ${lines.length} files of the page, the longest ${Math.max(...lines.map(({ count }) => count))}`);
  assert.ok(lines.length > 5 && all < 2500, `${all} lines`);
  assert.deepEqual(lines.filter(({ count }) => count > 300), []);
});

// In Firefox nothing is measured: it would take as long as half of all that is tried there.
for (const { name, start } of BROWSERS.filter((one) => one.name !== 'Firefox')) {
  test(`speed against the native program, in ${name}`, async () => {
    const browser = await start({ own: [SINGLE.url] });
    try {
      const tab = await browser.tab(SINGLE.url);
      await tab.run(took, 'riding-arena.toml', '200');
      for (const job of ['riding-arena', 'show-ground']) {
        const here = await tab.run(took, `${job}.toml`, '10000');
        const begun = performance.now();
        forecast(job, '--runs', '10000', '--threads', '1');
        const there = performance.now() - begun;
        say(`${job}, 10,000 runs: ${seconds(here)} in ${name}, ${seconds(there)} native with one thread and its files, ratio ${(here / there).toFixed(1)}`);
        assert.ok(here / there < 20, 'far slower than the native program');
      }
    } finally {
      await browser.stop();
    }
  });
}

describe('a phone, as Chromium slowed four times stands in for one', () => {
  let browser;
  let hand;
  before(async () => {
    browser = await startChromium({ own: [SINGLE.url] });
    hand = new Hand(await browser.tab(SINGLE.url));
    await hand.sees('new job');
  });
  after(() => browser?.stop());

  test('first answer and 10,000 runs of riding-arena', async () => {
    const id = await keepShipped(hand, 'riding-arena');
    const end = slow(browser, 4);
    let times;
    try {
      times = await hand.tab.run(async (of) => {
        const start = performance.now();
        const seen = (fits) => new Promise((done) => {
          const look = () => { if (fits()) done(performance.now() - start); };
          new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
          look();
        });
        location.hash = `#/job/${of}`;
        const from = (runs) => () => document.querySelector('.card .from')?.textContent.includes(runs) && /\d:\d\d/.test(document.querySelector('.card .plan')?.textContent ?? '');
        return Promise.all([seen(() => document.querySelector('.sentence button')), seen(from('2,000')), seen(from('10,000'))]);
      }, id);
    } finally {
      const times4 = end();
      say(`the page was slowed ${times4.toFixed(1)} times`);
    }
    const [sentence, first, whole] = times;
    say(`slowed: the sentence after ${seconds(sentence)}, the first answer after ${seconds(first)}, that of 10,000 runs after ${seconds(whole)}`);
    assert.ok(first < 20_000 && whole < 60_000, 'far too slow');
  });

  test('the longest task of the main thread, from opening the page to a changed answer', async () => {
    const tab = await browser.tab();
    const cdp = await browser.cdp(tab);
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await browser.before(() => {
      window.tasks = [];
      new PerformanceObserver((list) => window.tasks.push(...list.getEntries().map(({ startTime, duration }) => ({ startTime, duration })))).observe({ type: 'longtask', buffered: true });
    });
    await tab.go(SINGLE.url);
    const phone = new Hand(tab);
    await phone.sees('new job');
    const opened = await tab.run(() => performance.now());
    await phone.tap('^new job$');
    await phone.answer();
    await phone.rests();
    await phone.value('rakers');
    await phone.tap('^more: ', { place: '.stepper' });
    await phone.sees('plan on');
    await phone.tap('^keep$');
    await phone.rests();
    const tasks = await tab.run(() => window.tasks);
    const longest = (all) => Math.max(0, ...all.map(({ duration }) => duration)).toFixed(0);
    say(`slowed: longest task of the main thread ${longest(tasks.filter(({ startTime }) => startTime < opened))} ms while opening, ${longest(tasks.filter(({ startTime }) => startTime >= opened))} ms afterwards`);
    assert.ok(tasks.every(({ duration }) => duration < 3000), 'the page stands still');
  });
});
