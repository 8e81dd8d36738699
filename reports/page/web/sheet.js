// @ts-check
// The sheet at the thumb: one value of the sentence, tried before it is kept.
"use strict";

heapcast.sheet = (() => {
  const { h, store } = heapcast;
  /** Longer lists are searched. */
  const SHORT_LIST = 8;
  /** Steps that follow each other faster than this are answered together [ms]. */
  const PAUSE_MS = 250;
  /** Runs of either job from which a difference is told. */
  const RUNS = "2000";

  const place = (/** @type {any} */ job) => `${job.id}/sheet`;

  /** What stands before and behind a figure in a unit: `$` and `/h`; nothing and ` yd3`. @param {string} unit */
  function around(unit) {
    const money = /^([^\w%]+)(\/.*)$/.exec(unit);
    return money ? [money[1], money[2]] : ["", ` ${unit}`];
  }

  /** A figure and its unit, where the unit is one of those offered. @param {string} typed @param {string[]} units */
  function parted(typed, units) {
    for (const unit of units) {
      const [before, behind] = around(unit);
      if (typed.startsWith(before) && typed.endsWith(behind)) return { figure: typed.slice(before.length, typed.length - behind.length), unit };
    }
    return { figure: typed, unit: typed ? "" : units[0] || "" };
  }

  /** What a changed job saves against the one kept. @param {any} open @param {string} text @param {AbortSignal} signal */
  async function compared({ job, prefs }, text, signal) {
    const [kept, tried] = [heapcast.job.plain(job), { ...heapcast.job.plain(job), text }];
    await heapcast.engine.ask({
      question: "compare", jobs: [{ ...kept, name: "as it stands.toml" }, { ...tried, name: "changed.toml" }],
      options: [...heapcast.job.options(prefs), ["runs", RUNS], ["most", RUNS]],
    }, { signal });
    const { differences, choices } = await heapcast.engine.json();
    const plan = choices[1].finish.find((/** @type {any} */ one) => one.share === 0.8);
    return { words: differences[0].words, plan: plan ? plan.clock : "" };
  }

  /** The difference of a tried text, shown in `shown`; a later one takes its place. */
  function differ(/** @type {any} */ open, /** @type {HTMLElement} */ shown) {
    let running = new AbortController();
    let timer = 0;
    const stop = () => { clearTimeout(timer); running.abort(); };
    open.signal.addEventListener("abort", stop);
    return {
      stop,
      /** @param {string} text @param {(found: {words: string, plan: string}) => void} [then] */
      of(text, then) {
        stop();
        shown.replaceChildren(text === open.job.text ? "As it stands." : "Working it out.");
        if (text === open.job.text) return;
        const { signal } = (running = new AbortController());
        timer = setTimeout(() => compared(open, text, signal).then((found) => {
          if (signal.aborted) return;
          shown.replaceChildren(found.plan ? h("strong", {}, "Plan on ", found.plan, ". ") : "", heapcast.together(found.words));
          if (then) then(found);
        }).catch((error) => { if (!signal.aborted) heapcast.job.failed(shown, error, signal); }), PAUSE_MS);
      },
    };
  }

  /** The field, its steps and its choices. @param {any} value @param {(edit: any, own?: boolean) => Promise<void>} tried @param {(edit: any) => void} taken of a long list */
  function entry(value, tried, taken) {
    const units = value.units || [];
    const long = (value.choices || []).length > SHORT_LIST;
    const field = h("input", {
      id: "typed", type: long ? "search" : "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "done",
      "aria-describedby": "help wrong difference", inputmode: units.length ? "decimal" : null, placeholder: long ? "search the list" : null,
    });
    const unit = h("select", { "aria-label": "unit", hidden: units.length < 1 }, units.map((/** @type {string} */ one) => h("option", { value: one }, one)));
    const choices = h("div", { class: long ? "choices long" : "choices", role: "group", "aria-label": "usual choices" });
    const step = (/** @type {string} */ sign, /** @type {string} */ name) => h("button", { class: "step", "aria-label": `${name}: ${value.title}` }, sign);
    const [less, more] = [step("−", "less"), step("+", "more")];
    let now = value;
    /** A choice with its times as the person tells them. @param {string} one */
    const said = (one) => (heapcast.shell.prefs().clock === "24" ? one : one.replace(/\b(\d\d):(\d\d)\b/g, (_, hour, minute) => `${hour % 12 || 12}:${minute} ${hour < 12 ? "am" : "pm"}`));

    /** A bare figure takes the unit beside it. */
    const typed = () => {
      const [words, [before, behind]] = [field.value.trim(), around(unit.value)];
      return unit.value && /^[\d\s.,/]+$/.test(words) ? before + words + behind : words;
    };
    const list = () => {
      const words = long ? field.value.toLowerCase().split(/\s+/) : [];
      const fits = (value.choices || []).filter((/** @type {string} */ one) => words.every((word) => one.toLowerCase().includes(word)));
      choices.replaceChildren(...fits.map((/** @type {string} */ one) => h("button", {
        "aria-pressed": String(one === now.typed), onclick: () => (long ? taken : tried)({ set: value.key, value: one }) }, said(one))));
      if (long && !fits.length) choices.append(h("button", { onclick: () => taken({ set: value.key, value: typed() }) }, `take “${field.value.trim()}”`));
    };
    const show = (/** @type {any} */ next, /** @type {boolean} */ own) => {
      now = next;
      for (const [button, to] of [[less, now.less], [more, now.more]]) button.disabled = !to;
      const parts = parted(now.typed, units);
      if (!own) field.value = long ? "" : parts.figure;
      if (!own) unit.value = parts.unit;
      list();
    };
    less.addEventListener("click", () => now.less && tried({ set: value.key, value: now.less }));
    more.addEventListener("click", () => now.more && tried({ set: value.key, value: now.more }));
    field.addEventListener("input", () => (long ? list() : tried({ set: value.key, value: typed() }, true)));
    unit.addEventListener("change", () => tried({ set: value.key, value: typed() }, true));
    const steps = value.less || value.more || units.length;
    const element = h("div", {}, h("div", { class: "stepper" }, steps ? less : "", field, unit, steps ? more : ""), choices);
    /** What was half typed before. */
    const put = (/** @type {string} */ text) => { [field.value, unit.value] = [text, ""]; };
    return { element, field, show, put, long, typing: long || units.length > 0 || !(steps || choices.childElementCount) };
  }

  /**
   * Lays a dialog over the page, above the keyboard and no higher than what that leaves. The way back of the device, Escape, a touch
   * beside it and the end of the screen are all `leave`; what is returned takes it away.
   * @param {HTMLDialogElement} dialog @param {() => void} leave @param {AbortSignal} [signal]
   */
  function over(dialog, leave, signal) {
    const above = () => {
      const left = window.visualViewport?.height ?? innerHeight;
      const typing = innerHeight - left > 120;
      dialog.classList.toggle("typing", typing);
      Object.assign(dialog.style, { marginBottom: typing ? `${innerHeight - left}px` : "", maxHeight: typing ? `${left}px` : "" });
    };
    dialog.addEventListener("cancel", (event) => { event.preventDefault(); leave(); });
    dialog.addEventListener("click", (event) => { if (event.target === dialog) leave(); });
    window.visualViewport?.addEventListener("resize", above);
    document.body.append(dialog);
    // After a reload with an open sheet its step back is there already; a page that may not make one has the buttons.
    try { if (!history.state?.over) history.pushState({ over: true }, ""); } catch { }
    addEventListener("popstate", leave);
    signal?.addEventListener("abort", leave);
    dialog.showModal();
    return () => {
      removeEventListener("popstate", leave);
      signal?.removeEventListener("abort", leave);
      window.visualViewport?.removeEventListener("resize", above);
      // Where the screen is drawn anew, the next sheet has this step back.
      if (history.state?.over && !signal?.aborted) history.back();
      dialog.close();
      dialog.remove();
    };
  }

  /**
   * Opens the sheet of a value. Resolves with the text kept, or null when it was left as it was.
   * @param {{open: any, value: any, clause?: any, first?: any, keep?: string}} wanted `first` is the edit to begin with, `keep` the word for keeping
   * @returns {Promise<{text: string, read: any, edits: any[]} | null>}
   */
  function open({ open, value, clause, first, keep = "keep" }) {
    const { job, prefs } = open;
    /** What is tried, once the reader took it. @type {{text: string, read: any, edits: any[]} | null} */
    let good = null;
    let turn = 0;
    /** What is half typed. @type {{key: string, text: string} | null} */ let half = null;
    /** The last edit on its way to the reader. */
    let latest = Promise.resolve();
    const wrong = h("p", { id: "wrong", class: "wrong", role: "alert" });
    const shown = h("p", { id: "difference", class: "difference", "aria-live": "polite" }, "As it stands.");
    const keeps = h("button", { type: "submit", class: "first", "aria-disabled": "true" }, keep);
    const difference = differ(open, shown);

    const tried = (/** @type {any} */ edit, own = false) => (latest = attempt(edit, own).catch((error) => heapcast.job.failed(wrong, error, open.signal)));
    const attempt = async (/** @type {any} */ edit, /** @type {boolean} */ own) => {
      const mine = ++turn;
      good = null;
      difference.stop();
      store.draft(place(job), half = edit.set && keep === "keep" ? { key: value.key, text: edit.value } : null);
      const read = await heapcast.engine.edit(heapcast.job.plain(job), [edit], prefs);
      if (mine !== turn) return;
      good = read.ok ? { text: read.text, read, edits: [edit] } : null;
      keeps.setAttribute("aria-disabled", String(!good || read.text === job.text));
      entered.field.setAttribute("aria-invalid", String(!read.ok));
      wrong.replaceChildren(...(read.ok ? [] : read.problems.map((/** @type {any} */ one) => h("span", {}, one.what ? `${one.what}${one.right ? `: ${one.right}` : ""}` : one.words))));
      if (!read.ok) return shown.replaceChildren("Cannot be kept like this.");
      const found = heapcast.sentence.find(read, value.key);
      entered.show(found ? found.value : { ...value, typed: edit.value || "" }, own);
      difference.of(read.text);
    };
    const entered = entry(value, tried, (edit) => tried(edit).then(submit));
    entered.show(value, false);

    /** Keeps what is tried; what was just typed is read first, so the button for it is never quite off. */
    let submit = async () => {};

    return new Promise((done) => {
      submit = async () => {
        await latest;
        if (good) finish(good.text === job.text ? null : good);
        else if (turn === 0) finish(null);
      };
      const finish = (/** @type {any} */ result) => {
        turn++;
        difference.stop();
        // A screen that is left or drawn anew takes its sheet along; what is half typed stays, though another tab may have kept its own.
        store.draft(place(job), open.signal.aborted ? half : null);
        lift();
        done(result);
      };
      const gone = () => finish(null);
      /** Another clause like this one, or this one away: kept at once, with a way back. */
      const clauseEdit = async (/** @type {any} */ edit) => {
        const read = await heapcast.engine.edit(heapcast.job.plain(job), [edit], prefs);
        if (read.ok) finish({ text: read.text, read, edits: [edit] });
        else wrong.replaceChildren(...read.problems.map((/** @type {any} */ one) => h("span", {}, one.words || one.what)));
      };
      const small = (/** @type {string} */ label, /** @type {() => void} */ act) => h("button", { class: "plain", onclick: act }, label);
      // Deliveries and breaks have numbers for names.
      const named = clause && /\D$/.test(clause.name || "") ? `remove ${clause.name}` : "remove this";
      const dialog = h("dialog", { class: "sheet", "aria-labelledby": "sheet-title" }, h("form", { method: "dialog", novalidate: true, onsubmit: (/** @type {Event} */ event) => { event.preventDefault(); submit(); } },
        h("h2", { id: "sheet-title", tabindex: "-1" }, h("label", { for: "typed" }, heapcast.sentence.title(value, clause))),
        h("p", { id: "help", class: "note" }, entered.long ? "" : value.help),
        entered.element, wrong, entered.long ? "" : shown,
        h("div", { class: "row" }, entered.long ? "" : keeps, h("button", { onclick: gone }, "back")),
        h("div", { class: "row" },
          value.usual || !clause ? "" : small("back to the usual value", () => tried({ unset: value.key })),
          clause && clause.add ? small(`add ${clause.add.words}`, () => clauseEdit({ add: clause.add.kind })) : "",
          clause && clause.can_remove ? small(named, () => clauseEdit({ remove: clause.kind === "breaks" ? "break" : clause.kind, name: clause.name })) : "")));
      const lift = over(dialog, gone, open.signal);
      // Where steps are the way, a field with the focus would only bring up the keyboard.
      if (entered.typing) { entered.field.focus(); entered.field.select(); } else dialog.querySelector("h2")?.focus();
      if (first) { entered.put(first.value || ""); tried(first); }
    });
  }

  return { open, over, differ, draft: (/** @type {any} */ job) => store.draft(place(job)) };
})();
