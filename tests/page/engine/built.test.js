// What the builder leaves: how large it is, and that it can load and run nothing but itself.

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { BUILT, built, inside, ofWorker, single } from './engine.js';

const KB = 1000;
const digest = (bytes) => `sha256-${createHash('sha256').update(bytes).digest('base64')}`;
/** Style and script of the page that is one file. */
function unpacked(html) {
  const { unlzma, untexted } = ofWorker('unlzma', 'untexted');
  return new TextDecoder().decode(unlzma(untexted(inside(html, 'inside')))).split('\0');
}
const policy = (html) => html.match(/http-equiv="Content-Security-Policy" content="([^"]+)"/)[1];

/** Sizes in KB: the engine as it is run, one file, all that a host that packs by gzip sends for a first load. */
function sizes() {
  const first = readdirSync(join(BUILT, 'folder')).map((name) => gzipSync(built(`folder/${name}`)).length).reduce((a, b) => a + b);
  return [built('heapcast.wasm').length, built('heapcast.html').length, first].map((bytes) => bytes / KB);
}

describe('what the builder leaves', () => {
  test('one file under 800 KB, the first load from a host under 700 KB', () => {
    const [wasm, file, first] = sizes();
    console.log(`sizes: wasm ${wasm.toFixed()} KB, one file ${file.toFixed(1)} KB, first load from a host ${first.toFixed(1)} KB`);
    assert.ok(file < 800 && first < 700, `${file}, ${first} KB`);
  });

  test('one file: no address in it is asked, and its two scripts run by their digests', () => {
    const html = single();
    assert.equal(html.codePointAt(0), '<'.codePointAt(0));
    const allowed = policy(html);
    assert.ok(allowed.startsWith("default-src 'none';") && !/connect-src|http|\*/.test(allowed), allowed);
    const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)];
    assert.equal(scripts.length, 1);
    const [style, script] = unpacked(html);
    assert.ok(style.includes('@media print') && script.length > 100_000);
    assert.ok(allowed.includes(`script-src '${digest(scripts[0][1])}' '${digest(script)}' 'wasm-unsafe-eval';`), allowed);
    assert.doesNotMatch(html, /<(script|img|iframe)[^>]* src=|<link[^>]* href="(?!data:)/);
    assert.equal((html.match(/Content-Security-Policy/g) ?? []).length, 1);
  });

  test('the folder: every file is named by its digest, and the worker that keeps them knows them all', () => {
    const html = built('folder/index.html').toString();
    const allowed = policy(html);
    assert.ok(allowed.startsWith("default-src 'none';") && /connect-src 'self';/.test(allowed) && !/http|\*/.test(allowed), allowed);
    for (const name of ['heapcast.css', 'heapcast.js']) assert.ok(html.includes(`integrity="${digest(built(`folder/${name}`))}"`), name);
    assert.ok(built('folder/heapcast.js').toString().includes(digest(built('folder/heapcast.lzma'))));
    const keeper = built('folder/sw.js').toString();
    for (const name of readdirSync(join(BUILT, 'folder')).filter((name) => name !== 'sw.js')) {
      assert.ok(keeper.includes(`["${name}", "${digest(built(`folder/${name}`))}"]`), name);
    }
  });

  test('no script of it sets an element from markup', () => {
    const script = built('folder/heapcast.js').toString();
    assert.doesNotMatch(script, /\.(innerHTML|outerHTML)\s*=|insertAdjacentHTML|document\.write|\beval\(|new Function/);
  });
});
