// Every screen in every state on a phone: nothing axe-core complains of, light and dark; nothing wider than the screen; everything
// large enough for a thumb and to be read. Pictures are kept in target/page-pictures. In Firefox the screens that differ most are
// looked at, on the narrowest phone and in the dark; printing and axe-core in Chromium alone. The window of the WebKit at hand is
// never narrower than 447 px and knows no dark.

import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { tooWide } from '../browser/look.js';
import { ROOT, SINGLE } from './harness/built.js';
import { PHONE, startChromium } from './harness/chromium.js';
import { startFirefox } from './harness/firefox.js';
import { Hand } from './harness/hand.js';
import { faintHints, smallTargets, smallText, strayWords } from './harness/look.js';
import { afresh, keepShipped, states } from './harness/screens.js';

const WIDTHS = [320, 360, 430];
const PICTURES = join(ROOT, 'target/page-pictures');
/** The names of the questions, which the page learns from the engine. */
const QUESTIONS = ['forecast', 'compare', 'sweep', 'buckets', 'quote', 'replay', 'check'];
const IN_FIREFOX = ['jobs-more', 'settings', 'job-cautions', 'sheet-material', 'sheet-wrong', 'whatif-compared', 'ask-buckets', 'client', 'crew', 'share'];

const picture = (hand, name, fullPage) => hand.tab.picture(join(PICTURES, `${name}.png`), fullPage);
/** The way past the head waits outside until it has the focus. */
const wide = async (hand) => (await hand.tab.run(tooWide)).filter((fault) => !fault.includes('class="skip"'));

/** What does not fit a phone or a thumb on a screen as it stands now, and what adds a few faults to it. */
async function unfit(hand, widths) {
  const faults = [];
  const add = (where, found) => faults.push(...found.slice(0, 6).map((fault) => `${where}: ${fault}`));
  for (const [what, look] of Object.entries({ smallTargets, smallText, strayWords })) add(what, await hand.tab.run(look));
  for (const width of widths) {
    await hand.tab.resize(width, PHONE.height);
    add(`${width} px`, await wide(hand));
  }
  await hand.tab.resize(PHONE.width, PHONE.height);
  return { faults, add };
}

/** Everything that is wrong with a screen as it stands now; leaves its pictures. */
async function wrong(hand, name) {
  const { faults, add } = await unfit(hand, WIDTHS);
  for (const colorScheme of ['light', 'dark']) {
    await hand.tab.media({ colorScheme });
    await picture(hand, `${name}-${colorScheme}`, !name.startsWith('sheet'));
    add(colorScheme, await hand.tab.axe());
    add(colorScheme, await hand.tab.run(faintHints));
    add(`${colorScheme}, figures`, await hand.tab.axe({ strict: '.big' }));
  }
  await hand.tab.media({ colorScheme: 'light' });
  await hand.tab.resize(1280, 800);
  add('1280 px', await wide(hand));
  await picture(hand, `${name}-1280`, false);
  await hand.tab.media({ media: 'print' });
  await picture(hand, `${name}-print`, true);
  await hand.tab.media({ media: 'screen' });
  await hand.tab.resize(PHONE.width, PHONE.height);
  return faults;
}

const none = (faults) => assert.equal(faults.length, 0, `\n${faults.join('\n')}`);

describe('every screen', () => {
  let browser;
  let hand;
  let id;
  before(async () => {
    mkdirSync(PICTURES, { recursive: true });
    browser = await startChromium({ own: [SINGLE.url, 'about:'] });
    hand = new Hand(await browser.tab(SINGLE.url));
    id = await keepShipped(hand, 'riding-arena');
  });
  after(() => browser?.stop());

  test('every question of the engine has its screen here', async () => {
    const { questions } = await hand.tab.run(() => heapcast.engine.about());
    assert.deepEqual(questions.map(({ name }) => name).sort(), [...QUESTIONS].sort());
  });

  for (const [number, { name }] of states(null, '', QUESTIONS).entries()) {
    test(name, async () => {
      await hand.tab.resize(PHONE.width, PHONE.height);
      await afresh(hand);
      await states(hand, id, QUESTIONS)[number].go();
      none(await wrong(hand, name));
    });
  }

  test('no screen asks for anything or complains', () => {
    assert.deepEqual([browser.asked, hand.tab.errors], [[], []]);
  });
});

describe('the screens that differ most, in Firefox in the dark', () => {
  let browser;
  let hand;
  let id;
  before(async () => {
    mkdirSync(PICTURES, { recursive: true });
    browser = await startFirefox({ settings: { 'ui.systemUsesDarkTheme': 1 } });
    hand = new Hand(await browser.tab(SINGLE.url));
    id = await keepShipped(hand, 'riding-arena');
  });
  after(() => browser?.stop());

  for (const name of IN_FIREFOX) {
    test(name, async () => {
      await afresh(hand);
      await states(hand, id, QUESTIONS).find((state) => state.name === name).go();
      const { faults, add } = await unfit(hand, [WIDTHS[0]]);
      await picture(hand, `${name}-firefox`, !name.startsWith('sheet'));
      for (const look of ['dark', 'light']) {
        await hand.tab.run((of) => { document.documentElement.dataset.look = of; }, look);
        add(look, await hand.tab.run(faintHints));
      }
      none(faults);
    });
  }

  test('the page is dark; no screen asks for anything or complains', async () => {
    await afresh(hand);
    assert.equal(await hand.tab.run(() => document.documentElement.dataset.look), 'dark');
    assert.deepEqual([browser.asked, hand.tab.errors], [[], []]);
  });
});

test('a window that keeps nothing', async () => {
  const browser = await startChromium({ own: [SINGLE.url] });
  try {
    await browser.before(() => { IDBFactory.prototype.open = () => { throw new DOMException('not here', 'SecurityError'); }; });
    const hand = new Hand(await browser.tab(SINGLE.url));
    await hand.sees('keeps nothing');
    none(await wrong(hand, 'keeps-nothing'));
  } finally {
    await browser.stop();
  }
});
