// @ts-check
"use strict";

/** What the screens of a job share; each file of theirs sets its own. */
heapcast.job = heapcast.screens = heapcast.sentence = heapcast.sheet = heapcast.answer = heapcast.paper = heapcast.table = /** @type {any} */ (null);

/** Words in which a figure is not parted from its per cent sign, nor the days from their number. @param {string} words */
heapcast.together = (words) => words.replace(/(\d) (?=%|days? in)/g, "$1\u00a0").replace(/(days? in) (?=\d)/g, "$1\u00a0");

/** @typedef {Node | string | number | null | undefined | false} Below */
/** An element: attributes and listeners (`onclick: f`) from `has`, texts and elements below it. A text is never read as markup.
 * @template {keyof HTMLElementTagNameMap} K @param {K} tag @param {Record<string, any>} [has]
 * @param {...(Below | Below[])} below @returns {HTMLElementTagNameMap[K]} */
heapcast.h = (tag, has = {}, ...below) => {
  const made = document.createElement(tag);
  if (made instanceof HTMLButtonElement) made.type = "button";
  for (const [name, value] of Object.entries(has ?? {})) {
    if (typeof value === "function") made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value != null && name !== "value") made.setAttribute(name, String(value));
  }
  for (const one of below.flat()) if (one != null && one !== false) made.append(one instanceof Node ? one : heapcast.together(String(one)));
  if (has?.value != null) Object.assign(made, { value: has.value });
  return made;
};

