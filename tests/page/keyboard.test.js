// The keyboard alone goes the whole main path, and what has the focus shows it. Not in WebKit: whether a key reaches links is a
// setting of each of its browsers.

import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SINGLE } from './harness/built.js';
import { Hand } from './harness/hand.js';
import { unseenFocus } from './harness/look.js';

const MOST_STEPS = 120;

for (const { name, start } of BROWSERS.filter((one) => one.name !== 'WebKit')) {
  describe(`with the keyboard alone, in ${name}`, () => {
    let browser;
    let hand;
    before(async () => {
      browser = await start({ own: [SINGLE.url], touch: false });
      hand = new Hand(await browser.tab(SINGLE.url));
      await hand.sees('new job');
    });
    after(() => browser?.stop());

    const focused = () => hand.tab.run(() => {
      const element = document.activeElement;
      // The browser's own controls have it.
      if (!document.hasFocus()) return '';
      const label = element.labels?.[0]?.textContent ?? '';
      return (element.getAttribute('aria-label') || label || element.textContent || '').replace(/\s+/g, ' ').trim();
    });

    /** Steps on until what has the focus is called this; every stop on the way has to show that it has it. */
    async function reach(words, key = 'Tab') {
      const fits = new RegExp(words, 'iu');
      const passed = [];
      for (let i = 0; i < MOST_STEPS; i += 1) {
        const at = await focused();
        if (fits.test(at)) return;
        passed.push(at.slice(0, 30));
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
      // Back the way it came: at the end of a page Firefox goes on into its own controls.
      await reach('^job$', 'Shift+Tab');
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
}
