// @ts-check
// The job as a sentence whose values are buttons.
"use strict";

/**
 * What every screen of a job is given: `read` is what the reader made of the text, `signal` ends with the screen, `rest` is what
 * stands behind the screen's name in the address.
 * @typedef {{ element: HTMLElement, job: Job, prefs: { units: string, clock: string }, read: any, signal: AbortSignal, rest: string[] }} Open
 */
/** Screens of a job by the word in the address: #/job/ID/WORD. @type {Record<string, (open: Open) => void | Promise<void>>} */
heapcast.screens = {};

heapcast.sentence = (() => {
  const { h } = heapcast;

  /** A part of a clause is words, or a value to be touched. */
  const valueOf = (/** @type {any} */ part) => part.value;

  /** @typedef {(value: any, clause: any) => void} Touch */
  /** What a value is, with whose it is where several may have it. @param {any} value @param {any} clause */
  const title = (value, clause) => (clause && /\D$/.test(clause.name || "") && !value.title.includes("name") ? `${clause.name}: ${value.title}` : value.title);
  const button = (/** @type {any} */ value, /** @type {any} */ clause, /** @type {Touch} */ touch) => h("button", {
    class: value.usual ? "value usual" : "value", "data-key": value.key,
    "aria-label": `${value.words}: ${title(value, clause)}${value.usual ? ", usual value" : ""}`,
    onclick: () => touch(value, clause),
  }, value.words);
  /** Words and buttons of clauses. A mark stays with the value before it, also where the next clause begins with it; on a line of its
   * own it has no use. @param {any[]} clauses @param {Touch} touch */
  const flow = (clauses, touch) => {
    const parts = clauses.flatMap((clause) => clause.parts.map((/** @type {any} */ part) => ({ value: valueOf(part), words: part.words, clause })));
    const mark = (/** @type {any} */ part) => (part && !part.value && /^[,;.:]+/.exec(part.words)?.[0]) || "";
    return parts.map(({ value, words, clause }, i) => (value ? h("span", { class: "whole-value" }, button(value, clause, touch), mark(parts[i + 1]))
      : i === 0 ? words.replace(/^[\s,;.]+/, "") : parts[i - 1].value ? words.slice(mark(parts[i]).length) : words));
  };

  /** All values, each with its clause. @param {any} read @returns {{value: any, clause: any}[]} */
  const all = (read) => read.sentence.clauses.flatMap((/** @type {any} */ clause) =>
    clause.parts.map(valueOf).filter(Boolean).map((/** @type {any} */ value) => ({ value, clause })));

  return {
    title,

    /** The sentence, and folded what it leaves out because all of it is usual.
     * @param {any} read @param {Touch} touch @param {(clause: any) => void} add what a clause offers that has no value to be touched */
    draw(read, touch, add) {
      const { clauses, usual } = read.sentence;
      const quiet = clauses.filter((/** @type {any} */ one) => one.is_quiet);
      const count = h("span", { class: "usual" }, usual === 1 ? "1 usual value" : `${usual} usual values`);
      return [
        h("p", { class: "flow" }, flow(clauses.filter((/** @type {any} */ one) => !one.is_quiet), touch)),
        quiet.length ? h("details", { class: "quiet" }, h("summary", {}, usual ? count : "more to say"), quiet.map((/** @type {any} */ one) => h("p", { class: "flow" }, flow([one], touch), one.add && !one.parts.some(valueOf) ? [" ", h("button", { class: "value", onclick: () => add(one) }, `add ${one.add.words}`)] : ""))) : h("p", { class: "note" }, usual ? count : ""),
      ];
    },

    /** What the sentence cannot say, each with what it belongs to: `sand, damp, fill factor`. @param {any} read */
    further: ({ sentence: { further } }) => (further.length ? h("details", { class: "further" }, h("summary", {}, `Further settings: ${further.length}`),
      h("ul", {}, further.map((/** @type {any} */ one) => h("li", {}, h("strong", {}, one.key.split(".").slice(1).join(", ").replace(/_/g, " ") || one.key), ": ", one.words)))) : ""),

    /** The value of a key and the clause it stands in. @param {any} read @param {string} key */
    find: (read, key) => all(read).find(({ value }) => value.key === key) || null,
    all,

    /** Gives a value the focus; the first one where it is gone. @param {HTMLElement} element @param {string} key */
    focus(element, key) {
      const buttons = [...element.querySelectorAll("button.value")];
      const one = buttons.find((button) => button.getAttribute("data-key") === key) || buttons[0];
      if (one instanceof HTMLElement) one.focus({ preventScroll: true });
    },
  };
})();