/** The frame around every screen: routes, head of the page, messages. */
heapcast.shell = (() => {
  /** @typedef {{ id: string, job: Job | null, rest: string[], packed: string }} Params */
  /** What a screen is made by; what it gives back is called when the screen is left.
   * @typedef {(element: HTMLElement, params: Params) => void | (() => void) | Promise<void | (() => void)>} Screen */
  /** @typedef {{ words: string, href: string }} Action  a link of the head */

  const { h, store } = heapcast;
  const MESSAGE_MS = 8000;
  /** @type {Map<string, Screen>} */
  const screens = new Map();
  /** @type {void | (() => void)} */
  let leave;
  let turn = 0;
  /** @type {{ name: string, params: Params } | null} */
  let shown = null;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let fades;

  /** A part of the page that is always there. @param {string} id */
  const part = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

  /** What is shown for an address: "job" for #/job/ID, "job/report" for #/job/ID/report where there is one of that name, else "job".
   * @param {string} name @param {Screen} screen */
  const route = (name, screen) => { screens.set(name, screen); };

  /** @param {string} hash @returns {Promise<{ name: string, params: Params }>} */
  async function found(hash) {
    const packed = /^#(\d+\..*)$/s.exec(hash)?.[1] ?? "";
    const path = packed ? ["incoming"] : hash.replace(/^#\/?/, "").split("/").filter(Boolean);
    const [first = "jobs", id = "", sub = ""] = path;
    const job = first === "job" && id ? await store.get(id) : null;
    const name = screens.has(`${first}/${sub}`) ? `${first}/${sub}` : first;
    const known = screens.has(name) && !(first === "job" && (!job || job.newer));
    return { name: known ? name : "nothing", params: { id, job, rest: path.slice(2), packed } };
  }

  /** The title of the screen and what else its head offers; the way back leads to what the screen belongs to.
   * @param {string} words @param {Action[]} [actions] */
  function title(words, actions = []) {
    const [first, id, ...rest] = location.hash.replace(/^#\/?/, "").split("/").filter(Boolean);
    const way = part("back");
    way.hidden = !first;
    way.textContent = first === "job" && rest.length ? "job" : "jobs";
    way.setAttribute("href", first === "job" && rest.length ? `#/job/${id}` : "#/");
    part("title").textContent = words;
    document.title = words === "heapcast" ? words : `${words} \u00b7 heapcast`;
    part("actions").replaceChildren(...actions.map(({ words: says, href }) => h("a", { href }, says)));
  }

  /** Shows the screen of the address anew. @param {{ focus?: boolean }} [how] */
  async function redraw({ focus = false } = {}) {
    const mine = (turn += 1);
    const { name, params } = await found(location.hash);
    if (mine !== turn) return;
    leave?.();
    leave = undefined;
    shown = { name, params };
    const element = h("div", { id: "screen" });
    title(params.job?.title ?? "heapcast");
    part("main").replaceChildren(element);
    if (focus) {
      window.scrollTo(0, 0);
      part("title").focus({ preventScroll: true });
    }
    try {
      const left = await (screens.get(name) ?? nothing)(element, params);
      if (mine === turn) leave = left;
      else left?.();
    } catch (fault) {
      console.error(fault);
      element.append(h("div", { class: "heed" }, h("p", {}, "This screen could not be shown. What you typed is kept."),
        h("p", { class: "note" }, String(fault)), h("button", { onclick: () => redraw() }, "try again")));
    }
  }

  /** @param {HTMLElement} element @param {Params} params */
  function nothing(element, { job }) {
    if (!job) title("Nothing here");
    element.append(h("p", { class: "lead" }, job?.newer
      ? "This job was last changed by a newer heapcast. Open it there: here it could be spoiled."
      : "The job may have been deleted, or is on another device."),
    h("a", { class: "button first", href: "#/" }, "to the jobs"));
  }

  /** @param {string} hash @param {{ instead?: boolean }} [how] `instead` leaves no step to go back to */
  function go(hash, { instead = false } = {}) {
    if (location.hash === hash) return void redraw({ focus: true });
    if (instead) location.replace(hash);
    else location.hash = hash;
  }

  /** Says something, seen and read aloud; what can be undone stays until it is answered or something else is said.
   * @param {string} words @param {{ undo?: () => void }} [can] */
  function say(words, { undo } = {}) {
    clearTimeout(fades);
    const close = () => part("messages").replaceChildren();
    part("messages").replaceChildren(h("div", {}, h("p", {}, words),
      undo && h("button", { onclick: () => { close(); undo(); } }, "undo"),
      h("button", { onclick: close }, "close")));
    if (!undo) fades = setTimeout(close, MESSAGE_MS);
  }

  /** Saves a file to the device, by the browser's own way. @param {string} name @param {BlobPart} content @param {string} [type] */
  function save(name, content, type = "text/plain") {
    const url = URL.createObjectURL(new Blob([content], { type }));
    const link = h("a", { href: url, download: name, hidden: true });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
  }

  /** The units and the clock to ask the engine with. */
  const prefs = () => (({ units, clock }) => ({ units, clock }))(store.settings());

  const TROUBLES = {
    refused: "This browser keeps nothing for this page (a private window does that). Everything works, but the jobs are gone when the page is closed.",
    full: "The device has no room left. Your last changes are in this page alone and are gone when it is closed: save them as a file, or make room and try again.",
  };

  function showTrouble() {
    const now = store.trouble();
    part("trouble").replaceChildren(now ? h("div", { class: "heed" }, h("p", {}, TROUBLES[now]),
      h("div", { class: "row" }, h("button", { onclick: () => heapcast.settings.exportAll() }, "save all jobs as a file"),
        now === "full" && h("button", { onclick: () => store.writeAgain() }, "try again"))) : "");
  }

  /** @param {Change} change */
  function heard({ kind, id, here, copy }) {
    const mine = shown?.params.id === id && id !== "";
    if (kind === "trouble") showTrouble();
    if (kind === "settings") look();
    if (kind === "apart") {
      say("Another tab changed this job too. Both are kept: yours is now a job of its own.");
      if (mine) go(location.hash.replace(id, copy ?? id), { instead: true });
    }
    if (here) return;
    if (mine && kind === "removed") say("This job was deleted in another tab. A change here brings it back.");
    else if (kind !== "settings") void catchUp();
  }

  /** Shows what another tab has changed; also done when the page comes to the front again. A list in use is left. */
  async function catchUp() {
    const was = shown;
    if (was?.name === "jobs" && !document.querySelector("#screen :is(details[open], form, :focus)")) return redraw();
    if (!was?.params.job) return;
    const now = await store.get(was.params.id);
    if (shown !== was || !now || store.mine(now) || now.rev <= was.params.job.rev) return;
    say("This job was changed in another tab; this is how it stands now.");
    await redraw();
  }

  const dark = matchMedia("(prefers-color-scheme: dark)");

  const look = () => { document.documentElement.dataset.look = store.settings().look || (dark.matches ? "dark" : "light"); };

  function start() {
    store.watch(heard);
    showTrouble();
    window.addEventListener("hashchange", () => redraw({ focus: true }));
    document.addEventListener("visibilitychange", () => { if (!document.hidden) void catchUp(); });
    window.addEventListener("beforeunload", (event) => { if (store.unwritten()) event.preventDefault(); });
    part("skip").addEventListener("click", (event) => { event.preventDefault(); part("main").focus(); });
    void redraw();
    heapcast.engine.about().then((about) => { part("version").textContent = `heapcast ${about.version}`; })
      .catch((fault) => say(`This browser cannot work out a job here: ${fault.message}`));
  }
  // What nothing has dealt with is at least said.
  window.addEventListener("error", ({ message }) => say(`Something went wrong: ${message}`));
  window.addEventListener("unhandledrejection", ({ reason }) => { if (reason?.name !== "AbortError") say(String(reason?.message ?? reason)); });
  // On paper nothing is folded.
  const folds = (/** @type {string} */ which, /** @type {boolean} */ open) => document.querySelectorAll(which).forEach((one) => ["open", "data-printed"].forEach((name) => one.toggleAttribute(name, open)));
  window.addEventListener("beforeprint", () => folds("main details:not([open])", true));
  window.addEventListener("afterprint", () => folds("[data-printed]", false));
  look();
  dark.addEventListener("change", look);
  // Scripts may be put into a page that is already there.
  if (document.readyState === "complete") setTimeout(start);
  else window.addEventListener("load", start);

  return { route, title, go, redraw, say, save, prefs, part };
})();
