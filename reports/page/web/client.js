// @ts-check
// The message for the client: plain text, sent by the device's own ways.
"use strict";

(() => {
  const { h, shell, store } = heapcast;

  heapcast.screens.client = async ({ element, job, prefs, signal }) => {
    const place = `${job.id}/client`;
    shell.title("Message for the client");
    const price = h("input", { id: "price", type: "text", inputmode: "decimal", autocomplete: "off", placeholder: "without a price", "aria-describedby": "price-help", value: store.draft(place) || "" });
    const text = h("textarea", { id: "message", class: "message", rows: "12" });
    const wrong = h("div", {});
    let subject = "";
    /** The message as it was written, so that one's own words are kept as long as it says the same. */
    let made = "";
    let turn = 0;

    const write = async () => {
      const mine = ++turn;
      element.setAttribute("aria-busy", "true");
      try {
        const message = await heapcast.engine.message({ job: heapcast.job.plain(job), ...prefs, price: price.value.trim() });
        if (mine !== turn || signal.aborted) return;
        ({ subject } = message);
        const own = store.draft(`${place}/text`);
        text.value = own && own.of === message.text ? own.text : message.text;
        made = message.text;
        wrong.replaceChildren();
      } catch (error) {
        if (mine === turn) heapcast.job.failed(wrong, error, signal);
      }
      element.setAttribute("aria-busy", "false");
    };
    const copy = () => heapcast.share.copy(text);
    const share = () => navigator.share({ title: subject, text: text.value }).catch((error) => { if (error.name !== "AbortError") copy(); });
    const mail = () => { location.href = `mailto:?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text.value.replace(/\n/g, "\r\n"))}`; };

    text.addEventListener("input", () => store.draft(`${place}/text`, { of: made, text: text.value }));
    price.addEventListener("change", () => { store.draft(place, price.value.trim() || null); write(); });
    element.replaceChildren(
      h("div", { class: "field" }, h("label", { for: "price" }, "price"), price, h("p", { id: "price-help", class: "note" }, "As you would write it, such as $2,400. Left out, the message names none. What the job costs you is never told.")),
      wrong, h("label", { for: "message" }, "message"), text,
      h("div", { class: "row fill" }, "share" in navigator ? h("button", { class: "first", onclick: share }, "send") : "",
        h("button", { class: "share" in navigator ? null : "first", onclick: copy }, "copy"), h("button", { onclick: mail }, "mail")),
      h("p", { class: "note" }, "A whole page for the client, with what is done, where and when, comes with the quote."),
      h("a", { class: "button plain", href: heapcast.job.link(job, "ask", "quote") }, "quote"));
    await write();
  };
})();
