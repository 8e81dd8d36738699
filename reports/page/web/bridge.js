// @ts-check
"use strict";

/** The engine as the page calls it: every call a promise, one worker that takes one call after the other. */
heapcast.engine = (() => {
  /** @typedef {{ name: string, text: string, files?: { name: string, text: string }[] }} Job */
  /** @typedef {{ units?: string, clock?: string }} Prefs */
  /** @typedef {{ question: string, jobs: Job[], list?: { name: string, text: string }, options?: [string, string][] }} Request */
  /** @typedef {{ onProgress?: (done: number, total: number) => void, signal?: AbortSignal }} How */
  /** @typedef {{ id: number, call: string, typed: any[], how: How, resolve: (value: any) => void, reject: (error: any) => void, again?: boolean }} Call */

  const build = heapcast.build;
  /** @type {Worker | null} */
  let worker = null;
  let ready = false;
  /** Compiled by the first worker, for those after it. @type {WebAssembly.Module | null} */
  let module = null;
  /** @type {Call[]} */
  let waiting = [];
  /** @type {Call | null} */
  let running = null;
  /** The question whose answer the worker keeps, to be asked again if the worker has ended. @type {Request | null} */
  let kept = null;
  let lost = false;
  let count = 0;
  /** @type {Promise<any> | null} */
  let about = null;

  const aborted = () => new DOMException("no longer wanted", "AbortError");

  /** Where a new worker takes the engine from. */
  async function engine() {
    if (module) return { module };
    if (build.engine.inside) return { text: document.getElementById(build.engine.inside)?.textContent ?? "" };
    const answer = await fetch(build.engine.file, { integrity: build.engine.digest });
    if (!answer.ok) throw new Error(`${build.engine.file}: ${answer.status}`);
    return { bytes: await answer.arrayBuffer() };
  }

  function begin() {
    const source = URL.createObjectURL(new Blob([build.worker], { type: "text/javascript" }));
    const own = new Worker(source);
    worker = own;
    ready = false;
    own.onmessage = ({ data }) => { if (worker === own) told(data); };
    own.onerror = (event) => { event.preventDefault?.(); if (worker === own) ended(event.message ?? "it did not start"); };
    engine().then(
      (engine) => { if (worker === own) own.postMessage({ engine }); },
      (error) => { if (worker === own) ended(String(error)); },
    ).finally(() => URL.revokeObjectURL(source));
  }

  function end() {
    worker?.terminate();
    worker = null;
    lost = kept !== null;
  }

  /** The worker is of no more use: the call it had is given up, the others are left to the next one. @param {string} why */
  function ended(why) {
    end();
    const call = running ?? waiting.shift();
    running = null;
    // What keeps nothing is asked once more: most likely nobody need know.
    if (call && !/^(ask|names|file|json|screen)$/.test(call.call) && !call.again) waiting.unshift(Object.assign(call, { again: true }));
    else call?.reject(new Error(`The engine stopped and is started again; nothing that was typed is lost. (${why})`));
    next();
  }

  /** What the engine refuses: `problems`, each at its place, or words alone. @param {string} text */
  function refusal(text) {
    /** @type {{ message?: string, problems?: { words: string }[] }} */
    let refused = { message: text };
    try { refused = JSON.parse(text); } catch { /* words alone */ }
    const words = refused.message ?? (refused.problems ?? []).map((problem) => problem.words).join("\n");
    return Object.assign(new Error(words), refused.problems ? { problems: refused.problems } : {});
  }

  function told(/** @type {any} */ data) {
    if (data.module) module = data.module;
    else if (data.failed) { module = null; ended(data.failed); }
    else if (data.ready) { ready = true; next(); }
    else if (running && data.id === running.id) {
      if ("done" in data) { running.how.onProgress?.(data.done, data.total); return; }
      const call = running;
      if (data.broken) { ended(data.error); return; }
      running = null;
      // A new question ends what the worker keeps, whether or not it has an answer.
      if (call.call === "ask") {
        lost = "error" in data && kept !== null;
        if (!("error" in data)) kept = call.typed[0];
      }
      if ("error" in data) call.reject(refusal(data.error)); else call.resolve(data.value);
      next();
    }
  }

  function next() {
    if (running || waiting.length === 0) return;
    if (!worker) begin();
    if (!ready || !worker) return;
    running = /** @type {Call} */ (waiting.shift());
    const { id, call, typed } = running;
    worker.postMessage({ id, call, typed });
  }

  /** @param {string} call @param {any[]} typed @param {How} [how] @returns {Promise<any>} */
  function ask(call, typed, how = {}) {
    return new Promise((resolve, reject) => {
      if (how.signal?.aborted) { reject(aborted()); return; }
      const made = { id: ++count, call, typed, how, resolve, reject };
      how.signal?.addEventListener("abort", () => stop(made), { once: true });
      waiting.push(made);
      next();
    });
  }

  function stop(/** @type {Call} */ call) {
    if (running === call) {
      running = null;
      end();
      // At once, so that the next call need not wait for it.
      begin();
    } else if (waiting.includes(call)) waiting = waiting.filter((other) => other !== call);
    call.reject(aborted());
    next();
  }

  /** Something of the last answer, asked for again where its worker has ended. @param {string} call @param {any[]} typed */
  async function of(call, typed) {
    if (lost && kept) await ask("ask", [kept]);
    return ask(call, typed);
  }

  return {
    about: () => (about ??= ask("about", []).catch((error) => { about = null; throw error; })),
    starter: (/** @type {Record<string, any>} */ answers) => ask("starter", [answers]),
    read: (/** @type {Job} */ job, /** @type {Prefs} */ prefs) => ask("read", [{ job, ...prefs }]),
    edit: (/** @type {Job} */ job, /** @type {any[]} */ edits, /** @type {Prefs} */ prefs) => ask("edit", [{ job, edits, ...prefs }]),
    ask: (/** @type {Request} */ request, /** @type {How} */ how = {}) => ask("ask", [request], how),
    names: () => of("names", []),
    /** @param {string} name @returns {Promise<Uint8Array<ArrayBuffer>>} */
    file: (name) => of("file", [name]),
    json: () => of("json", []),
    screen: (/** @type {number} */ columns) => of("screen", [columns]),
    pack: (/** @type {Job} */ job) => ask("pack", [job]),
    unpack: (/** @type {string} */ text) => ask("unpack", [text]),
    qr: (/** @type {string} */ text) => ask("qr", [text]),
    message: (/** @type {{ job: Job, price?: string } & Prefs} */ asked) => ask("message", [asked]),
  };
})();

// A folder on a host is kept on the device; one file is there already.
if (heapcast.build.engine.file && "serviceWorker" in navigator) navigator.serviceWorker.register("sw.js").catch(() => {});
