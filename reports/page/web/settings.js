// @ts-check
"use strict";

/** Units, clock, look, and everything on the device as one file. */
heapcast.settings = (() => {
  const { h, store, shell } = heapcast;

  /** @param {keyof Settings} key @param {string} words @param {[string, string][]} choices value and words */
  function choice(key, words, choices) {
    return h("fieldset", {}, h("legend", {}, words), choices.map(([value, says]) => h("label", { class: "choice" },
      h("input", { type: "radio", name: key, value, checked: store.settings()[key] === value, onchange: () => store.settings({ [key]: value }) }), says)));
  }

  shell.route("settings", async (element) => {
    shell.title("Settings");
    const picked = heapcast.share.picker("file of all jobs");
    const lasting = await navigator.storage?.persisted?.().catch(() => true) ?? true;
    const ask = h("button", { onclick: async () => {
      ask.hidden = await navigator.storage.persist();
      shell.say(ask.hidden ? "The browser keeps them until you delete them." : "The browser did not agree. Save all jobs as a file now and then.");
    } }, "ask the browser to keep them for good");
    element.append(
      choice("units", "Units", [["us", "US: feet, yards, cubic yards"], ["metric", "metric: metres, cubic metres"]]),
      choice("clock", "Clock", [["am", "1:30 pm"], ["24", "13:30"]]),
      choice("look", "Look", [["", "as the device"], ["light", "light"], ["dark", "dark"]]),
      h("h2", {}, "What is kept, and where"),
      h("p", {}, "Jobs, settings and what is half typed are kept by this browser on this device, and nothing is sent anywhere. Clearing the browser's data deletes them, and some browsers clear a page that was not opened for weeks: save what matters as a file."),
      h("div", { class: "row fill" },
        h("button", { onclick: exportAll }, "save all jobs as a file"),
        h("button", { onclick: () => picked.click() }, "open a file of all jobs"), picked,
        !lasting && !store.trouble() && ask));
  });

  /** All jobs and the settings as one file, to be opened on any device. */
  async function exportAll() {
    const all = { heapcast: "jobs", v: store.VERSION, settings: store.settings(), jobs: await store.list() };
    shell.save(`heapcast-jobs-${new Date().toISOString().slice(0, 10)}.json`, JSON.stringify(all, null, 1), "application/json");
  }

  /** Adds the jobs of such a file; those that are here already stay as they are. @param {NamedText} file @returns {Promise<string>} what was done, in words */
  async function importAll({ name, text }) {
    let all;
    try { all = JSON.parse(text); } catch { all = null; }
    if (all?.heapcast !== "jobs" || !Array.isArray(all.jobs)) return `${name} is no file of jobs saved here.`;
    const here = await store.list();
    let [added, known, bad] = [0, 0, 0];
    for (const one of all.jobs) {
      const job = heapcast.share.isJob(one) ? store.upgraded(one) : null;
      if (!job || job.newer) bad += 1;
      else if (here.some((mine) => mine.text === job.text && mine.title === job.title)) known += 1;
      else {
        await store.put(store.fresh({ ...job, title: String(job.title) }));
        added += 1;
      }
    }
    await shell.redraw();
    return `${added} ${added === 1 ? "job" : "jobs"} added.${known ? ` ${known} were here already.` : ""}${bad ? ` ${bad} could not be read, or come from a newer heapcast.` : ""}`;
  }

  return { exportAll, importAll };
})();
