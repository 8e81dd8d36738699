// @ts-check
// What if: changes stacked on the job, the difference of all of them, and the best of several.
"use strict";

(() => {
  const { h, shell, store } = heapcast;

  /** A set of changes in words: `people raking 2 + bucket 16 ft3`. @param {any[]} stack */
  const inWords = (stack) => stack.map((one) => `${one.title} ${one.words}`).join(" + ");
  const change = (/** @type {any} */ one) => `${one.key} = ${/^[[{"]/.test(one.value) ? one.value : one.value.replace(/;/g, ",")}`;

  heapcast.screens.whatif = async (open) => {
    const { element, job, prefs, signal } = open;
    const place = `${job.id}/whatif`;
    shell.title("What if");
    /** `stack` is tried now, `sets` are to be compared. @type {{stack: any[], sets: any[][]}} */
    const state = store.draft(place) || { stack: [], sets: [] };
    let text = job.text;
    let read = open.read;
    const shown = h("p", { class: "difference", "aria-live": "polite" });
    const wrong = h("div", {});
    const tried = h("div", { class: "tried" });
    const list = h("div", {});
    const found = h("div", { class: "best", "aria-live": "polite" });
    const difference = heapcast.sheet.differ(open, shown);
    const button = (/** @type {string} */ label, /** @type {() => void} */ onclick, /** @type {any} */ more = {}) => h("button", { onclick, ...more }, label);

    const edits = () => state.stack.map(({ key, value }) => ({ set: key, value }));
    async function again() {
      store.draft(place, state);
      const next = state.stack.length ? await heapcast.engine.edit(heapcast.job.plain(job), edits(), prefs) : { ...open.read, text: job.text };
      if (signal.aborted) return;
      wrong.replaceChildren(next.ok ? "" : heapcast.job.problems(next.problems));
      if (next.ok) {
        [text, read] = [next.text, next];
        for (const one of state.stack) one.words = heapcast.sentence.find(read, one.key)?.value.words || one.value;
        difference.of(text);
      }
      draw(next.ok);
    }
    function stack(/** @type {any} */ value, /** @type {any} */ clause, /** @type {string} */ typed) {
      const at = state.stack.find((one) => one.key === value.key);
      if (at) at.value = typed;
      else state.stack.push({ key: value.key, title: heapcast.sentence.title(value, clause), value: typed, words: typed });
      const usual = heapcast.sentence.find(open.read, value.key);
      if (usual && usual.value.typed === typed) state.stack = state.stack.filter((one) => one.key !== value.key);
      return again();
    }
    async function touch(/** @type {any} */ value, /** @type {any} */ clause) {
      const done = await heapcast.sheet.open({ open: { ...open, job: { ...job, text } }, value, clause: { name: clause.name }, keep: "try it" });
      const edit = done && done.edits[0];
      if (edit && edit.set) await stack(value, clause, edit.value);
    }
    function draw(/** @type {boolean} */ ok) {
      tried.replaceChildren(
        state.stack.length ? h("h2", {}, "Tried together") : "",
        h("ul", {}, state.stack.map((one, i) => h("li", {}, button(`${one.title}: ${one.words}`, () => { state.stack.splice(i, 1); again(); }, { "aria-label": `${one.title}: ${one.words}, take it back` })))),
        state.stack.length && ok ? h("div", { class: "row" },
          button("keep", async () => { store.draft(place, { stack: [], sets: state.sets }); await heapcast.job.keep(job, text, read.title); shell.go(heapcast.job.link(job)); }, { class: "first" }),
          button("compare later", () => { state.sets.push(state.stack); state.stack = []; again(); })) : "");
      const rows = (/** @type {boolean} */ quiet) => heapcast.sentence.all(read).filter(({ value, clause }) => (value.less || value.more) && Boolean(clause.is_quiet) === quiet)
        // What the crew can do about it stands before what the ground is like.
        .sort((one, other) => Number(one.clause.kind === "zone") - Number(other.clause.kind === "zone")).map(({ value, clause }) => h("li", {},
        h("span", { class: "name" }, heapcast.sentence.title(value, clause)),
        button("−", () => stack(value, clause, value.less), { class: "step", disabled: !value.less, "aria-label": `less: ${heapcast.sentence.title(value, clause)}` }),
        button(value.words, () => touch(value, clause), { class: "value", "aria-label": `${value.words}: ${heapcast.sentence.title(value, clause)}` }),
        button("+", () => stack(value, clause, value.more), { class: "step", disabled: !value.more, "aria-label": `more: ${heapcast.sentence.title(value, clause)}` })));
      const quiet = rows(true);
      const opened = list.querySelector("details")?.open;
      list.replaceChildren(h("ul", { class: "changes" }, rows(false)), quiet.length ? h("details", { open: opened }, h("summary", {}, "What else can be changed"), h("ul", { class: "changes" }, quiet)) : "");
      best();
    }

    const several = h("div", {});
    function best() {
      const alternatives = open.read.alternatives.map((/** @type {any} */ one) => one.name || one);
      const sets = [...state.sets, ...(state.stack.length ? [state.stack] : [])];
      const count = alternatives.length + sets.length;
      several.replaceChildren(h("h2", {}, "Which is best?"),
        count ? h("ul", {}, h("li", {}, "as it stands"), alternatives.map((/** @type {string} */ name) => h("li", {}, name)),
          sets.map((set, i) => h("li", {}, inWords(set), " ", i < state.sets.length ? button("leave out", () => { state.sets.splice(i, 1); again(); }, { class: "plain" }) : "")))
          : h("p", { class: "note" }, "Try something above and leave it here with “compare later”, once or several times: all are compared on the same days."),
        count ? button("compare them", () => compare(alternatives, sets), { class: "first" }) : "");
    }
    async function compare(/** @type {string[]} */ alternatives, /** @type {any[][]} */ sets) {
      difference.stop();
      found.replaceChildren(h("progress", { "aria-label": "runs made" }));
      /** @type {[string, string][]} */
      const options = [...alternatives.map((name) => /** @type {[string, string]} */ (["alternative", name])),
        ...sets.map((set) => /** @type {[string, string]} */ (["change", `${inWords(set).replace(/[:;=]/g, " ")}: ${set.map(change).join("; ")}`])), ...heapcast.job.options(prefs)];
      try {
        await heapcast.engine.ask({ question: "compare", jobs: [heapcast.job.plain(job)], options }, { signal });
        const { verdict, choices, differences } = await heapcast.engine.json();
        choices.sort((/** @type {any} */ a, /** @type {any} */ b) => Number(b.letter === verdict.best) - Number(a.letter === verdict.best) || a.mean_finish_working_s.value - b.mean_finish_working_s.value);
        const of = (/** @type {any} */ choice) => differences.find((/** @type {any} */ one) => one.letter === choice.letter)?.words || "";
        found.replaceChildren(h("p", { class: "headline" }, verdict.take), ...[verdict.sure, ...verdict.besides.slice(0, 1)].map((words) => h("p", {}, words)),
          h("ol", { class: "ranked" }, choices.map((/** @type {any} */ choice) => h("li", {}, h("strong", {}, choice.name),
            ` plan on ${choice.finish.find((/** @type {any} */ one) => one.share === 0.8).clock}. `, of(choice)))));
        found.scrollIntoView({ block: "nearest" });
      } catch (error) {
        heapcast.job.failed(found, error, signal);
      }
    }
    element.replaceChildren(h("div", { class: "result" }, shown, wrong, tried), h("h2", {}, "Change something"), list, several, found);
    await again();
  };
})();
