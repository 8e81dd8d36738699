// The page as the builder made it, without a browser: its engine here in node, and its bridge with workers of node.

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import { Worker } from 'node:worker_threads';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../../..');
/** Where the builder leaves its work; another place is named in HEAPCAST_PAGE. */
export const BUILT = process.env.HEAPCAST_PAGE ?? join(ROOT, 'target/page');
export const SHIPPED = join(ROOT, 'scenarios/scenarios');
/** The program of the terminal. */
export const NATIVE = process.env.HEAPCAST ?? join(ROOT, 'target/release/heapcast');

export const built = (name) => readFileSync(join(BUILT, name));

/** The page that is one file, which is written in UTF-16 with its mark; and a text that is kept in it. */
export const single = () => new TextDecoder('utf-16le', { fatal: true }).decode(built('heapcast.html'));
export const inside = (html, id) => html.match(new RegExp(`<script type="text/plain" id="${id}">([^<]+)<`))[1];

/** What the builder says to the page: where the engine is, and what a worker runs. */
export function build() {
  const [first] = built('folder/heapcast.js').toString().split('\n', 1);
  return vm.runInThisContext(`(() => { ${first}\nreturn heapcast.build; })()`);
}

/** What of the worker's script is wanted by name. */
export function ofWorker(...names) {
  globalThis.postMessage ??= () => {};
  return vm.runInThisContext(`(() => { ${build().worker}\nreturn { ${names.join(', ')} }; })()`);
}

/** The engine, started. */
export function engine() {
  const { wasm_bindgen } = ofWorker('wasm_bindgen');
  wasm_bindgen.initSync({ module: new WebAssembly.Module(built('heapcast.wasm')) });
  return wasm_bindgen;
}

const AS_IN_A_BROWSER = `
  const { parentPort } = require('node:worker_threads');
  globalThis.self = globalThis;
  globalThis.postMessage = (message, moved) => parentPort.postMessage(message, moved);
  parentPort.on('message', (data) => globalThis.onmessage({ data }));
`;

/** The bridge of the page with workers of node. `change` alters what a worker runs; `ends` takes the workers that were begun. */
export function bridge(change = (script) => script, begun = []) {
  const own = build();
  const bytes = built('folder/heapcast.lzma');
  class PageWorker {
    constructor(source) {
      this.worker = new Worker(AS_IN_A_BROWSER + source, { eval: true });
      this.worker.on('message', (data) => this.onmessage({ data }));
      this.worker.on('error', (error) => this.onerror({ message: String(error) }));
      begun.push(this);
    }

    postMessage(message) { this.worker.postMessage(message); }
    terminate() { this.worker.terminate(); }
  }
  const source = readFileSync(join(ROOT, 'reports/page/web/bridge.js'), 'utf8');
  const page = {
    heapcast: { build: { ...own, worker: change(own.worker) } },
    Worker: PageWorker,
    Blob: class { constructor([text]) { this.text = text; } },
    URL: { createObjectURL: (blob) => blob.text, revokeObjectURL() {} },
    fetch: async () => ({ ok: true, arrayBuffer: async () => bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) }),
    navigator: {},
  };
  const run = vm.runInThisContext(`((page) => { const { ${Object.keys(page).join(', ')} } = page;\n${source}\n })`);
  run(page);
  return page.heapcast.engine;
}
