// The engine's worker may end at any moment: by a trap of its own, by being ended, by leaving a screen. The page works again and
// nothing is lost. A worker is reached from outside in Chromium alone; leaving a screen is tried in all.

import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { Hand, until } from './harness/hand.js';
import { keepShipped } from './harness/screens.js';

const text = (hand) => hand.tab.run(async () => (await heapcast.store.list())[0].text);

async function onePerson(hand) {
  await hand.value('rakers');
  await hand.tap('^more: ', { place: '.stepper' });
  await hand.sees('plan on', 30_000);
  await hand.tap('^keep$');
  await hand.rests();
}

/** Makes everything the worker is asked from now on run into a real trap. Runs inside the worker. */
function poison() {
  const unreachable = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 120, 0, 0, 10, 5, 1, 3, 0, 0, 11]);
  const { x } = new WebAssembly.Instance(new WebAssembly.Module(unreachable)).exports;
  for (const name of ['ask', 'read', 'edit', 'pack', 'message']) wasm_bindgen[name] = () => x();
}

describe('a worker that ends, in Chromium', () => {
  let browser;
  let hand;
  before(async () => {
    browser = await startChromium({ own: [SINGLE.url] });
    await browser.before(() => {
      window.begun = [];
      window.Worker = class extends Worker {
        constructor(...made) {
          super(...made);
          window.begun.push(this);
        }
      };
    });
    hand = new Hand(await browser.tab(SINGLE.url));
    await hand.tap('^new job$');
    await hand.answer();
    await hand.rests();
  });
  after(() => browser?.stop());

  const workers = () => hand.tab.page.workers();

  test('by a trap: it is said or tried again, and the next touch is answered', async () => {
    const [first] = workers();
    await first.evaluate(poison);
    const caught = await hand.tab.run(async () => {
      try { return await heapcast.engine.read((await heapcast.store.list())[0], heapcast.shell.prefs()); } catch (error) { return `refused: ${error.message}`; }
    });
    console.log('after a trap:', typeof caught === 'string' ? caught : 'answered by a new worker');
    const before = await text(hand);
    await onePerson(hand);
    assert.notEqual(await text(hand), before);
    assert.notEqual(workers().at(-1), first, 'the trapped worker goes on');
  });

  test('by a trap while a sheet is open: what was typed is kept', async () => {
    await hand.value('volume');
    // The page ends the worker of the answer that it leaves; the one that is begun then is meant.
    await until(() => workers().at(-1)?.evaluate(poison).then(() => true, () => false), 'no worker is begun');
    await hand.write('', '19', { kinds: '#typed' });
    await hand.tab.type('5');
    await until(() => hand.tab.run(() => document.querySelector('#typed')?.value.startsWith('195')), 'what was typed is gone');
    await hand.tab.press('Backspace');
    await hand.sees('plan on', 30_000);
    await hand.tap('^keep$');
    await until(async () => /volume = "19 /.test(await text(hand)), 'what was typed cannot be kept');
  });

  test('by an error nobody caught while it rests: the next touch is answered', async () => {
    await hand.rests();
    const last = workers().at(-1);
    await last.evaluate(() => { setTimeout(() => { throw new Error('out of order'); }); });
    await until(() => !workers().includes(last), 'the worker goes on');
    await onePerson(hand);
    await hand.answer();
  });

  test('ended in the middle of the runs: the next touch is answered', async () => {
    const id = await keepShipped(hand, 'show-ground');
    await hand.tab.run((of) => { location.hash = `#/job/${of}`; }, id);
    await until(() => hand.tab.run(() => document.querySelector('.card progress')?.value > 0), 'nothing runs', 60_000);
    await hand.tab.run(() => window.begun.at(-1).terminate());
    await hand.value('shift.start');
    await hand.write('', '07:10', { kinds: '#typed' });
    await hand.tap('^keep$');
    await until(async () => /start = "0?7:10/.test(await text(hand)), 'what was typed cannot be kept');
    await hand.answer(60_000);
  });

  test('never more than one worker is left', async () => {
    await hand.tab.run(() => { location.hash = '#/'; });
    await hand.rests();
    await until(() => workers().length === 1, () => `${workers().length} workers`);
  });
});

for (const { name, start } of BROWSERS) {
  test(`leaving the screen in the middle of the runs ends them, in ${name}`, async () => {
    const browser = await start({ own: [SINGLE.url] });
    try {
      const hand = new Hand(await browser.tab(SINGLE.url));
      await hand.tap('^new job$');
      for (let i = 0; i < 5; i += 1) {
        await until(() => hand.tab.run(() => document.querySelector('main [aria-busy=true]')), 'nothing runs');
        await hand.tab.run(() => { location.hash = '#/'; });
        await hand.tap('job of', { kinds: 'a.over' });
      }
      await hand.answer();
      await hand.rests();
      assert.deepEqual(hand.tab.errors, []);
    } finally {
      await browser.stop();
    }
  });
}
