// @ts-check
// A job that is open: its text, what the reader makes of it, and the screen with the sentence and the answer under it.
"use strict";

heapcast.job = (() => {
  const { h, shell, store, screens } = heapcast;

  const own = {
    /** The job as the engine wants it. */
    plain: (/** @type {any} */ { name, text, files }) => ({ name, text, files: files || [] }),
    /** Makes a text the job's own, with a way back. @param {any} job @param {string} text @param {string} title */
    async keep(job, text, title) {
      const before = { text: job.text, title: job.title };
      if (text === job.text) return;
      await store.put(Object.assign(job, { text, title }));
      shell.say("Changed.", { undo: async () => { await store.put(Object.assign(job, before)); shell.redraw(); } });
    },
    /** Where a screen of the job is. */
    link: (/** @type {any} */ job, /** @type {string[]} */ ...rest) => "#/" + ["job", job.id, ...rest].map(encodeURIComponent).join("/"),
    /** Options that hold for every question. @returns {[string, string][]} */
    options: (/** @type {any} */ prefs) => (prefs.units ? [["units", prefs.units]] : []),
    /** Tells what went wrong where it went wrong; what was left is no failure. */
    failed(/** @type {HTMLElement} */ element, /** @type {any} */ error, /** @type {AbortSignal=} */ signal) {
      if (signal && signal.aborted || error.name === "AbortError") return;
      element.replaceChildren(heapcast.job.problems(error.problems || [{ words: error.message || String(error) }]));
    },
    /** What is wrong and what would be right, as a list; `go` leads to a line. */
    problems: (/** @type {any[]} */ problems, /** @type {((line: number) => void) | undefined} */ go = undefined) => h("div", { class: "problems", role: "alert" }, h("ul", {}, problems.map((one) => h("li", {},
      one.line ? go ? h("button", { onclick: () => go(one.line) }, `Line ${one.line}`) : h("strong", {}, `Line ${one.line}: `) : null,
      one.what ? [one.key ? h("code", {}, one.key + " ") : null, one.what, one.right ? h("span", { class: "right" }, one.right) : null] : one.words)))),
  };

  async function enter(/** @type {HTMLElement} */ element, /** @type {any} */ job, /** @type {string[]} */ rest, /** @type {AbortSignal} */ signal) {
    const prefs = shell.prefs();
    element.setAttribute("aria-busy", "true");
    element.replaceChildren(h("p", { class: "soft" }, "One moment."));
    const [word = "", ...further] = rest;
    const read = await heapcast.engine.read(heapcast.job.plain(job), prefs);
    if (signal.aborted) return;
    element.setAttribute("aria-busy", "false");
    const open = { element, job, prefs, read, signal, rest: further };
    await (read.ok ? screens[word] || screens[""] : screens.text)(open);
  }

  shell.route("job", (element, { job, rest }) => {
    const leave = new AbortController();
    enter(element, job, rest, leave.signal).catch((error) => heapcast.job.failed(element, error, leave.signal));
    return () => leave.abort();
  });

  screens[""] = async (open) => {
    const { element, job, signal } = open;
    const title = () => shell.title(open.read.title, [{ words: "share", href: heapcast.job.link(job, "share") }]);
    title();
    const sentence = h("div", { class: "sentence" });
    const further = h("div", {});
    const answer = heapcast.answer.view();
    /** Ends the answer under way. */
    let running = new AbortController();
    let whole = false;
    signal.addEventListener("abort", () => running.abort());

    const draw = () => {
      const unfolded = sentence.querySelector("details")?.open;
      sentence.replaceChildren(...heapcast.sentence.draw(open.read, touch, add));
      sentence.querySelector("details")?.toggleAttribute("open", Boolean(unfolded));
      further.replaceChildren(heapcast.sentence.further(open.read));
    };
    const start = () => {
      running.abort();
      running = new AbortController();
      whole = false;
      answer.run(open, running.signal, { tryIt: tryHelp, order: heapcast.sentence.all(open.read).filter(({ value }) => value.key.endsWith(".on_hand")), touch }).then((done) => { whole ||= done; });
    };
    const kept = async (/** @type {string} */ text, /** @type {any} */ read) => {
      await heapcast.job.keep(job, text, read.title);
      open.read = read;
      title();
      draw();
      start();
    };
    /** @param {any} value @param {any} clause @param {any} [first] the edit to begin with */
    async function touch(value, clause, first) {
      running.abort();
      const done = await heapcast.sheet.open({ open, value, clause, first });
      if (signal.aborted) return;
      if (done) await kept(done.text, done.read);
      else if (!whole) start();
      heapcast.sentence.focus(element, value.key);
    }
    async function add(/** @type {any} */ clause) {
      running.abort();
      const read = await heapcast.engine.edit(own.plain(job), [{ add: clause.add.kind }], open.prefs);
      if (read.ok) await kept(read.text, read);
      else shell.say(read.problems.map((/** @type {any} */ one) => one.words).join(" "));
    }
    function tryHelp(/** @type {{words: string, change: string}} */ help) {
      const [key, ...typed] = help.change.split("=").map((part) => part.trim());
      const found = heapcast.sentence.find(open.read, key);
      const value = found ? found.value : { key, words: "", typed: "", title: help.words, choices: [], units: [] };
      touch(value, found && found.clause, { set: key, value: typed.join(" = ") });
    }
    draw();
    const pinned = h("p", { class: "pinned", "aria-hidden": "true", hidden: true });
    answer.pin(pinned, signal);
    const to = (/** @type {string} */ word, /** @type {string} */ label) => h("a", { href: heapcast.job.link(job, word) }, label);
    element.replaceChildren(sentence, answer.element, further, h("div", { class: "foot" }, pinned, h("nav", { class: "bar", "aria-label": "This job" },
      to("whatif", "what if"), to("more", "more"), to("client", "client"), to("crew", "crew"), to("save", "save"))));
    const draft = heapcast.sheet.draft(job);
    const found = draft && heapcast.sentence.find(open.read, draft.key);
    if (found) touch(found.value, found.clause, { set: draft.key, value: draft.text });
    else start();
  };

  screens.text = async (open) => {
    const { element, job, read } = open;
    shell.title(job.title || job.name);
    const place = `${job.id}/text`;
    const told = h("div", { "aria-live": "polite" });
    const field = h("textarea", { id: "text", class: "file", spellcheck: "false", autocapitalize: "off", rows: "18" });
    field.value = store.draft(place) || job.text;
    const tell = (/** @type {any} */ now) => told.replaceChildren(now.ok ? h("p", {}, "Nothing is wrong with it.")
      : h("div", {}, h("p", {}, now.problems.length === 1 ? "One thing is wrong:" : `${now.problems.length} things are wrong:`), heapcast.job.problems(now.problems, show)));
    /** Marks a line in the field. */
    const show = (/** @type {number} */ line) => {
      const lines = field.value.split("\n");
      const from = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
      field.focus();
      field.setSelectionRange(from, from + (lines[line - 1] || "").length);
      field.scrollTop = (field.scrollHeight / lines.length) * Math.max(0, line - 4);
    };
    tell(read);
    field.addEventListener("input", () => store.draft(place, field.value));
    const check = async () => {
      const now = await heapcast.engine.read({ ...heapcast.job.plain(job), text: field.value }, open.prefs);
      tell(now);
      return now;
    };
    const keep = async () => {
      const now = await check();
      if (!now.ok) return told.scrollIntoView({ block: "center" });
      store.draft(place, null);
      await heapcast.job.keep(job, field.value, now.title);
      shell.go(heapcast.job.link(job));
    };
    element.replaceChildren(told, h("label", { for: "text" }, "The job as text"), field, h("div", { class: "row" },
      h("button", { class: "first", onclick: keep }, "keep"), h("button", { onclick: check }, "check")));
  };

  return own;
})();
