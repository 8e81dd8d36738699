// Every question about every shipped scenario: the files that the engine of the page makes are byte for byte those of the terminal.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { NATIVE, SHIPPED, engine } from './engine.js';

const FEW = '500';
const MANY = '10000';
const SEED = ['seed', '7'];
const LIST = 'arena-buckets.csv';

/** Options of each question with so many runs; those of replay and check have none. */
const OPTIONS = {
  forecast: (runs) => [['runs', runs], SEED, ['by', '14:00']],
  compare: (runs) => [['runs', runs], ['most', runs], SEED, ['change', 'bigger bucket: bucket = 0.5 m3'], ['change', 'haul = 40 m']],
  quote: (runs) => [['runs', runs], SEED],
  buckets: (runs) => [['runs', runs], SEED],
  sweep: (runs) => [['vary', 'haul 20 m..60 m'], ['runs', runs], SEED],
  replay: () => [SEED],
  check: () => [],
};

/** Two texts are the same; else where they begin to differ. */
function same(what, page, terminal) {
  if (page === terminal) return;
  let at = 0;
  while (page[at] === terminal[at]) at++;
  const around = (text) => JSON.stringify(text.slice(Math.max(0, at - 60), at + 60));
  assert.fail(`${what} differs at ${at}: page ${around(page)}, terminal ${around(terminal)}`);
}

describe('the engine of the page', () => {
  let wasm;
  let about;
  let folder;
  before(() => {
    wasm = engine();
    about = JSON.parse(wasm.about());
    folder = mkdtempSync(join(tmpdir(), 'heapcast-'));
    cpSync(SHIPPED, folder, { recursive: true });
  });
  after(() => rmSync(folder, { recursive: true, force: true }));

  /** What the page says and makes: the refusal, or line, JSON, screen and files. */
  function inPage(question, job, options) {
    const { files } = about.questions.find((one) => one.name === question);
    const list = files.some((file) => file.list) ? about.lists.find((one) => one.name === LIST) : undefined;
    let answered;
    try {
      answered = wasm.ask(JSON.stringify({ question, jobs: [job], list, options }), undefined);
    } catch (error) {
      const refused = JSON.parse(error.message);
      return { refused: refused.message ?? refused.problems.map((problem) => problem.words).join('\n') };
    }
    const names = JSON.parse(answered.names());
    const made = Object.fromEntries(names.map((name) => [name, Buffer.from(answered.file(name))]));
    const all = { line: answered.headline(), json: answered.json(), screen: answered.screen(100), made };
    answered.free();
    return all;
  }

  /** The same of the terminal. */
  function inTerminal(question, job, options) {
    const { folder: out, files } = about.questions.find((one) => one.name === question);
    const typed = [question, job.name, ...(files.some((file) => file.list) ? [LIST] : [])];
    typed.push(...options.flatMap(([name, value]) => [`--${name}`, value]));
    const program = (...more) =>
      execFileSync(NATIVE, [...typed, ...more], { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], env: { PATH: process.env.PATH, NO_COLOR: '1' } });
    let line;
    try {
      line = program('--quiet').trimEnd();
    } catch (error) {
      return { refused: error.stderr };
    }
    const made = {};
    if (out) {
      for (const name of readdirSync(join(folder, out.name)).filter((name) => name !== 'heapcast.manifest.json')) {
        made[name] = readFileSync(join(folder, out.name, name));
      }
    }
    return { line, json: program('--json'), screen: program('--full'), made };
  }

  function compare(question, job, options) {
    const [page, terminal] = [inPage(question, job, options), inTerminal(question, job, options)];
    assert.equal('refused' in page, 'refused' in terminal, `${page.refused ?? 'answered'} | ${terminal.refused ?? 'answered'}`);
    if (page.refused !== undefined) {
      // The terminal says besides who speaks, and that nothing was written.
      const said = terminal.refused.split('\n').map((line) => line.replace(/^heapcast: /, ''));
      assert.ok(page.refused.split('\n').every((line) => said.includes(line)), `${page.refused} | ${terminal.refused}`);
      return 'refused';
    }
    for (const what of ['line', 'json', 'screen']) same(`${question}: ${what}`, page[what], terminal[what]);
    assert.deepEqual(Object.keys(page.made).sort(), Object.keys(terminal.made).sort());
    for (const [name, bytes] of Object.entries(terminal.made)) same(`${question}: ${name}`, page.made[name].toString('latin1'), bytes.toString('latin1'));
    return Object.keys(page.made).length;
  }

  test('the scenarios of the page are those of the project', () => {
    const kept = readdirSync(SHIPPED).filter((name) => name.endsWith('.toml'));
    assert.deepEqual(about.shipped.map((job) => job.name).sort(), kept.sort());
    for (const job of about.shipped) assert.equal(job.text, readFileSync(join(SHIPPED, job.name), 'utf8'));
    assert.deepEqual(Object.keys(OPTIONS).sort(), about.questions.map((question) => question.name).sort());
  });

  for (const name of readdirSync(SHIPPED).filter((name) => name.endsWith('.toml'))) {
    test(`${name}: every question, ${FEW} runs`, () => {
      const job = about.shipped.find((one) => one.name === name);
      const failed = [];
      const told = Object.entries(OPTIONS).map(([question, options]) => {
        try { return `${question} ${compare(question, job, options(FEW))}`; } catch (error) { failed.push(error.message); return `${question} differs`; }
      });
      console.log(`${name}: ${told.join(', ')}`);
      assert.deepEqual(failed, []);
      assert.ok(!told.some((one) => /^(forecast|compare|sweep|replay|check) refused/.test(one)), told.join());
    });
  }

  test(`riding-arena.toml: a forecast of ${MANY} runs`, () => {
    const job = about.shipped.find((one) => one.name === 'riding-arena.toml');
    assert.ok(compare('forecast', job, OPTIONS.forecast(MANY)) >= 9);
  });

  test('another seed gives other files: the comparison can fail', () => {
    const job = about.shipped.find((one) => one.name === 'round-pen.toml');
    const [one, other] = ['1', '2'].map((seed) => inPage('forecast', job, [['runs', FEW], ['seed', seed]]).made);
    assert.deepEqual(Object.keys(one), Object.keys(other));
    assert.ok(!one['runs.csv'].equals(other['runs.csv']) && !one['report.html'].equals(other['report.html']));
  });

  test('speed beside the terminal, in the same minute (printed, not judged)', () => {
    const job = about.shipped.find((one) => one.name === 'riding-arena.toml');
    const options = [['runs', MANY]];
    const seconds = (work) => { const start = performance.now(); work(); return (performance.now() - start) / 1000; };
    const page = () => wasm.ask(JSON.stringify({ question: 'forecast', jobs: [job], options }), undefined).free();
    const native = () => execFileSync(NATIVE, ['forecast', job.name, '--runs', MANY, '--threads', '1', '--quiet'], { cwd: folder, stdio: 'ignore' });
    const ratios = [1, 2, 3].map(() => [seconds(page), seconds(native)]);
    const [took, beside] = ratios.sort((a, b) => a[0] / a[1] - b[0] / b[1])[1];
    console.log(`speed: page ${took.toFixed(2)} s, terminal on one thread ${beside.toFixed(2)} s with its files, ratio ${(took / beside).toFixed(2)}`);
  });
});
