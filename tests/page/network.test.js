// No request leaves the page, and its own policy sees to that: whatever runs in it cannot ask, load, frame or send either.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, describe, test } from 'node:test';
import { BROWSERS } from './harness/browsers.js';
import { SINGLE } from './harness/built.js';
import { Hand, until } from './harness/hand.js';

const FAR = 'http://far.invalid/';

test('the policy stands first in the page and allows nothing from elsewhere', () => {
  const head = readFileSync(SINGLE.path, 'utf16le').slice(0, 4000);
  const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(head)?.[1] ?? '';
  const rules = Object.fromEntries(policy.split(';').map((rule) => rule.trim().split(/ (.*)/s)).map(([name, sources]) => [name, sources ?? '']));
  assert.equal(rules['default-src'], "'none'");
  assert.doesNotMatch(rules['script-src'], /'unsafe-inline'|'unsafe-eval'|\*|https?:|data:|blob:/);
  assert.doesNotMatch(policy, /https?:|\*/);
  for (const name of ['base-uri', 'form-action']) assert.equal(rules[name], "'none'");
  assert.ok(head.indexOf('Content-Security-Policy') < head.search(/<script|<style|<link/), 'something comes before the policy');
});

for (const { name, start } of BROWSERS) {
  describe(`in ${name}, with a network that would remember`, () => {
    let browser;
    let hand;
    before(async () => {
      browser = await start({ own: [SINGLE.url], offline: false });
      hand = new Hand(await browser.tab(SINGLE.url));
      await hand.sees('new job');
    });
    after(() => browser?.stop());

    const WAYS = {
      'a request': ['connect-src', (far) => fetch(far).catch(() => {})],
      'a picture': ['img-src', (far) => { new Image().src = far; }],
      'a script from elsewhere': ['script-src-elem', (far) => document.head.append(Object.assign(document.createElement('script'), { src: far }))],
      'a script written into it': ['script-src-elem', () => document.head.append(Object.assign(document.createElement('script'), { textContent: 'window.hit = 1' }))],
      'a style sheet': ['style-src-elem', (far) => document.head.append(Object.assign(document.createElement('link'), { rel: 'stylesheet', href: far }))],
      'a frame': ['frame-src', (far) => document.body.append(Object.assign(document.createElement('iframe'), { src: far }))],
      'a form': ['form-action', (far) => {
        const form = Object.assign(document.createElement('form'), { action: far, method: 'post' });
        document.body.append(form);
        // Firefox says so with an error too.
        try { form.submit(); } catch { /* what is told of is looked at below */ }
      }],
      'a handler in markup': ['script-src-attr', () => {
        const place = document.createElement('div');
        document.body.append(place);
        place.innerHTML = '<button onclick="window.hit = 2">x</button>';
        place.firstChild.click();
      }],
    };
    for (const [what, [rule, act]] of Object.entries(WAYS)) {
      test(`${what} is blocked`, async () => {
        await hand.tab.run(() => {
          window.blocked = [];
          document.addEventListener('securitypolicyviolation', ({ effectiveDirective, violatedDirective }) => window.blocked.push(effectiveDirective || violatedDirective));
        });
        await hand.tab.run(act, FAR);
        await until(() => hand.tab.run(() => window.blocked.length), `${what} is not blocked`);
        const seen = await hand.tab.run(() => window.blocked);
        assert.ok(seen.some((one) => rule.startsWith(one) || one.startsWith(rule.replace(/-(elem|attr)$/, ''))), `${rule} not among ${seen}`);
      });
    }
    test('nothing was asked for and nothing ran', async () => {
      assert.deepEqual(browser.asked, []);
      assert.equal(await hand.tab.run(() => window.hit ?? 'nothing'), 'nothing');
    });
  });
}
