// The files of a forecast made in a browser, from the single file, are byte for byte those of the native program.

import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SHIPPED, SINGLE } from './harness/built.js';
import { forecast } from './harness/native.js';

const scenarios = readdirSync(SHIPPED).filter((file) => file.endsWith('.toml')).map((file) => file.slice(0, -5));
const FEW = '120';
const MANY = '10000';

/** Runs in the page: asks for a forecast, gives its files as base64. */
async function made(name, options) {
  const job = (await heapcast.engine.about()).shipped.find((one) => one.name === `${name}.toml`);
  await heapcast.engine.ask({ question: 'forecast', jobs: [job], options });
  const files = {};
  for (const file of await heapcast.engine.names()) {
    const bytes = await heapcast.engine.file(file);
    const url = await new Promise((done) => {
      const reader = new FileReader();
      reader.onload = () => done(reader.result);
      reader.readAsDataURL(new Blob([bytes]));
    });
    files[file] = url.slice(url.indexOf(',') + 1);
  }
  return { text: job.text, files };
}

for (const { name: browserName, start } of BROWSERS) {
  describe(`in ${browserName}`, () => {
    let browser;
    let tab;
    before(async () => {
      browser = await start({ own: [SINGLE.url] });
      tab = await browser.tab(SINGLE.url);
    });
    after(() => browser?.stop());

    async function compare(name, runs, seed) {
      const options = [['runs', runs], ['seed', seed]];
      const { text, files } = await tab.run(made, name, options);
      assert.equal(text, readFileSync(join(SHIPPED, `${name}.toml`), 'utf8'), `the page ships another ${name}`);
      const wanted = forecast(name, '--runs', runs, '--seed', seed);
      assert.deepEqual(Object.keys(files).sort(), [...wanted.keys()]);
      for (const [file, bytes] of wanted) assert.ok(bytes.equals(Buffer.from(files[file], 'base64')), `${name}: ${file} differs`);
      return wanted;
    }

    for (const name of scenarios) test(`${name}, ${FEW} runs`, () => compare(name, FEW, '7'));

    test(`riding-arena, ${MANY} runs`, async () => {
      const files = await compare('riding-arena', MANY, '1');
      assert.equal(files.get('runs.csv').toString().trim().split('\n').length, 10_001);
    });

    test('another seed gives other files, so the comparison can fail', async () => {
      const { files } = await tab.run(made, 'round-pen', [['runs', FEW], ['seed', '8']]);
      const other = forecast('round-pen', '--runs', FEW, '--seed', '7');
      assert.notEqual(Buffer.from(files['runs.csv'], 'base64').toString(), other.get('runs.csv').toString());
    });
  });
}
