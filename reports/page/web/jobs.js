// @ts-check
"use strict";

var heapcast = heapcast || {};

/** The list of the jobs on the device. */
heapcast.jobs = (() => {
  const { h, store, shell } = heapcast;

  shell.route("jobs", async (element) => {
    const all = await store.list();
    element.append(h("ul", { class: "lot" }, all.map((job) => h("li", {}, h("a", { href: `#/job/${job.id}` }, job.title)))));
  });

  /** All jobs and the settings as one file, to be opened on any device. */
  async function exportAll() {
    const all = { heapcast: "jobs", v: store.VERSION, settings: store.settings(), jobs: await store.list() };
    shell.save(`heapcast-jobs-${new Date().toISOString().slice(0, 10)}.json`, JSON.stringify(all, null, 1), "application/json");
  }

  return { exportAll };
})();
