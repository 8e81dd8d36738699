// @ts-check
// Every further question, made from what the engine says of it: fields, the answer, its report and its files.
"use strict";

(() => {
  const { h, shell, store } = heapcast;
  /** Options few people touch: folded. */
  const FINE = ["alternative", "change", "seed", "runs", "most", "confidence", "percentiles"];
  /** What the page's settings say for every question. */
  const SETTLED = ["units"];
  const TYPES = /** @type {Record<string, string>} */ ({ html: "text/html", csv: "text/csv", svg: "image/svg+xml", json: "application/json" });
  const spaced = (/** @type {string} */ name) => name.replace(/-/g, " ");
  /** Dashes of the command line mean nothing here. */
  const help = (/** @type {string} */ words) => words.replace(/--(\w[\w-]*)/g, (_, name) => `“${spaced(name)}”`);

  heapcast.screens.more = async ({ element, job, signal }) => {
    shell.title("Further questions");
    const { questions } = await heapcast.engine.about();
    if (signal.aborted) return;
    const line = (/** @type {string[]} */ to, /** @type {string} */ name, /** @type {string} */ about) => h("li", {}, h("a", { class: "line", href: heapcast.job.link(job, ...to) }, h("strong", {}, name), h("span", {}, about)));
    element.replaceChildren(h("ul", { class: "lot" }, questions.map((/** @type {any} */ one) => line(["ask", one.name], one.name, one.about)),
      line(["text"], "the job as text", "Read and change the scenario file itself, with all its settings")));
  };

  /** A field of an option. @param {any} option @param {any} read @param {string} value */
  function field(option, read, value) {
    const id = `o-${option.name}`;
    const words = option.name === "alternative" && !option.repeated ? read.alternatives.map((/** @type {string} */ name) => [name, ""]) : option.words;
    const has = { id, name: option.name, "aria-describedby": `${id}-help`, autocomplete: "off", autocapitalize: "off", spellcheck: "false" };
    const made = words.length ? h("select", has, h("option", { value: "" }, option.default ? `usual: ${option.default}` : "none"),
      words.map((/** @type {string[]} */ [word, means]) => h("option", { value: word }, means ? `${word}: ${means}` : word)))
      : option.repeated ? h("textarea", { ...has, rows: "2", placeholder: "one a line" })
        : h("input", { ...has, type: "text", placeholder: option.default ? `usual: ${option.default}` : "" });
    made.value = value || "";
    return h("div", { class: "field" }, h("label", { for: id }, spaced(option.name), option.required ? " (needed)" : ""), made, h("p", { id: `${id}-help`, class: "note" }, help(option.help), "."));
  }

  /** The fields, in a form. @param {any} question @param {any} read @param {Record<string, string>} values */
  function fields(question, read, values) {
    const of = (/** @type {boolean} */ fine) => question.options
      .filter((/** @type {any} */ one) => !SETTLED.includes(one.name) && FINE.includes(one.name) === fine && !(one.name === "alternative" && !read.alternatives.length))
      .map((/** @type {any} */ one) => field(one, read, values[one.name]));
    const fine = of(true);
    return [...of(false), fine.length ? h("details", {}, h("summary", {}, "Finer points"), fine) : ""];
  }

  /** What a finished answer offers: the report, all figures, the files. @param {any} open @param {any} question @param {any} card */
  function results(open, question, card) {
    const { job, signal } = open;
    const place = h("div", {});
    const shown = h("pre", { tabindex: "0", hidden: true });
    const guarded = (/** @type {() => Promise<any>} */ act) => () => act().catch((error) => heapcast.job.failed(place, error, signal));
    const text = async (/** @type {string} */ name) => new TextDecoder().decode(await heapcast.engine.file(name));
    const page = (/** @type {string} */ name, /** @type {string} */ words) => h("button", { onclick: guarded(async () => heapcast.paper.open(await text(name), words)) }, words);
    const files = guarded(async () => {
      const names = await heapcast.engine.names();
      place.replaceChildren(h("ul", { class: "lot" }, names.map((/** @type {string} */ name) => h("li", {}, h("button", { class: "plain", onclick: guarded(async () =>
        shell.save(`${job.name.replace(/\.toml$/, "")}-${name}`, await heapcast.engine.file(name), TYPES[name.split(".").pop() || ""])) }, `save ${name}`)))));
    });
    const figures = guarded(async () => {
      shown.textContent = await heapcast.engine.screen(Math.max(40, Math.floor(innerWidth / 10)));
      shown.hidden = false;
    });
    const has = (/** @type {string} */ name) => question.folder && question.folder.files.includes(name);
    return [...(card ? heapcast.answer.draw(card) : []), h("div", { class: "row" }, has("report.html") ? page("report.html", "report") : "", has("client.html") ? page("client.html", "page for the client") : "",
      h("button", { onclick: figures }, "all figures"), question.folder ? h("button", { onclick: files }, "files") : ""), place, shown];
  }

  /** Asks and shows the answer in `place`. @param {any} open @param {any} question @param {any} request @param {HTMLElement} place */
  async function ask(open, question, { brief = false, ...request }, place) {
    const leave = new AbortController();
    open.signal.addEventListener("abort", () => leave.abort());
    const bar = h("progress", { max: "1", "aria-label": "runs made" });
    place.replaceChildren(h("p", { role: "status" }, "Making the runs."), bar, h("button", { onclick: () => { leave.abort(); place.replaceChildren("Stopped."); } }, "stop"));
    try {
      const { card } = await heapcast.engine.ask({ question: question.name, ...request }, { signal: leave.signal,
        onProgress: (/** @type {number} */ done, /** @type {number} */ all) => { if (all) bar.value = done / all; } });
      if (!leave.signal.aborted) place.replaceChildren(...results(open, question, brief ? null : card));
    } catch (error) {
      heapcast.job.failed(place, error, leave.signal);
    }
  }

  heapcast.screens.ask = async (open) => {
    const { element, job, prefs, read, rest, signal } = open;
    const about = await heapcast.engine.about();
    const question = about.questions.find((/** @type {any} */ one) => one.name === rest[0]);
    if (!question) return shell.go(heapcast.job.link(job, "more"));
    const place = `${job.id}/ask/${question.name}`;
    const kept = store.draft(place) || { values: {}, rows: null };
    const others = question.files.some((/** @type {any} */ one) => one.repeated) ? (await store.list()).filter((/** @type {any} */ one) => one.id !== job.id) : [];
    if (signal.aborted) return;
    shell.title(question.name.replace(/^./, (/** @type {string} */ c) => c.toUpperCase()));
    const list = question.files.some((/** @type {any} */ one) => one.list) ? heapcast.table(kept.rows || (about.lists[0] || {}).text || "", () => keep()) : null;
    const shown = h("section", { "aria-label": "The answer", "aria-live": "polite" });
    const boxes = others.map((/** @type {any} */ one) => h("label", { class: "choice" }, h("input", { type: "checkbox", value: one.id }), one.title));
    const values = () => Object.fromEntries(new FormData(form));
    const keep = () => store.draft(place, { values: values(), rows: list && list.text() });
    const send = (/** @type {Event} */ event) => {
      event.preventDefault();
      const ticked = boxes.filter((/** @type {any} */ box) => box.firstChild.checked).map((/** @type {any} */ box) => others.find((/** @type {any} */ one) => one.id === box.firstChild.value));
      const typed = Object.entries(values()).flatMap(([name, value]) => String(value).split("\n").map((line) => [name, line.trim()])).filter(([, value]) => value);
      ask(open, question, { jobs: [job, ...ticked].map(heapcast.job.plain), list: list ? { name: "buckets.csv", text: list.text() } : undefined,
        options: [...typed, ...(question.options.some((/** @type {any} */ one) => SETTLED.includes(one.name)) ? heapcast.job.options(prefs) : [])] }, shown);
      shown.scrollIntoView({ block: "nearest" });
    };
    const form = h("form", { novalidate: true, onsubmit: send, oninput: keep }, h("p", {}, question.about, "."), list ? list.element : "",
      boxes.length ? h("fieldset", {}, h("legend", {}, "with other jobs"), boxes) : "", fields(question, read, kept.values),
      h("div", { class: "row" }, h("button", { type: "submit", class: "first" }, "answer")));
    element.replaceChildren(form, shown);
  };

  heapcast.screens.save = async (open) => {
    const { element, job, prefs } = open;
    shell.title("Save");
    const { questions } = await heapcast.engine.about();
    if (open.signal.aborted) return;
    const shown = h("section", { "aria-label": "The answer" });
    element.replaceChildren(h("p", {}, "The job is kept on this device by itself. As a file it goes to other people and programs."),
      h("div", { class: "row" }, h("button", { class: "first", onclick: () => shell.save(job.name, job.text, "application/toml") }, `the job: ${job.name}`),
        (job.files || []).map((/** @type {any} */ one) => h("button", { onclick: () => shell.save(one.name, one.text) }, one.name))),
      h("h2", {}, "Report, tables and drawings"), shown);
    await ask(open, questions.find((/** @type {any} */ one) => one.name === "forecast"), { jobs: [heapcast.job.plain(job)], options: heapcast.job.options(prefs), brief: true }, shown);
  };
})();
