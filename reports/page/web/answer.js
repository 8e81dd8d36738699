// @ts-check
// The answer as a card: plan on, the range with its picture, what holds it up, what helps, what to check.
"use strict";

heapcast.answer = (() => {
  const { h, store } = heapcast;
  const SVG = "http://www.w3.org/2000/svg";
  /** Runs of the first answer, at once, and of the one behind it. */
  const [FIRST, WHOLE] = ["2000", "10000"];
  /** Helps that stand open. */
  const SHOWN = 2;
  /** Rows that the figures above them say. */
  const ABOVE = ["Plan on", "Range"];

  /** An element of a drawing. @param {string} tag @param {Record<string, string | number>} attributes @param {Node[]} children */
  function drawn(tag, attributes, ...children) {
    const element = document.createElementNS(SVG, tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
    element.append(...children);
    return element;
  }

  /** Low, middle, plan and high on a line. @param {any} marks @param {string} words */
  function picture({ low, middle, plan, high }, words) {
    const [from, to, y] = [6, 314, 14];
    const [first, last] = [low.clock_s.value, high.clock_s.value];
    const at = (/** @type {any} */ mark) => (last > first ? from + ((mark.clock_s.value - first) / (last - first)) * (to - from) : (from + to) / 2);
    return h("figure", { class: "range" }, drawn("svg", { viewBox: "0 0 320 28", role: "img", "aria-label": words },
      drawn("line", { class: "whole", x1: from, x2: to, y1: y, y2: y }),
      drawn("line", { class: "likely", x1: from, x2: at(plan), y1: y, y2: y }),
      drawn("line", { class: "middle", x1: at(middle), x2: at(middle), y1: y - 7, y2: y + 7 }),
      drawn("line", { class: "planned", x1: at(plan), x2: at(plan), y1: y - 13, y2: y + 13 })),
    h("figcaption", { "aria-hidden": "true" }, h("span", {}, h("strong", {}, low.clock), " good day"), h("span", {}, h("strong", {}, high.clock), " bad day")));
  }

  /** Cautions, closed, with how many there are. @param {any[]} warnings */
  const cautions = (warnings) => (warnings.length ? h("details", { class: "fold cautions" },
    h("summary", {}, warnings.length === 1 ? "1 thing to check" : `${warnings.length} things to check`),
    h("ul", {}, warnings.map((one) => h("li", {}, h("strong", {}, one.cause), " ", one.remedy)))) : "");

  /** What would help, the first of it open: each can be tried where the sentence has a place for it. @param {any[]} helps @param {((help: any) => void)=} tryIt */
  function helpers(helps, tryIt) {
    const lines = helps.map((one) => {
      const words = [`${one.words}: ${/^\d/.test(one.saves) ? "saves " : ""}${one.saves}`, one.cost].filter(Boolean).join(", ");
      return tryIt && one.change ? h("button", { class: "help", onclick: () => tryIt(one) }, words, h("span", {}, "try it")) : h("p", {}, words);
    });
    const rest = lines.splice(SHOWN);
    return [...lines, rest.length ? h("details", { class: "fold" }, h("summary", {}, `${rest.length} more`), rest) : ""];
  }

  /**
   * A card of any question. On the screen of a job help can be tried, and what is ordered be changed.
   * @param {any} card @param {{ tryIt?: (help: any) => void, order?: { value: any, clause: any }[], touch?: (value: any, clause: any) => void }} [can]
   */
  function draw(card, { tryIt, order = [], touch } = {}) {
    const marks = card.picture;
    const words = (/** @type {string} */ label) => card.rows.find((/** @type {any} */ row) => row.label === label)?.words || "";
    const said = (/** @type {any} */ row) => (marks ? ABOVE.includes(row.label) : row.words.replace(/\n/g, " ") === card.headline) || (card.helps.length && row.label === "What would help");
    const rows = card.rows.filter((/** @type {any} */ row) => row.words && !said(row));
    return [
      marks ? h("p", { class: "big plan" }, h("span", {}, marks.enough ? "Plan on " : "Work ends "), marks.plan.clock) : h("p", { class: "headline" }, card.headline),
      marks?.enough ? h("p", { class: "note" }, words("Plan on")) : "",
      marks ? picture(marks, words("Range") || words("Crew at work")) : "",
      h("dl", {}, rows.map((/** @type {any} */ row) => h("div", {}, h("dt", {}, row.label), h("dd", {}, row.words, row.label === "Order" && touch && order.map(({ value, clause }) =>
        h("button", { class: "plain order", "aria-label": `change ${value.title}, ${value.words}`, onclick: () => touch(value, clause) }, "change")))))),
      ...(card.helps.length ? [h("h2", { class: "what" }, "What would help"), ...helpers(card.helps, tryIt)] : []),
      cautions(card.warnings),
    ].filter(Boolean);
  }

  /** The card's place on the screen of a job. */
  function view() {
    const spoken = h("p", { class: "only-read", role: "status" });
    const bar = h("progress", { max: "1", value: "0", "aria-label": "runs made" });
    const from = h("p", { class: "note from" });
    const body = h("div", { class: "body" }, h("p", { class: "big plan" }, h("span", {}, "Plan on "), "…"));
    /** Asks again for what stands here: another answer may have come between. */
    let report = async () => "";
    const whole = h("button", { class: "plain", hidden: true, onclick: () => report().then((html) => heapcast.paper.open(html, "report"), (error) => heapcast.job.failed(body, error, undefined)) }, "the whole report");
    const element = h("section", { class: "card", "aria-label": "The answer" }, bar, body, from, whole, spoken);

    /** Asks with few runs and then with many, and shows each as it comes; tells whether it came to the end. @param {Open} open @param {AbortSignal} signal @param {Parameters<typeof draw>[1]} can */
    async function run({ job, prefs, element: screen }, signal, can) {
      const busy = (/** @type {boolean} */ on) => { screen.setAttribute("aria-busy", String(on)); bar.classList.toggle("idle", !on); whole.hidden = on; };
      const ask = async (/** @type {string} */ runs) => {
        const { card } = await heapcast.engine.ask({ question: "forecast", jobs: [heapcast.job.plain(job)], options: [...heapcast.job.options(prefs), ["runs", runs]] },
          { signal, onProgress: (/** @type {number} */ done, /** @type {number} */ all) => { bar.value = all ? done / all : 0; } });
        if (signal.aborted) return;
        body.classList.remove("old");
        // What was opened stays open when the figures behind them come in.
        const opened = [...body.querySelectorAll("details")].map((one) => one.open);
        body.replaceChildren(...draw(card, can));
        body.querySelectorAll("details").forEach((one, i) => { one.open = opened[i] || false; });
        from.textContent = `From ${Number(runs).toLocaleString("en")} runs of this job.`;
        const words = card.picture ? `${card.picture.enough ? "Plan on" : "Work ends"} ${card.picture.plan.clock}` : card.headline;
        if (spoken.textContent !== words) spoken.textContent = words;
        if (card.picture) store.keep(job, { promise: words });
      };
      busy(true);
      bar.value = 0;
      report = () => ask(WHOLE).then(() => heapcast.engine.file("report.html")).then((bytes) => new TextDecoder().decode(bytes));
      body.classList.add("old");
      try {
        await ask(FIRST);
        if (!signal.aborted) await ask(WHOLE);
      } catch (error) {
        heapcast.job.failed(body, error, signal);
      }
      if (!signal.aborted) busy(false);
      return !signal.aborted;
    }
    /** Says the answer in `place` while the card is out of sight, below a long sentence. @param {HTMLElement} place @param {AbortSignal} signal */
    function pin(place, signal) {
      const seen = new IntersectionObserver(([{ isIntersecting, boundingClientRect }]) => {
        place.textContent = spoken.textContent;
        place.hidden = isIntersecting || boundingClientRect.top < 0 || !spoken.textContent;
      }, { rootMargin: "0px 0px -110px" });
      seen.observe(body);
      new MutationObserver(() => { seen.unobserve(body); seen.observe(body); }).observe(spoken, { childList: true });
      signal.addEventListener("abort", () => seen.disconnect());
    }
    return { element, run, pin };
  }

  return { view, draw };
})();
