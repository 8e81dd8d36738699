// @ts-check
// The page that is one file: its style is there before anything is shown, its script runs when the rest has been read.
{
  const text = document.getElementById("inside")?.textContent ?? "";
  const [style, script] = new TextDecoder().decode(unlzma(untexted(text))).split("\0");
  const add = (/** @type {string} */ tag, /** @type {string} */ inside) => document.head.append(Object.assign(document.createElement(tag), { textContent: inside }));
  add("style", style);
  addEventListener("DOMContentLoaded", () => add("script", script));
}
