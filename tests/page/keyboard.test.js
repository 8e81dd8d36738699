// The keyboard alone goes the whole main path, and what has the focus shows it. In Chromium: whether a key reaches links is a
// setting of each WebKit browser.

import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { Hand } from './harness/hand.js';
import { unseenFocus } from './harness/look.js';

const MOST_STEPS = 120;

describe('with the keyboard alone', () => {
  let browser;
  let hand;
  before(async () => {
    browser = await startChromium({ own: [SINGLE.url], touch: false });
    hand = new Hand(await browser.tab(SINGLE.url));
    await hand.sees('new job');
  });
  after(() => browser?.stop());

  const focused = () => hand.tab.run(() => {
    const element = document.activeElement;
    const label = element.labels?.[0]?.textContent ?? '';
    return (element.getAttribute('aria-label') || label || element.textContent || '').replace(/\s+/g, ' ').trim();
  });

  /** Steps on until what has the focus is called this; every stop on the way has to show that it has it. */
  async function reach(words, key = 'Tab') {
    const fits = new RegExp(words, 'iu');
    const passed = [];
    for (let i = 0; i < MOST_STEPS; i += 1) {
      const name = await focused();
      if (fits.test(name)) return;
      passed.push(name.slice(0, 30));
      await hand.tab.press(key);
      assert.deepEqual(await hand.tab.run(unseenFocus), []);
    }
    assert.fail(`the keyboard does not reach /${words}/; it passes ${passed.join(' | ')}`);
  }

  test('to a job, a changed value, and back to where one was', async () => {
    await reach('^new job$');
    await hand.tab.press('Enter');
    await hand.answer();
    await hand.rests();
    await reach('people raking');
    await hand.tab.press('Enter');
    await hand.sees('as it stands');
    await reach('^more: ');
    await hand.tab.press('Space');
    await hand.sees('plan on');
    await reach('^keep$');
    await hand.tab.press('Enter');
    await hand.rests();
    assert.match(await focused(), /people raking/i, 'after a sheet the focus is not where it was');
    assert.match(await hand.tab.run(async () => (await heapcast.store.list())[0].text), /count = 2/);
  });

  test('Escape leaves a sheet and keeps nothing', async () => {
    await hand.tab.press('Enter');
    await reach('^more: ');
    await hand.tab.press('Space');
    await hand.tab.press('Escape');
    await hand.rests();
    assert.match(await focused(), /people raking/i);
    assert.match(await hand.tab.run(async () => (await heapcast.store.list())[0].text), /count = 2/);
  });

  test('to undo, to the message for the client and to copying it', async () => {
    await reach('^client$');
    await hand.tab.press('Enter');
    await hand.sees('\\d:\\d\\d');
    await reach('^copy$|^send$');
    await reach('^job$');
    await hand.tab.press('Enter');
    await hand.answer();
    await reach('^share$');
    await hand.tab.press('Enter');
    await hand.sees('as a file');
    await reach('^save the file');
  });

  test('the first key of a screen offers to skip its head', async () => {
    await hand.tab.reload();
    await hand.rests();
    await hand.tab.press('Tab');
    assert.match(await focused(), /skip/);
    await hand.tab.press('Enter');
    assert.equal(await hand.tab.run(() => document.activeElement.id), 'main');
  });
});
