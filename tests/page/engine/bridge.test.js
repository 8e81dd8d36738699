// The bridge: one call after the other; what is no longer wanted ends at once; a worker that breaks is replaced, and nothing else is lost.

import assert from 'node:assert/strict';
import { after, describe, test } from 'node:test';
import { bridge, built, inside, ofWorker, single } from './engine.js';

const begun = [];
after(() => begun.forEach((worker) => worker.terminate()));
const started = (change) => bridge(change, begun);
const shipped = async (engine, name) => (await engine.about()).shipped.find((job) => job.name === name);
const forecast = (job, runs) => ({ question: 'forecast', jobs: [job], options: [['runs', String(runs)]] });

/** What a worker runs, with a call that breaks the engine: `read` of a job of this name runs into a trap of its own. */
const breaking = (name) => (script) => `${script}
  {
    const unreachable = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 120, 0, 0, 10, 5, 1, 3, 0, 0, 11]);
    const { x } = new WebAssembly.Instance(new WebAssembly.Module(unreachable)).exports;
    const read = (...typed) => wasm_bindgen.read_(...typed);
    const start = wasm_bindgen.initSync;
    wasm_bindgen.initSync = (engine) => {
      start(engine);
      wasm_bindgen.read_ = wasm_bindgen.read;
      wasm_bindgen.read = (asked) => (JSON.parse(asked).job.name === ${JSON.stringify(name)} ? x() : read(asked));
    };
  }`;

describe('the bridge', () => {
  test('calls are answered in their order, progress is told at most ten times a second and never falls', async () => {
    const engine = started();
    const job = await shipped(engine, 'show-ground.toml');
    const told = [];
    const start = performance.now();
    const answers = [
      engine.ask(forecast(job, 1000), { onProgress: (done, total) => told.push([done, total]) }).then(() => 'asked'),
      engine.read(job, { units: 'metric' }).then((read) => read.units),
    ];
    const order = [];
    answers.forEach((answer) => answer.then((value) => order.push(value)));
    assert.deepEqual(await Promise.all(answers), ['asked', 'metric']);
    assert.deepEqual(order, ['asked', 'metric']);
    assert.ok(told.length > 0 && told.length <= (performance.now() - start) / 100 + 2, `${told.length} times`);
    assert.ok(told.every(([done], i) => i === 0 || done >= told[i - 1][0]));
  });

  test('a question that is no longer wanted ends at once; what waited behind it is answered', async () => {
    const engine = started();
    const job = await shipped(engine, 'show-ground.toml');
    const workers = begun.length;
    const leave = new AbortController();
    const long = engine.ask(forecast(job, 1_000_000), { signal: leave.signal, onProgress: () => leave.abort() });
    const behind = engine.read(job);
    await assert.rejects(long, { name: 'AbortError' });
    assert.equal((await behind).ok, true);
    assert.equal(begun.length, workers + 1, 'the worker was not replaced');
    await assert.rejects(engine.ask(forecast(job, 10), { signal: leave.signal }), { name: 'AbortError' });
    assert.equal(begun.length, workers + 1, 'nothing had to be begun for a question nobody wanted');
  });

  test('a question that still waits is taken out without ending the worker', async () => {
    const engine = started();
    const job = await shipped(engine, 'round-pen.toml');
    const workers = begun.length;
    const leave = new AbortController();
    const first = engine.ask(forecast(job, 2000));
    const second = engine.ask(forecast(job, 2000), { signal: leave.signal });
    leave.abort();
    await assert.rejects(second, { name: 'AbortError' });
    assert.match((await first).headline, /^Plan on /);
    assert.equal(begun.length, workers);
  });

  test('after a trap the next call is answered by a new worker, and the files of the answer shown are the same', async () => {
    const engine = started(breaking('trap.toml'));
    const job = await shipped(engine, 'round-pen.toml');
    await engine.ask(forecast(job, 300));
    const before = Buffer.from(await engine.file('runs.csv'));
    const workers = begun.length;
    const [trapped, behind] = await Promise.allSettled([engine.read({ ...job, name: 'trap.toml' }), engine.read(job)]);
    assert.match(String(trapped.reason), /stopped and is started again.*unreachable/s);
    assert.equal(behind.value.ok, true);
    // Asked once more before it is given up.
    assert.equal(begun.length, workers + 2);
    assert.ok(before.equals(Buffer.from(await engine.file('runs.csv'))));
    assert.match(await engine.screen(80), /Round pen/);
  });

  test('a wasm file that is none is said, and said again, without an end', async () => {
    const engine = started((script) => script.replace('WebAssembly.compile(', 'WebAssembly.compile(new Uint8Array([1, 2, 3]) || '));
    for (const _ of [1, 2]) await assert.rejects(engine.about(), /stopped and is started again/);
  });

  test('what is refused comes with its places, and breaks nothing', async () => {
    const engine = started();
    const job = await shipped(engine, 'round-pen.toml');
    const workers = begun.length;
    const wrong = { ...job, text: job.text.replace(/volume = .*/, 'volume = "30 lb"') };
    await assert.rejects(engine.ask(forecast(wrong, 100)), (error) => error.problems[0].line > 0 && /mass/.test(error.problems[0].what));
    await assert.rejects(engine.ask(forecast(job, 'ten')), (error) => error.problems[0].key === 'runs');
    await assert.rejects(engine.unpack('1.abc'), /cut off or damaged/);
    await assert.rejects(engine.file('runs.csv'), /no answer is kept/);
    const link = await engine.pack(job);
    assert.deepEqual(await engine.unpack(link), { name: job.name, text: job.text });
    assert.match(await engine.qr(link.slice(0, 900)), /^<svg /);
    assert.equal(begun.length, workers);
  });
});

describe('the engine as it is loaded', () => {
  test('it is unpacked to the bytes it was made from, in the folder and in one file', () => {
    const { unlzma, untexted } = ofWorker('unlzma', 'untexted');
    const wasm = built('heapcast.wasm');
    const packed = built('folder/heapcast.lzma');
    assert.ok(wasm.equals(unlzma(packed)));
    const kept = untexted(inside(single(), 'engine'));
    assert.ok(packed.equals(kept.subarray(0, packed.length)));
    assert.ok(kept.length - packed.length <= 1);
    assert.throws(() => unlzma(packed.subarray(0, 90_000)), /cut off|no sense/);
  });
});
