// @ts-check
"use strict";

/** A job on its way out (file, link, code, paper) and in (file, link, pasted text). Nothing that comes in replaces a job. */
heapcast.share = (() => {
  const { h, store, shell } = heapcast;
  /** Longer links are cut by some programs for messages. */
  const LONG_LINK = 2000;
  const LARGEST_FILE = 8e6;
  /** What a packed job begins with: the version of the packing, which the engine judges. */
  const PACKED = /(?:^|#)(\d+\.[A-Za-z0-9_-]+)\s*$/;

  const texts = (/** @type {Job} */ job) => [{ name: job.name, text: job.text }, ...job.files];

  /** Saves the scenario file and the files it names, each under its own name. @param {Job} job */
  const saveFiles = (job) => texts(job).forEach(({ name, text }) => shell.save(name, text));

  async function sendFiles(/** @type {Job} */ job) {
    const files = texts(job).map(({ name, text }) => new File([text], name, { type: "text/plain" }));
    try {
      await navigator.share({ title: job.title, files });
    } catch (fault) {
      if (/** @type {Error} */ (fault).name === "AbortError") return;
      saveFiles(job);
      shell.say("This device does not send such files from here. It is saved instead: send it from there.");
    }
  }

  /** Copies what stands in a field; where the page may not, it is marked. @param {HTMLTextAreaElement} field */
  async function copy(field) {
    field.select();
    const copied = await navigator.clipboard?.writeText(field.value).then(() => true, () => false) || document.execCommand("copy");
    shell.say(copied ? "Copied." : "Marked: copy it with the device's own menu.");
  }

  /** The text of a job without its notes, which would make a code too fine for a camera; a text of several lines in quotes is left as it is. */
  const bare = (/** @type {string} */ text) => (/"""|'''/.test(text) ? text : text.replace(/^\s*#.*\n/gm, "").replace(/[ \t]+#[^"'\n]*$/gm, ""));

  /** What the engine refuses, as a sentence. @param {any} fault */
  const sentence = ({ message = "this is not a job" }) => `${message[0]?.toUpperCase()}${message.slice(1)}.`;

  /** The code as a picture, or why there is none. @param {string} link @param {string} title */
  async function code(link, title) {
    try {
      const drawn = new DOMParser().parseFromString(await heapcast.engine.qr(link), "image/svg+xml").documentElement;
      if (drawn.nodeName !== "svg") throw new Error("no picture");
      drawn.setAttribute("role", "img");
      drawn.setAttribute("aria-label", `Code of ${title}`);
      return h("div", { class: "code" }, document.adoptNode(drawn));
    } catch (fault) {
      return h("p", {}, sentence(fault));
    }
  }

  /** Prints the job once its answer stands there. @param {Job} job */
  async function print(job) {
    shell.go(`#/job/${job.id}`);
    const rest = () => new Promise((done) => setTimeout(done, 300));
    for (let waits = 60; waits > 0; waits = document.querySelector("main [aria-busy=true]") ? waits - 1 : 0) await rest();
    window.print();
  }

  shell.route("job/share", async (element, { job }) => {
    if (!job) return;
    shell.title(`Share: ${job.title}`);
    /** @type {string | Error} */
    const packed = await heapcast.engine.pack(job).catch((fault) => fault);
    const names = texts(job).map(({ name }) => name).join(", ");
    const canSend = navigator.canShare?.({ files: [new File(["x"], "x.txt", { type: "text/plain" })] });
    element.append(
      h("div", { class: "no-print" },
        h("h2", {}, "As a file"),
        h("p", {}, names, job.files.length ? ": the job and what it names." : ": the whole job. It opens on a phone and in the program."),
        h("div", { class: "row fill" }, canSend && h("button", { class: "first", onclick: () => sendFiles(job) }, "send the file"),
          h("button", { class: canSend ? "" : "first", onclick: () => saveFiles(job) }, "save the file here"))),
      ...(packed instanceof Error ? [h("h2", {}, "As a link"), h("p", {}, sentence(packed))] : await linked(job, packed)),
      h("div", { class: "no-print" },
        h("h2", {}, "On paper"),
        h("div", { class: "row fill" }, h("button", { onclick: () => print(job) }, "print the answer"))));
  });

  /** The link and its code; without an address of its own, the page gives what a link would carry. @param {Job} job @param {string} packed */
  async function linked(job, packed) {
    const [{ title }, fromFile, short] = [job, location.protocol === "file:", bare(job.text)];
    const address = (/** @type {string} */ what) => (fromFile ? what : `${location.href.split("#")[0]}#${what}`);
    const link = address(packed);
    const field = h("textarea", { id: "link", rows: 3, readonly: true, spellcheck: "false", value: link, onfocus: () => field.select() });
    const send = () => navigator.share(fromFile ? { text: link } : { title, url: link }).catch(() => undefined);
    const what = fromFile ? "text" : "link";
    return [
      h("div", { class: "no-print" },
        h("h2", {}, `As a ${what}`),
        h("p", {}, fromFile
          ? "This page was opened from a file, so no link leads to it. The text below is the whole job: paste it below the list of jobs on the other device."
          : "The link holds the whole job. Opening it sends nothing anywhere; what is changed later is not in it."),
        link.length > LONG_LINK && h("p", { class: "heed" }, `It has ${link.length.toLocaleString("en")} characters, and some programs for messages cut what is so long. A file is surer.`),
        h("label", { class: "only-read", for: "link" }, `the job as a ${what}`), field,
        h("div", { class: "row fill" }, "share" in navigator && h("button", { onclick: send }, `send the ${what}`),
          h("button", { onclick: () => copy(field) }, `copy the ${what}`))),
      h("h2", {}, "As a code to scan"),
      h("div", {}, short !== job.text && h("p", { class: "note" }, "It leaves out the notes of the job's text, the lines with #."),
        await code(address(await heapcast.engine.pack({ ...job, text: short })), title)),
    ];
  }

  shell.route("incoming", async (element, { packed }) => {
    shell.title("A job was sent to you");
    const job = await heapcast.engine.unpack(packed).catch((fault) => fault);
    if (!isJob(job)) {
      element.append(h("p", { class: "lead" }, sentence(job)), h("a", { class: "button first", href: "#/" }, "to the jobs"));
      return;
    }
    const read = await heapcast.engine.read(job, shell.prefs());
    const same = (await store.list()).find((one) => one.text === job.text);
    const keep = async () => {
      const kept = store.fresh({ ...job, title: read.title || job.name });
      await store.put(kept);
      shell.go(`#/job/${kept.id}`, { instead: true });
    };
    element.append(h("div", {},
      h("h2", {}, read.title || job.name),
      read.ok ? h("p", { class: "lead" }, read.words)
        : h("div", { class: "heed" }, h("p", {}, "It cannot be worked out as it is:"), read.problems.slice(0, 3).map((/** @type {any} */ one) => h("p", {}, one.words))),
      same && h("p", {}, "The same job is on this device already."),
      h("div", { class: "row fill" }, same && h("a", { class: "button first", href: `#/job/${same.id}` }, "open mine"),
        h("button", { class: same ? "" : "first", onclick: keep }, "keep it"),
        h("button", { onclick: () => shell.go("#/", { instead: true }) }, "not now")),
      h("p", { class: "soft" }, "Keeping it adds a job. None of yours is changed.")));
  });

  const isJob = (/** @type {any} */ job) => [job, ...Array.isArray(job?.files ?? []) ? job?.files ?? [] : [null]].every((one) => typeof one?.name === "string" && typeof one?.text === "string");

  /** A link, what stands after its #, or the text of a scenario file. @param {string} words */
  async function paste(words) {
    const packed = PACKED.exec(words.trim())?.[1];
    if (!packed && !/=/.test(words)) return shell.say("That is neither a link of a job nor the text of one.");
    store.draft("pasted", "");
    if (packed) shell.go(`#${packed}`);
    else await openJobs([{ name: "job.toml", text: words }], []);
  }

  /** What asks the device for files, and opens them. @param {string} label */
  function picker(label) {
    const field = h("input", { type: "file", multiple: true, hidden: true, "aria-label": label, onchange: async () => {
      await open([...field.files ?? []]);
      field.value = "";
    } });
    return field;
  }

  async function open(/** @type {File[]} */ files) {
    /** @type {string[]} */
    const refused = [];
    /** @type {NamedText[]} */
    const read = [];
    for (const file of files) {
      try {
        if (file.size > LARGEST_FILE) throw new Error("too large");
        read.push({ name: file.name, text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer()) });
      } catch (fault) {
        refused.push(`${file.name}: ${/** @type {Error} */ (fault).message === "too large" ? "too large for a scenario" : "no text that can be read"}.`);
      }
    }
    const exported = read.filter((one) => one.name.endsWith(".json"));
    const jobs = read.filter((one) => one.name.endsWith(".toml"));
    const rest = read.filter((one) => !exported.includes(one) && !jobs.includes(one));
    if (!jobs.length && rest.length === 1 && /^\s*[\w"'.]+\s*=|^\s*\[/m.test(rest[0].text)) jobs.push(...rest.splice(0));
    for (const one of exported) refused.push(await heapcast.settings.importAll(one));
    if (jobs.length) await openJobs(jobs, rest);
    else for (const one of rest) refused.push(await attach(one));
    if (refused.length) shell.say(refused.join(" "));
  }

  /** @param {NamedText[]} jobs @param {NamedText[]} rest what they may name */
  async function openJobs(jobs, rest) {
    for (const { name, text } of jobs) {
      const job = store.fresh({ name, text, files: jobs.length === 1 ? rest : rest.filter((one) => text.includes(one.name)) });
      const read = await heapcast.engine.read(job, shell.prefs());
      job.title = read.title || name;
      await store.put(job);
      if (jobs.length === 1) return shell.go(`#/job/${job.id}`);
    }
    await shell.redraw();
    shell.say(`${jobs.length} jobs opened.`);
  }

  /** Gives a list of values to the jobs that name it and do not have it. @param {NamedText} file */
  async function attach(file) {
    const wanting = (await store.list()).filter((job) => job.text.includes(file.name) && !job.files.some((one) => one.name === file.name));
    for (const job of wanting) await store.put(Object.assign(job, { files: [...job.files, file] }));
    if (wanting.length) await shell.redraw();
    return wanting.length ? `${file.name} now belongs to ${wanting.map((job) => job.title).join(", ")}.`
      : `${file.name} is no scenario file, and no job here lacks it. Open it together with the scenario that names it.`;
  }

  // Files can be dropped on any screen.
  for (const kind of /** @type {const} */ (["dragover", "dragleave", "drop"])) {
    window.addEventListener(kind, (event) => {
      event.preventDefault();
      document.body.classList.toggle("drop", kind === "dragover");
      if (kind === "drop" && event.dataTransfer?.files.length) void open([...event.dataTransfer.files]);
    });
  }

  return { picker, open, paste, copy, bare, isJob };
})();
