// The folder on a host: loaded once, it works without the host; a new version takes the place of the old one as a whole.

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { FOLDER } from './harness/built.js';
import { Hand, until } from './harness/hand.js';
import { serve } from './harness/server.js';

const digest = (bytes) => `sha256-${createHash('sha256').update(bytes).digest('base64')}`;

/** The files that differ in a next version, which says `words` in place of "new job" and names its parts by their new digests. */
function nextVersion(words) {
  const old = (name) => readFileSync(join(FOLDER, name), 'utf8');
  const swap = (text, was, now) => {
    assert.ok(text.includes(was), 'a part is not named by its digest');
    return text.replaceAll(was, now);
  };
  const script = swap(old('heapcast.js'), '"new job"', `"${words}"`);
  const html = swap(old('index.html'), digest(old('heapcast.js')), digest(script));
  const keeper = swap(swap(old('sw.js'), digest(old('heapcast.js')), digest(script)), digest(old('index.html')), digest(html))
    .replace(/name: "heapcast [^"]*"/, `name: "heapcast ${words}"`);
  return { 'heapcast.js': Buffer.from(script), 'index.html': Buffer.from(html), 'sw.js': Buffer.from(keeper) };
}

for (const { name, start } of BROWSERS) {
  describe(`the folder, in ${name}`, () => {
    let host;
    let browser;
    let hand;
    before(async () => {
      host = await serve(FOLDER);
      browser = await start({ own: [host.url, 'about:'], offline: false, served: true });
      hand = new Hand(await browser.tab(host.url));
      await hand.sees('new job');
    });
    after(async () => {
      await browser?.stop();
      await host?.stop();
    });

    const keeper = (of = 'active') => hand.tab.run(async (which) => (await navigator.serviceWorker.getRegistration())?.[which]?.state ?? '', of);
    const open = async () => {
      await hand.tab.go('about:blank');
      await hand.tab.go(host.url);
    };

    test('it works, and keeps itself for later', async () => {
      await hand.tap('^new job$');
      await hand.answer();
      await until(async () => (await keeper()) === 'activated', 'nothing keeps the page');
      assert.deepEqual([browser.asked, hand.tab.errors], [[], []]);
    });

    test('with the host gone and the network cut, it opens again with the job in it', async () => {
      const hash = await hand.tab.run(() => location.hash);
      await host.stop();
      await browser.offline?.(true);
      await hand.tab.reload();
      await hand.answer();
      assert.equal(await hand.tab.run(() => location.hash), hash);
      await open();
      await hand.sees('new job');
      await browser.offline?.(false);
      host = await serve(FOLDER, { port: Number(new URL(host.url).port) });
    });

    test('of a version half put on the host nothing is taken', async () => {
      const next = nextVersion('next job');
      host.other = new Map([['heapcast.js', next['heapcast.js']], ['sw.js', next['sw.js']]]);
      await hand.tab.run(async () => { await (await navigator.serviceWorker.getRegistration()).update().catch(() => {}); });
      await until(async () => !(await keeper('installing')), 'the half version is being kept for ever');
      assert.equal(await keeper('waiting'), '');
      await open();
      await hand.sees('new job');
      await hand.tap('plan on', { kinds: 'a.over' });
      await hand.answer();
    });

    test('a whole new version takes its place once no page of the old one is open, and the old one is forgotten', async () => {
      host.other = new Map(Object.entries(nextVersion('next job')));
      await hand.tab.run(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
      await until(async () => (await keeper('waiting')) === 'installed', 'the new version is not taken');
      await hand.sees('plan on|new job');
      await until(async () => {
        // Closed, and not only left: Firefox holds a page that was left ready to be gone back to, and its version with it.
        const { tab } = hand;
        hand = new Hand(await browser.tab('about:blank'));
        await tab.close();
        // A browser notices after a while that a page is gone.
        await new Promise((go) => setTimeout(go, 1000));
        await hand.tab.go(host.url);
        return /next job/.test(await hand.sees('next job|new job'));
      }, 'the old version is still shown', 60_000);
      await hand.tap('plan on', { kinds: 'a.over' });
      await hand.answer();
      const names = await until(async () => {
        const all = await hand.tab.run(() => caches.keys());
        return all.length === 1 ? all : null;
      }, 'both versions are kept');
      assert.deepEqual(names, ['heapcast next job']);
    });
  });
}
