// Every screen of the page and every state it can be seen in, each with the way there.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SHIPPED, SINGLE } from './built.js';
import { until } from './hand.js';

/** Keeps a scenario as a job; gives its id. */
export const keep = (hand, name, text, files = []) => hand.tab.run(async (of, words, named) => {
  const read = await heapcast.engine.read({ name: of, text: words, files: named }, heapcast.shell.prefs());
  const job = heapcast.store.fresh({ name: of, text: words, files: named, title: read.title });
  await heapcast.store.put(job);
  return job.id;
}, name, text, files);

/** Keeps a shipped scenario. */
export const keepShipped = (hand, name) => keep(hand, `${name}.toml`, readFileSync(join(SHIPPED, `${name}.toml`), 'utf8'));

export async function goTo(hand, hash) {
  await hand.tab.run((to) => {
    document.querySelector('#screen')?.setAttribute('data-left', '');
    if (location.hash === to) heapcast.shell.redraw();
    else location.hash = to;
  }, hash);
  await until(() => hand.tab.run(() => document.querySelector('#screen:not([data-left])')?.childElementCount), `nothing at ${hash}`);
  await hand.rests();
}

const answer = (hand) => hand.tap('^answer$');
const answered = (hand) => until(() => hand.tab.run(() => {
  const place = document.querySelector('section[aria-label="The answer"]');
  return place?.childElementCount && !place.querySelector('progress');
}), 'no answer');

/** A value that fits nothing, typed into an open sheet. */
async function spoil(hand) {
  await hand.write('', 'a few', { kinds: '#typed' });
  await until(() => hand.tab.run(() => document.querySelector('#wrong')?.textContent), 'a wrong value is taken');
}

/** All states of a page that holds the job `id`: name and the way there. */
export function states(hand, id, questions) {
  const at = (path) => () => goTo(hand, `#/job/${id}${path}`);
  const open = (key) => async () => { await at('')(); await hand.value(key); await until(() => hand.tab.run(() => document.querySelector('dialog[open] #typed')), 'no sheet'); };
  return [
    { name: 'jobs', go: () => goTo(hand, '#/') },
    { name: 'jobs-more', go: async () => { await goTo(hand, '#/'); await hand.tab.run(() => document.querySelectorAll('details').forEach((one) => { one.open = true; })); } },
    { name: 'jobs-rename', go: async () => {
      await goTo(hand, '#/');
      await hand.tab.run(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
      await hand.tap('^rename$');
    } },
    { name: 'jobs-deleted', go: async () => {
      await keepShipped(hand, 'orchard-rows');
      await goTo(hand, '#/');
      await hand.tab.run(() => { document.querySelector('li.job details').open = true; });
      await hand.tap('^delete$');
      await hand.sees('deleted');
    } },
    { name: 'examples', go: () => goTo(hand, '#/examples') },
    { name: 'settings', go: () => goTo(hand, '#/settings') },
    { name: 'nothing-there', go: () => goTo(hand, '#/job/nosuchjob') },
    { name: 'link-cut', go: () => goTo(hand, '#1.AAAA') },
    { name: 'link-good', go: async () => {
      const packed = await hand.tab.run(async (of) => heapcast.engine.pack(await heapcast.store.get(of)), id);
      await goTo(hand, `#${packed}`);
    } },
    { name: 'job', go: at('') },
    { name: 'job-cautions', go: async () => { await at('')(); await hand.tab.run(() => document.querySelectorAll('details').forEach((one) => { one.open = true; })); } },
    { name: 'sheet-people', go: async () => { await open('rakers')(); await hand.tap('^more: '); await hand.sees('plan on'); } },
    { name: 'sheet-material', go: open('material.name') },
    { name: 'sheet-volume', go: open('volume') },
    { name: 'sheet-start', go: open('shift.start') },
    { name: 'sheet-wrong', go: async () => { await open('volume')(); await spoil(hand); } },
    { name: 'whatif', go: async () => { await at('/whatif')(); await hand.tap('^more: people'); await hand.sees('tried together'); await hand.rests(); } },
    { name: 'whatif-compared', go: async () => { await at('/whatif')(); await hand.tap('^compare them'); await until(() => hand.tab.run(() => document.querySelector('.ranked')), 'nothing compared'); } },
    { name: 'more', go: at('/more') },
    ...questions.map((question) => ({ name: `ask-${question}`, go: async () => {
      await at(`/ask/${question}`)();
      await answer(hand);
      await answered(hand);
    } })),
    { name: 'report', go: async () => {
      await at('/ask/forecast')();
      await answer(hand);
      await hand.tap('^report$');
      await until(() => hand.tab.run(() => document.querySelector('iframe.paper')?.contentDocument?.querySelector('main, .answer')), 'no report');
    } },
    { name: 'client', go: async () => { await at('/client')(); await hand.sees('\\d:\\d\\d'); } },
    { name: 'crew', go: at('/crew') },
    { name: 'share', go: at('/share') },
    { name: 'save', go: at('/save') },
    { name: 'text', go: at('/text') },
    { name: 'text-wrong', go: async () => {
      const bad = await hand.tab.run(async () => {
        const job = heapcast.store.fresh({ name: 'bad.toml', text: 'title = "Spoiled"\n[[zone]]\nvolume = "many"\nspeed = 3\n' });
        await heapcast.store.put(job);
        return job.id;
      });
      await goTo(hand, `#/job/${bad}`);
      await hand.sees('line 3');
    } },
  ];
}

/** Back to a page with nothing open on top. */
export async function afresh(hand) {
  await hand.tab.go('about:blank');
  await hand.tab.go(SINGLE.url);
  await hand.tab.run(() => { for (const key of Object.keys(localStorage)) if (key.includes('.draft.')) localStorage.removeItem(key); });
}
