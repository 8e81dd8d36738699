// @ts-check
"use strict";

/** Keeps the page on the device: all files of one version, each checked, so that no two versions are ever mixed. The next version
 * is fetched beside it and takes its place once no page of this one is open. */

async function digest(/** @type {ArrayBuffer} */ bytes) {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return "sha256-" + btoa(String.fromCharCode(...sum));
}

async function keep() {
  const cache = await caches.open(BUILD.name);
  await Promise.all(BUILD.files.map(async ([name, wanted]) => {
    const answer = await fetch(name, { cache: "no-cache" });
    const bytes = await answer.arrayBuffer();
    if (!answer.ok || (await digest(bytes)) !== wanted) throw new Error(`${name} is of another version`);
    const type = answer.headers.get("content-type");
    await cache.put(name, new Response(bytes, { headers: type ? { "content-type": type } : {} }));
  }));
}

async function forget() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("heapcast ") && name !== BUILD.name).map((name) => caches.delete(name)));
}

async function answer(/** @type {Request} */ request) {
  const home = new URL("./", location.href).href;
  const cache = await caches.open(BUILD.name);
  const address = new URL(request.url);
  const asked = address.origin + address.pathname === home ? "index.html" : request;
  return (await cache.match(asked, { ignoreSearch: true })) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(keep()));
self.addEventListener("activate", (event) => event.waitUntil(forget().then(() => clients.claim())));
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET") event.respondWith(answer(event.request));
});
