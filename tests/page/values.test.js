// Every value of a sentence opens its sheet; what cannot be is told there in words and not kept.

import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { SINGLE } from './harness/built.js';
import { startChromium } from './harness/chromium.js';
import { Hand, until } from './harness/hand.js';
import { goTo, keepShipped } from './harness/screens.js';

const NONSENSE = '-7 bananas';

describe('each value of a job with all there is', () => {
  let browser;
  let hand;
  before(async () => {
    browser = await startChromium({ own: [SINGLE.url] });
    hand = new Hand(await browser.tab(SINGLE.url));
  });
  after(() => browser?.stop());

  for (const name of ['riding-arena', 'show-ground']) {
    test(name, async () => {
      const id = await keepShipped(hand, name);
      await goTo(hand, `#/job/${id}`);
      const read = () => hand.tab.run(async (of) => {
        const job = await heapcast.store.get(of);
        const { sentence } = await heapcast.engine.read(job, heapcast.shell.prefs());
        return { text: job.text, values: sentence.clauses.flatMap(({ parts }) => parts).map((part) => part.value).filter(Boolean) };
      }, id);
      const before = await read();
      assert.ok(before.values.length > 20, `${before.values.length} values`);
      const faults = [];
      for (const { key, title, units } of before.values) {
        // Names may be nearly anything; what has units may not.
        if (!units.length) continue;
        await hand.value(key);
        await hand.write('', NONSENSE, { kinds: '#typed' });
        const words = await until(() => hand.tab.run(() => document.querySelector('#wrong').textContent), `${key}: nonsense is taken`).catch((error) => error.message);
        if (!/wanted|such as|must|cannot|not /.test(words)) faults.push(`${key} (${title}): ${words}`);
        await hand.tab.press('Enter');
        await hand.tap('^back$');
        await hand.left();
      }
      assert.deepEqual(faults, []);
      assert.equal((await read()).text, before.text);
    });
  }
});
