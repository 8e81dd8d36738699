// What comes from outside is shown as text and harms nothing: scenarios with hostile names, files that are none, links cut short or
// made to burst.

import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { deflateRawSync, deflateSync } from 'node:zlib';
import { CASES, bucketList } from '../browser/nasty.js';
import { BROWSERS } from './harness/browsers.js';
import { SINGLE } from './harness/built.js';
import { Hand, until } from './harness/hand.js';
import { goTo } from './harness/screens.js';

const NAMES = ['hostile-names', 'right-to-left', 'long-names'];
/** File names as hostile as what is in the files; a slash no system takes. */
const FILES = { 'hostile-names': '"><img src=x onerror=window.hit=3>.toml', 'right-to-left': '\u202elmot.exe.toml', 'long-names': `${'x'.repeat(200)}.toml` };
const PICK = 'input[type=file][multiple]';
const BOMB = Buffer.alloc(300_000_000, ' ');

/** Anything a name could have smuggled in. Runs in the page. */
function smuggled() {
  const own = (element) => element.matches('iframe.paper[sandbox]') && !element.getAttribute('sandbox').includes('allow-scripts');
  const inside = [...document.querySelectorAll('iframe')].flatMap((frame) => (frame.contentDocument ? [...frame.contentDocument.querySelectorAll('script, img, object, embed')] : []));
  const found = [...document.body.querySelectorAll('main script, dialog script, img, iframe, object, embed, b b'), ...inside].filter((element) => !own(element));
  const faults = found.map((element) => element.outerHTML.slice(0, 100));
  if (window.hit !== undefined) faults.push(`a script ran: ${window.hit}`);
  return faults;
}

for (const { name, start } of BROWSERS) {
  describe(`from outside, in ${name}`, () => {
    const folder = mkdtempSync(join(tmpdir(), 'heapcast-hostile-'));
    let browser;
    let hand;
    before(async () => {
      browser = await start({ own: [SINGLE.url] });
      hand = new Hand(await browser.tab(SINGLE.url));
      await hand.sees('new job');
    });
    after(async () => {
      await browser?.stop();
      rmSync(folder, { recursive: true, force: true });
    });

    const file = (of, text) => {
      const path = join(folder, of);
      writeFileSync(path, text);
      return path;
    };
    const clean = async (where) => assert.deepEqual(await hand.tab.run(smuggled), [], where);

    for (const { name: of, toml, buckets } of CASES.filter((one) => NAMES.includes(one.name))) {
      test(`${of}: every screen shows them as text`, async () => {
        const title = JSON.parse(/^title = (".*")$/m.exec(toml)[1]);
        await goTo(hand, '#/');
        await hand.give(PICK, file(FILES[of], toml));
        await hand.answer();
        await hand.rests();
        assert.ok((await hand.tab.run(() => document.querySelector('h1').textContent)).includes(title), 'the title is not shown as it is');
        const id = await hand.tab.run(() => location.hash.split('/')[2]);
        assert.equal(await hand.tab.run(async (key) => (await heapcast.store.get(key)).text, id), toml);
        await clean('the job');
        for (const screen of ['whatif', 'more', 'client', 'crew', 'save', 'share', 'text', 'ask/quote', 'ask/check']) {
          await goTo(hand, `#/job/${id}/${screen}`);
          await clean(screen);
        }
        await goTo(hand, `#/job/${id}/ask/forecast`);
        await hand.tap('^answer$');
        await hand.tap('^report$');
        await until(() => hand.tab.run(() => document.querySelector('iframe.paper')?.contentDocument?.querySelector('.answer')), 'no report');
        await clean('the report');
        await hand.tap('^close$');
        await goTo(hand, `#/job/${id}/ask/buckets`);
        await hand.give('fieldset input[type=file]', file(`${of}.csv`, bucketList(buckets)));
        await hand.tap('^answer$');
        await hand.rests();
        await clean('buckets');
        await goTo(hand, '#/');
        await clean('the list of jobs');
      });
    }

    const STRANGE = {
      'nothing in it': ['empty.toml', '', 'this file is empty'],
      'no text': ['picture.toml', Buffer.from([0xff, 0xfe, 0x00, 0xd8, 0x00]), 'picture.toml: no text'],
      'another format': ['letter.toml', '<html><script>window.hit = 4</script></html>', 'not valid TOML'],
      'deep brackets': ['deep.toml', `a = ${'['.repeat(50_000)}`, 'nested'],
      'a list of all jobs that is none': ['jobs.json', '{"heapcast":"jobs","jobs":[{"__proto__":{"hit":5}},null,7,{"name":{},"text":[]}]}', '0 jobs added. *4 could not be read'],
    };
    for (const [what, [of, bytes, words]] of Object.entries(STRANGE)) {
      test(`a file with ${what} is answered in words`, async () => {
        await goTo(hand, '#/');
        await hand.give(PICK, file(of, bytes));
        await hand.sees(words);
        await clean(of);
        await goTo(hand, '#/');
        await hand.sees('new job');
      });
    }

    const packed = () => hand.tab.run(async () => heapcast.engine.pack((await heapcast.store.list())[0]));
    const code = (bytes) => `1.${bytes.toString('base64url')}`;
    const LINKS = {
      'cut short': async () => (await packed()).slice(0, -9),
      'cut to almost nothing': async () => (await packed()).slice(0, 5),
      'with a letter changed': async () => (await packed()).replace(/^(1\..{20})./, (_, head) => `${head}!`),
      'that is none': async () => '1.%00%ff',
      'of a later page': async () => (await packed()).replace(/^1\./, '9.'),
      'that bursts (raw)': async () => code(deflateRawSync(BOMB, { level: 9 })),
      'that bursts': async () => code(deflateSync(BOMB, { level: 9 })),
      'with a job that is none': async () => code(deflateRawSync(Buffer.from('{"name":7,"text":["x"]}'))),
    };
    for (const [what, make] of Object.entries(LINKS)) {
      test(`a link ${what} is answered in words`, async () => {
        const before = await hand.tab.run(async () => (await heapcast.store.list()).length);
        await goTo(hand, `#${await make()}`);
        await hand.sees('holds no job|cut short|newer|cannot be read|nothing here');
        assert.equal(await hand.tab.run(async () => (await heapcast.store.list()).length), before);
        await goTo(hand, '#/');
        await hand.tap('^new job$');
        await hand.answer();
      });
    }

    test('nothing was asked of the network', () => assert.deepEqual(browser.asked, []));
  });
}
