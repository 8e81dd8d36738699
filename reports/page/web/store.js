// @ts-check
"use strict";

/** A text that a job names, such as observed times. @typedef {{ name: string, text: string }} NamedText */
/** A job as it is kept: `text` is the scenario file itself and `name` that of its file; `changed` in milliseconds since 1970; `v` is the version
 * of the record's shape, `rev` counts its changes, `by` is the tab of the last one. `kept` is only shown in the list. `newer`: made by a later
 * page than this, so it is shown and never changed.
 * @typedef {{ id: string, name: string, text: string, files: NamedText[], title: string, changed: number, rev: number, v: number, by: string,
 *   kept: { promise?: string, note?: string }, newer?: boolean }} Job */
/** @typedef {{ units: "us" | "metric", clock: "am" | "24", look: "" | "light" | "dark" }} Settings */
/** @typedef {{ kind: "put" | "kept" | "removed" | "apart" | "settings" | "trouble", id: string, here: boolean, copy?: string }} Change */

var heapcast = heapcast || {};

/** Jobs, settings and half-typed values on the device. Every change is written at once; what cannot be written stays in this page. */
heapcast.store = (() => {
  const PATIENCE_MS = 3000;
  const TAB = newId();

  /** What brings a record of version i to i + 1. A record without a version is one of before there were any. */
  const STEPS = [
    (/** @type {any} */ old) => ({
      ...old, title: old.title ?? old.name, files: old.files ?? [], kept: old.kept ?? {}, changed: old.changed ?? 0, rev: old.rev ?? 1, by: "",
    }),
  ];

  /** What the device did not take: shown and changed like the rest, written as soon as it can be. @type {Map<string, Job>} */
  const waiting = new Map();
  /** @type {Set<(change: Change) => void>} */
  const watchers = new Set();
  /** @type {"" | "refused" | "full"} */
  let trouble = "";
  /** @type {IDBDatabase | null} */
  let db = null;
  /** Changes of this page, one after the other. @type {Promise<unknown>} */
  let queue = Promise.resolve();

  function newId() {
    return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => (byte % 36).toString(36)).join("");
  }

  /** A record brought up to this page's version; one of a later version is only marked.
   * @param {any} record @returns {Job} */
  function upgraded(record, steps = STEPS) {
    let now = { ...record };
    if ((now.v ?? 0) > steps.length) return { title: now.name, files: [], kept: {}, changed: 0, ...now, newer: true };
    for (let v = now.v ?? 0; v < steps.length; v += 1) now = { ...steps[v](now), v: v + 1 };
    return now;
  }

  let ready = open();

  /** @returns {Promise<void>} over as soon as it is known whether there is storage */
  function open() {
    return new Promise((done) => {
      const refused = () => { setTrouble("refused"); done(); };
      setTimeout(() => { if (!db) refused(); }, PATIENCE_MS);
      try {
        const asked = indexedDB.open("heapcast", 1);
        asked.onupgradeneeded = () => asked.result.createObjectStore("jobs", { keyPath: "id" });
        asked.onerror = refused;
        asked.onsuccess = () => {
          db = asked.result;
          db.onversionchange = () => db?.close();
          setTrouble("");
          done();
          void enqueue(writeWaiting);
        };
      } catch {
        refused();
      }
    });
  }

  /** One transaction; what `work` hands to `give` is the result once everything is on the device.
   * @template T @param {IDBTransactionMode} mode @param {(jobs: IDBObjectStore, give: (value: T) => void) => void} work @returns {Promise<T>} */
  async function transaction(mode, work) {
    const once = () => new Promise((done, failed) => {
      if (!db) throw new DOMException("no storage", "InvalidStateError");
      /** @type {any} */
      let result;
      const all = db.transaction("jobs", mode, { durability: "strict" });
      all.oncomplete = () => done(result);
      all.onabort = () => failed(all.error ?? new DOMException("aborted", "AbortError"));
      work(all.objectStore("jobs"), (value) => { result = value; });
    });
    try {
      return await once();
    } catch (fault) {
      if (!db || /** @type {Error} */ (fault).name === "QuotaExceededError") throw fault;
      // A phone may cut a resting page off from its storage: the way there is opened once more.
      db = null;
      await (ready = open());
      return once();
    }
  }

  /** @template T @param {() => Promise<T>} work @returns {Promise<T>} */
  function enqueue(work) {
    const turn = queue.then(() => ready).then(work);
    queue = turn.catch(() => undefined);
    return turn;
  }

  function setTrouble(/** @type {"" | "refused" | "full"} */ now) {
    if (trouble === now) return;
    trouble = now;
    tell({ kind: "trouble", id: "" });
  }

  /** @template T @param {IDBRequest<T>} asked @param {(value: T) => void} give */
  const answered = (asked, give) => { asked.onsuccess = () => give(asked.result); };

  /** @param {string} id @returns {Promise<Job | null>} */
  async function get(id) {
    await queue;
    await ready;
    const held = waiting.get(id);
    if (held || !db) return held ? { ...held } : null;
    const found = await transaction("readonly", (jobs, give) => answered(jobs.get(id), give));
    return found ? upgraded(found) : null;
  }

  /** All jobs, the last changed first. @returns {Promise<Job[]>} */
  async function list() {
    await queue;
    await ready;
    /** @type {any[]} */
    const found = db ? await transaction("readonly", (jobs, give) => answered(jobs.getAll(), give)) : [];
    const all = new Map(found.map((record) => [record.id, upgraded(record)]));
    for (const [id, job] of waiting) all.set(id, { ...job });
    return [...all.values()].sort((a, b) => b.changed - a.changed);
  }

  /** Writes a job; `job` is what the page goes on with, so it takes over what was written. Where another tab has changed the
   * same job since, both stay: this one becomes a job of its own. @param {Job} job @returns {Promise<Job>} */
  const put = (job) => enqueue(async () => {
    job.changed = Date.now();
    const saved = await write(job);
    if (waiting.size) await writeWaiting();
    return Object.assign(job, saved);
  });

  /** @param {Job} job @returns {Promise<Job>} */
  async function write(job) {
    const was = job.id;
    try {
      const saved = await transaction("readwrite", (jobs, /** @type {(job: Job) => void} */ give) => {
        const asked = jobs.get(job.id);
        asked.onsuccess = () => {
          const there = asked.result && upgraded(asked.result);
          const next = { ...job, v: STEPS.length, by: TAB, rev: Math.max(job.rev, there?.rev ?? 0) + 1 };
          if (there && there.text !== job.text) next.kept = { note: job.kept.note };
          if (there?.newer || (there && there.rev !== job.rev && there.by !== TAB && there.text !== job.text)) {
            Object.assign(next, { id: newId(), rev: 1, kept: { note: "your own changes, kept apart from those made in another tab" } });
          }
          jobs.put(next);
          give(next);
        };
      });
      waiting.delete(was);
      if (!waiting.size) setTrouble("");
      tell({ kind: "put", id: saved.id });
      if (saved.id !== was) tell({ kind: "apart", id: was, copy: saved.id });
      return saved;
    } catch (fault) {
      waiting.set(was, { ...job, v: STEPS.length });
      setTrouble(!db || /** @type {Error} */ (fault).name !== "QuotaExceededError" ? "refused" : "full");
      tell({ kind: "put", id: was });
      return waiting.get(was) ?? job;
    }
  }

  async function writeWaiting() {
    for (const job of [...waiting.values()]) if (db) await write(job);
  }

  /** Keeps what the list shows beside a job, such as its last promise; no change of the job itself.
   * @param {Job} job @param {{ promise?: string, note?: string }} shown */
  const keep = (job, shown) => enqueue(async () => {
    Object.assign(job.kept, shown);
    const held = waiting.get(job.id);
    if (held) Object.assign(held.kept, shown);
    if (!db || held) return;
    await transaction("readwrite", (jobs) => {
      const asked = jobs.get(job.id);
      asked.onsuccess = () => {
        const there = asked.result;
        if (there?.text === job.text && there.v === STEPS.length) jobs.put({ ...there, kept: { ...there.kept, ...shown } });
      };
    }).catch(() => undefined);
    tell({ kind: "kept", id: job.id });
  });

  /** Removes a job and what was half typed in it. @param {string} id */
  const remove = (id) => enqueue(async () => {
    waiting.delete(id);
    if (db) await transaction("readwrite", (jobs) => { jobs.delete(id); });
    const stored = tried(() => Object.keys(localStorage)) ?? [];
    for (const key of [...memory.keys(), ...stored]) if (key.startsWith(`heapcast.draft.${id}`)) local(key, null);
    tell({ kind: "removed", id });
  });

  /** A job that is not kept yet. @param {{ name: string, text: string, title?: string, files?: NamedText[] }} from @returns {Job} */
  const fresh = ({ name, text, title, files }) => ({
    v: STEPS.length, id: newId(), name, text, title: title || name, files: files ?? [], changed: Date.now(), rev: 0, by: TAB, kept: {},
  });

  /** @template T @param {() => T} work @returns {T | null} */
  function tried(work) {
    try { return work(); } catch { return null; }
  }

  /** Values small enough to be written at once, without a promise; in memory where the device keeps none. @type {Map<string, string>} */
  const memory = new Map();

  /** @param {string} key @param {string | null} [value] @returns {string | null} */
  function local(key, value) {
    try {
      if (value === undefined) return memory.get(key) ?? localStorage.getItem(key);
      memory.delete(key);
      if (value === null) localStorage.removeItem(key);
      else localStorage.setItem(key, value);
    } catch {
      if (typeof value === "string") memory.set(key, value);
    }
    return value ?? null;
  }

  /** What is half typed: `draft(key)` gives it back or "", `draft(key, value)` keeps it, `draft(key, "")` forgets it.
   * A key begins with the id of its job, and goes with it. @param {string} key @param {unknown} [value] @returns {any} */
  function draft(key, value) {
    const where = `heapcast.draft.${key}`;
    if (value !== undefined) local(where, value === null || value === "" ? null : JSON.stringify(value));
    return read(where) ?? "";
  }

  const read = (/** @type {string} */ key) => tried(() => JSON.parse(local(key) ?? "null"));

  /** Units and clock of the device's own language until they are chosen; some devices name none that is known. @returns {Settings} */
  function guessed() {
    const region = tried(() => new Intl.Locale(navigator.language).maximize().region) ?? "US";
    const twelve = tried(() => new Intl.DateTimeFormat(navigator.language, { hour: "numeric" }).resolvedOptions().hour12) ?? true;
    return { units: ["US", "LR", "MM"].includes(region) ? "us" : "metric", clock: twelve ? "am" : "24", look: "" };
  }

  /** @param {Partial<Settings>} [chosen] what to change @returns {Settings} */
  function settings(chosen) {
    if (chosen) {
      local("heapcast.settings", JSON.stringify({ ...read("heapcast.settings"), ...chosen }));
      tell({ kind: "settings", id: "" });
    }
    return { ...guessed(), ...read("heapcast.settings") };
  }

  // Where a device lets no page keep anything, it may refuse this too.
  const channel = tried(() => new BroadcastChannel("heapcast"));
  channel?.addEventListener("message", (message) => { for (const one of watchers) one({ ...message.data, here: false }); });

  function tell(/** @type {Omit<Change, "here">} */ change) {
    for (const one of watchers) one({ ...change, here: true });
    if (["put", "kept", "removed", "settings"].includes(change.kind)) channel?.postMessage(change);
  }

  const watch = (/** @type {(change: Change) => void} */ watcher) => { watchers.add(watcher); };

  return {
    get, list, put, keep, remove, fresh, draft, settings, watch, upgraded, writeAgain: () => enqueue(writeWaiting), VERSION: STEPS.length,
    trouble: () => trouble, unwritten: () => waiting.size,
    /** Whether this page made the last change. @param {Job} job */
    mine: (job) => job.by === TAB,
  };
})();
