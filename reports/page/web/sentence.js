// @ts-check
// The job as a sentence whose values are buttons.
"use strict";
(() => {
  const { h } = heapcast;

  /** Screens of a job by the word in the address: #/job/ID/WORD. @type {Record<string, (open: any) => void | Promise<void>>} */
  heapcast.screens = {};

  /** A part of a clause is words, or a value to be touched. */
  const valueOf = (/** @type {any} */ part) => part.value || part.Value;

  heapcast.sentence = {
    /**
     * The sentence, and how many of its values are usual ones.
     * @param {any} read @param {(value: any, clause: any) => void} touch
     */
    draw(read, touch) {
      const { clauses, usual } = read.sentence;
      const button = (/** @type {any} */ value, /** @type {any} */ clause) => h("button", {
        class: value.usual ? "value usual" : "value", "data-key": value.key,
        "aria-label": `${value.words}: ${value.title}${value.usual ? ", usual value" : ""}`,
        onclick: () => touch(value, clause),
      }, value.words);
      const clause = (/** @type {any} */ clause) => h("span", { class: "clause" }, clause.parts.map((/** @type {any} */ part) => {
        const value = valueOf(part);
        return value ? button(value, clause) : part.words || part.Words || part;
      }), " ");
      return [
        h("p", { class: "flow" }, clauses.map(clause)),
        usual ? h("p", { class: "note count" }, h("span", { class: "usual" }, usual === 1 ? "1 usual value" : `${usual} usual values`)) : "",
      ];
    },

    /** What the sentence does not say. @param {any} read */
    further({ sentence: { further } }) {
      if (!further.length) return "";
      return h("details", { class: "further" }, h("summary", {}, `Further settings, from the file: ${further.length}`),
        h("ul", {}, further.map((/** @type {any} */ one) => h("li", {}, one.words))));
    },

    /** The value of a key and the clause it stands in. @param {any} read @param {string} key */
    find(read, key) {
      for (const clause of read.sentence.clauses) {
        const value = clause.parts.map(valueOf).find((/** @type {any} */ value) => value && value.key === key);
        if (value) return { value, clause };
      }
      return null;
    },

    /** All values, each with its clause. @param {any} read @returns {{value: any, clause: any}[]} */
    all: (read) => read.sentence.clauses.flatMap((/** @type {any} */ clause) =>
      clause.parts.map(valueOf).filter(Boolean).map((/** @type {any} */ value) => ({ value, clause }))),

    /** Gives a value the focus; the first one where it is gone. @param {HTMLElement} element @param {string} key */
    focus(element, key) {
      const buttons = [...element.querySelectorAll("button.value")];
      const one = buttons.find((button) => button.getAttribute("data-key") === key) || buttons[0];
      if (one instanceof HTMLElement) one.focus({ preventScroll: true });
    },
  };
})();
