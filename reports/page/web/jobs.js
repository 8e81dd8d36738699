// @ts-check
"use strict";

/** The list of the jobs on the device, new ones and examples. */
heapcast.jobs = (() => {
  const { h, store, shell } = heapcast;

  /** A time as people say it: today's with the hour only. @param {number} ms */
  function when(ms) {
    const { units, clock } = store.settings();
    const [then, now] = [new Date(ms), new Date()];
    const language = units === "us" ? "en-US" : "en-GB";
    const hour = then.toLocaleTimeString(language, { hour: "numeric", minute: "2-digit", hour12: clock === "am" }).toLowerCase();
    if (then.toDateString() === now.toDateString()) return `today, ${hour}`;
    const year = then.getFullYear() === now.getFullYear() ? undefined : "numeric";
    return `${then.toLocaleDateString(language, { day: "numeric", month: "long", year })}, ${hour}`;
  }

  /** The name of a file for a title. @param {string} title */
  const fileName = (title) => `${title.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 40) || "job"}.toml`;

  /** Keeps a new job under a title that no other has, and goes there. @param {string} text @param {string} title @param {Partial<Job>} [more] */
  async function keepNew(text, title, more = {}) {
    const job = store.fresh({ text, title, name: more.name ?? fileName(title), files: more.files });
    await store.put(job);
    shell.go(`#/job/${job.id}`);
  }

  /** @param {string} wanted @param {Job[]} all */
  function unused(wanted, all) {
    let title = wanted;
    for (let i = 2; all.some((job) => job.title === title); i += 1) title = `${wanted} (${i})`;
    return title;
  }

  async function newJob() {
    const { units } = store.settings();
    const day = new Date().toLocaleDateString(units === "us" ? "en-US" : "en-GB", { day: "numeric", month: "long" });
    const title = unused(`Job of ${day}`, await store.list());
    await keepNew(await heapcast.engine.starter({ units, title }), title);
  }

  /** The same job under another title; its text as it was where the title cannot be set. @param {Job} job @param {string} title */
  async function retitled(job, title) {
    const made = await heapcast.engine.edit(job, [{ set: "title", value: title }], shell.prefs());
    return made.ok ? { text: made.text, title: made.title, fault: "" }
      : { text: job.text, title: job.title, fault: made.problems.map((/** @type {any} */ one) => one.words).join(" ") };
  }

  async function duplicate(/** @type {Job} */ job) {
    const title = unused(job.title, await store.list());
    const made = await retitled(job, title);
    const copy = store.fresh({ ...made, name: fileName(made.title), files: job.files });
    copy.kept = { promise: job.kept.promise };
    await store.put(copy);
    await showAgain(copy.id);
    shell.say(`Kept a second time: ${copy.title}`);
  }

  async function remove(/** @type {Job} */ job) {
    await store.remove(job.id);
    await shell.redraw();
    shell.part("title").focus();
    shell.say(`Deleted: ${job.title}`, { undo: async () => {
      await store.put(job);
      await showAgain(job.id);
    } });
  }

  /** Shows the list anew, with the focus on a job. @param {string} id */
  async function showAgain(id) {
    await shell.redraw();
    document.getElementById(`job-${id}`)?.focus();
  }

  /** The form for another title, in place of what stood in the row. @param {Job} job */
  function renaming(job) {
    const key = `${job.id}.title`;
    const fault = h("p", { class: "heed", id: `fault-${job.id}`, role: "alert", hidden: true });
    const field = h("input", { value: store.draft(key) || job.title, autocomplete: "off", "aria-describedby": fault.id, oninput: () => store.draft(key, field.value) });
    const done = () => (store.draft(key, ""), showAgain(job.id));
    const keep = async () => {
      const made = await retitled(job, field.value.trim());
      fault.hidden = !made.fault;
      fault.textContent = made.fault;
      if (made.fault) return field.focus();
      const name = job.name === fileName(job.title) ? fileName(made.title) : job.name;
      await store.put(Object.assign(job, { text: made.text, title: made.title, name }));
      await done();
    };
    return h("form", { onsubmit: (/** @type {Event} */ event) => { event.preventDefault(); void keep(); } },
      h("label", {}, "title of the job", field), fault,
      h("div", { class: "row" }, h("button", { class: "first", onclick: keep }, "keep"), h("button", { onclick: done }, "back")));
  }

  function row(/** @type {Job} */ job) {
    const item = h("li", { class: "job" });
    const rename = () => {
      item.replaceChildren(renaming(job));
      item.querySelector("input")?.focus();
    };
    if (store.draft(`${job.id}.title`)) item.append(renaming(job));
    else item.append(
      h("a", { class: "over", id: `job-${job.id}`, href: `#/job/${job.id}` },
        h("strong", {}, job.title),
        job.kept.promise && h("span", { class: "promise" }, job.kept.promise),
        h("span", { class: "soft" }, job.newer ? "changed by a newer heapcast" : `changed ${when(job.changed)}`),
        job.kept.note && h("span", { class: "soft" }, job.kept.note)),
      h("details", {}, h("summary", {}, "more", h("span", { class: "only-read" }, ` about ${job.title}`)),
        h("div", { class: "row" },
          !job.newer && h("button", { onclick: rename }, "rename"),
          !job.newer && h("button", { onclick: () => duplicate(job) }, "duplicate"),
          !job.newer && h("a", { class: "button", href: `#/job/${job.id}/share` }, "share"),
          h("button", { onclick: () => remove(job) }, "delete"))));
    return item;
  }

  /** The question at the head of an example's text. @param {string} text */
  function about(text) {
    const words = (/^(?:#.*\n)+/.exec(text)?.[0] ?? "").replace(/^# ?/gm, "").replace(/\s+/g, " ");
    return /^.*?[.?](?= |$)/.exec(words)?.[0] ?? "";
  }

  shell.route("jobs", async (element) => {
    const all = await store.list();
    const picked = heapcast.share.picker("files to open");
    const pasted = h("textarea", { rows: 3, id: "pasted", spellcheck: "false", value: store.draft("pasted"), oninput: () => store.draft("pasted", pasted.value) });
    element.append(
      h("p", { class: "lead" }, "Material to move, a loader, some people: how long does it take?"),
      h("div", { class: "row fill" }, h("button", { class: "first", onclick: newJob }, "new job")),
      h("div", { class: "row fill" },
        h("a", { class: "button", href: "#/examples" }, "examples"),
        h("button", { onclick: () => picked.click() }, "open a file"), picked),
      h("h2", {}, all.length ? "On this device" : "No jobs yet"),
      all.length ? h("ul", { class: "lot" }, all.map(row))
        : h("p", {}, "A new job opens complete, with usual values: its answer is there at once, and you change what is different on your site."),
      h("details", { open: pasted.value !== "" }, h("summary", {}, "paste a link or the text of a job"),
        h("label", { for: "pasted" }, "A link, what a code says, or a scenario file's text"), pasted,
        h("div", { class: "row" }, h("button", { onclick: () => heapcast.share.paste(pasted.value) }, "open"))));
  });

  shell.route("examples", async (element) => {
    shell.title("Examples");
    const { shipped } = await heapcast.engine.about();
    element.append(h("p", { class: "lead" }, "Each opens as a copy of your own. The sites are invented."),
      h("ul", { class: "lot" }, shipped.map((/** @type {any} */ one) => h("li", { class: "job" },
        h("button", { class: "over", onclick: () => keepNew(one.text, one.title, one) }, h("strong", {}, one.title), h("span", { class: "soft" }, about(one.text)))))));
  });

  return { fileName };
})();
