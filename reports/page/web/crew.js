// @ts-check
// Papers: a report shown whole, the crew sheet taken out of it and printed by itself, and a list as a small table.
"use strict";

heapcast.paper = (() => {
  const { h, shell } = heapcast;

  /** A page of the engine in a frame of its own, in which no script runs. @param {string} html @param {string} name */
  const frame = (html, name) => h("iframe", { class: "paper", title: name, sandbox: "allow-same-origin allow-modals", srcdoc: html });
  const print = (/** @type {HTMLIFrameElement} */ paper) => { paper.contentWindow?.focus(); paper.contentWindow?.print(); };

  const own = {
    /** The whole screen for a page, until it is closed. @param {string} html @param {string} name */
    open(html, name) {
      const paper = frame(html, name);
      const close = () => lift();
      const lift = heapcast.sheet.over(h("dialog", { class: "whole", "aria-label": name }, h("div", { class: "row" },
        h("button", { onclick: close }, "close"), h("button", { onclick: () => print(paper) }, "print")), paper), close);
    },
  };

  heapcast.screens.crew = async ({ element, job, prefs, signal }) => {
    shell.title("Crew sheet");
    const bar = h("progress", { max: "1", "aria-label": "runs made" });
    element.replaceChildren(h("p", { role: "status" }, "Making the runs."), bar);
    await heapcast.engine.ask({ question: "forecast", jobs: [heapcast.job.plain(job)], options: heapcast.job.options(prefs) },
      { signal, onProgress: (/** @type {number} */ done, /** @type {number} */ all) => { if (all) bar.value = done / all; } });
    const bytes = await heapcast.engine.file("report.html");
    const report = new DOMParser().parseFromString(new TextDecoder().decode(bytes), "text/html");
    // A phone should not have to do both in one breath.
    await new Promise((done) => setTimeout(done));
    if (signal.aborted) return;
    const sheet = report.getElementById("crew-sheet");
    if (!sheet) throw new Error("This job has no crew sheet.");
    for (const fold of sheet.matches("details") ? [sheet] : sheet.querySelectorAll("details")) fold.setAttribute("open", "");
    const main = report.createElement("main");
    main.append(sheet);
    report.body.replaceChildren(main);
    const paper = frame(`<!DOCTYPE html>${report.documentElement.outerHTML}`, "crew sheet");
    element.replaceChildren(h("div", { class: "row" }, h("button", { class: "first", onclick: () => print(paper) }, "print")), paper);
  };

  return own;
})();

heapcast.table = (() => {
  const { h } = heapcast;

  /** Splits a line of a list at its commas, but for those in quotes. @param {string} line */
  const cells = (line) => (line.match(/("([^"]|"")*"|[^,])*(,|$)/g) || []).map((cell) => cell.replace(/,$/, "").trim().replace(/^"(.*)"$/, "$1").replace(/""/g, '"'));

  /** A list with a heading, to be changed row by row or read from a file. @param {string} first @param {() => void} changed */
  return (first, changed) => {
    /** @type {string[]} */
    let heads = [];
    const rows = h("div", { class: "list" });
    const quoted = (/** @type {string} */ cell) => (/[",\n]/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell);
    const row = (/** @type {string[]} */ values) => {
      const one = h("div", { class: "cells", role: "group" }, heads.map((head, i) => h("label", {}, head, h("input", { type: "text", value: values[i] || "" }))),
        h("button", { class: "plain", onclick: () => { one.remove(); changed(); } }, "leave out"));
      return one;
    };
    const read = (/** @type {string} */ text) => {
      const lines = text.split(/\r?\n/).filter((line) => line.trim() && !line.startsWith("#"));
      heads = cells(lines.shift() || "").filter(Boolean);
      rows.replaceChildren(...lines.map((line) => row(cells(line))));
    };
    const open = async (/** @type {Event} */ event) => {
      const [file] = /** @type {HTMLInputElement} */ (event.target).files || [];
      if (file) { read(await file.text()); changed(); }
    };
    read(first);
    return {
      element: h("fieldset", {}, h("legend", {}, "the list"), rows, h("div", { class: "row" },
        h("button", { onclick: () => { rows.append(row([])); changed(); } }, "add a row"),
        h("label", { class: "button" }, "open a CSV file", h("input", { type: "file", accept: ".csv,text/csv", onchange: open })))),
      text: () => [heads, ...[...rows.children].map((one) => [...one.querySelectorAll("input")].map((input) => quoted(input.value)))].map((line) => line.join(",")).join("\n") + "\n",
    };
  };
})();
