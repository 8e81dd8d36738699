// @ts-check
"use strict";

/** The engine in a worker of its own: one call after the other, each answered by a message with its number. */
(() => {
  /** Time between two words on progress, at the least [ms]. */
  const TOLD_EVERY_MS = 100;
  /** The answer last given. @type {any} */
  let answered = null;

  /** @param {{ module?: WebAssembly.Module, bytes?: ArrayBuffer, text?: string }} engine */
  async function start(engine) {
    const module = engine.module ?? (await WebAssembly.compile(unlzma(engine.bytes ? new Uint8Array(engine.bytes) : untexted(engine.text ?? ""))));
    wasm_bindgen.initSync({ module });
    // The next worker need not compile it again, where a browser lets it go from one to the other.
    try { postMessage({ module }); } catch { /* it is compiled again */ }
  }

  const last = (/** @type {string} */ name) => {
    if (!answered) throw new Error(JSON.stringify({ message: `no answer is kept that has ${name}` }));
    return answered;
  };

  /** @type {Record<string, (...typed: any[]) => any>} */
  const calls = {
    about: () => JSON.parse(wasm_bindgen.about()),
    starter: (answers) => wasm_bindgen.starter(JSON.stringify(answers)),
    read: (asked) => JSON.parse(wasm_bindgen.read(JSON.stringify(asked))),
    edit: (asked) => JSON.parse(wasm_bindgen.edit(JSON.stringify(asked))),
    pack: (job) => wasm_bindgen.pack(JSON.stringify(job)),
    unpack: (text) => JSON.parse(wasm_bindgen.unpack(text)),
    qr: (text) => wasm_bindgen.qr(text),
    message: (asked) => JSON.parse(wasm_bindgen.message(JSON.stringify(asked))),
    ask: (asked, tell) => {
      answered?.free();
      answered = null;
      answered = wasm_bindgen.ask(JSON.stringify(asked), tell);
      return { card: JSON.parse(answered.card()), headline: answered.headline() };
    },
    names: () => JSON.parse(last("files").names()),
    file: (name) => last("files").file(name),
    json: () => JSON.parse(last("figures").json()),
    screen: (columns) => last("a screen").screen(columns),
  };

  function progress(/** @type {number} */ id) {
    let told = 0;
    return (/** @type {number} */ done, /** @type {number} */ total) => {
      const now = performance.now();
      if (now - told < TOLD_EVERY_MS && done < total) return;
      told = now;
      postMessage({ id, done, total });
    };
  }

  /** @param {{ id: number, call: string, typed: any[] }} asked */
  function answer({ id, call, typed }) {
    try {
      const value = calls[call](...typed, ...(call === "ask" ? [progress(id)] : []));
      postMessage({ id, value }, { transfer: value instanceof Uint8Array ? [/** @type {ArrayBuffer} */ (value.buffer)] : [] });
    } catch (error) {
      // What the engine refuses is an Error; anything else has broken it.
      const refused = error instanceof Error && !(error instanceof WebAssembly.RuntimeError) && error.constructor === Error;
      postMessage({ id, error: error instanceof Error ? error.message : String(error), broken: !refused });
    }
  }

  onmessage = async ({ data }) => {
    try {
      await start(data.engine);
      onmessage = ({ data }) => answer(data);
      postMessage({ ready: true });
    } catch (error) {
      postMessage({ failed: String(error) });
    }
  };
})();
