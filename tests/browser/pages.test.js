// Every page of every shipped scenario, and of scenarios nobody ships, in a real browser: on phones, on wider screens and
// on paper, light and dark. Pictures are kept in target/browser.
//
// HEAPCAST names the program to make the pages with, CHROMIUM the browser.

import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import * as look from './look.js';
import { KEPT, make } from './make.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WIDTHS = [360, 390, 768, 1280];
/** A4 between the margins of the pages, in px. */
const PAPER = 680;
/** A phone held upright. */
const SCREEN = { width: 390, height: 844 };
const MOST_SCREENS = 4;
const FLAGS = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

const profile = mkdtempSync(join(tmpdir(), 'heapcast-browser-'));
const made = make();
let browser;

before(async () => {
  const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
  browser = await chromium.launchPersistentContext(profile, { executablePath, args: FLAGS, viewport: SCREEN });
  await browser.setOffline(true);
});

after(async () => {
  await browser?.close();
  rmSync(profile, { recursive: true, force: true });
});

/** Opens a page; whatever it asks for besides itself, and whatever it complains of, goes into `faults`. */
async function open({ path }, faults) {
  const page = await browser.newPage();
  const url = pathToFileURL(path).href;
  page.on('console', (message) => faults.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => faults.push(`error: ${error}`));
  await page.route('**/*', (route) => {
    const asked = route.request().url().split('#')[0];
    if (asked === url) return route.continue();
    faults.push(`asks for ${asked}`);
    return route.abort();
  });
  await page.goto(url);
  return page;
}

const unfold = (page, isOpen) =>
  page.evaluate((to) => document.querySelectorAll('details').forEach((part) => { part.open = to; }), isOpen);

/** Everything that is wrong with a page as it stands now. */
async function wrong(page, where, faults) {
  for (const of of ['tooWide', 'strayCells', 'cutText', 'overlaps', 'smuggled', 'tooSmall']) {
    const found = await page.evaluate(look[of]);
    faults.push(...found.slice(0, 5).map((fault) => `${where}, ${of}: ${fault}`));
  }
}

/**
 * Nothing axe-core complains of, with every part open. It comes last, as the drawings are taken out of the charts for it: a
 * chart is one picture with a name to it, and its colours are held by tests of their own.
 */
async function accessible(page, faults) {
  await page.setViewportSize(SCREEN);
  await unfold(page, true);
  await page.evaluate(() => document.querySelectorAll('svg').forEach((chart) => chart.replaceChildren()));
  await page.evaluate(AXE);
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ media: 'screen', colorScheme });
    const { violations } = await page.evaluate(() => window.axe.run({ rules: { 'target-size': { enabled: true } } }));
    for (const { id, help, nodes } of violations) {
      const where = nodes.slice(0, 3).map((node) => node.html.slice(0, 120)).join(' | ');
      faults.push(`${colorScheme}, axe ${id}: ${help}: ${where}`);
    }
  }
}

/** The layout does not depend on colours: in the dark what colours decide is looked at, and a picture is kept. */
async function onScreens(page, name, faults) {
  for (const width of WIDTHS) {
    await page.setViewportSize({ ...SCREEN, width });
    for (const isOpen of [false, true]) {
      await unfold(page, isOpen);
      await wrong(page, `${width} px${isOpen ? ', opened' : ''}`, faults);
      if (width === 390 || (width === 1280 && !isOpen)) await picture(page, `${name}-${width}${isOpen ? '-opened' : ''}`);
    }
  }
  await page.setViewportSize(SCREEN);
  await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
  await picture(page, `${name}-390-dark-opened`);
}

const picture = (page, name) => page.screenshot({ path: join(KEPT, `${name}.png`), fullPage: true });

async function onPaper(page, name, faults) {
  await unfold(page, false);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.setViewportSize({ width: PAPER, height: 970 });
  await wrong(page, 'paper', faults);
  const closed = await page.evaluate(look.closedParts);
  faults.push(...closed.map((part) => `closed on paper: ${part}`));
  const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  if (ground !== 'rgb(255, 255, 255)') faults.push(`paper is ${ground}`);
  const pdf = await page.pdf({ path: join(KEPT, `${name}.pdf`), preferCSSPageSize: true, format: 'A4' });
  if (pdf.length < 10_000) faults.push(`the PDF has ${pdf.length} bytes`);
}

/** The answer first, in few screens, and every entry of the contents leads to its part and opens it. */
async function onePhone(page, faults) {
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  await page.setViewportSize(SCREEN);
  await unfold(page, false);
  const { height, answer } = await page.evaluate(() => ({
    height: document.documentElement.scrollHeight,
    answer: document.querySelector('.answer, .client #price')?.getBoundingClientRect().top,
  }));
  if (height >= MOST_SCREENS * SCREEN.height) faults.push(`${(height / SCREEN.height).toFixed(2)} phone screens before anything is opened`);
  if (!(answer < SCREEN.height) && !(await page.$('.client'))) faults.push(`the answer begins ${answer} px down`);
  for (const entry of await page.$$('nav a')) {
    const target = (await entry.getAttribute('href')).slice(1);
    await entry.evaluate((link) => link.click());
    const top = await page.evaluate((id) => {
      const part = document.getElementById(id);
      return part.checkVisibility() ? part.getBoundingClientRect().top : NaN;
    }, target);
    if (!(top > -1 && top < SCREEN.height)) faults.push(`the contents do not lead to ${target}: ${top}`);
  }
}

test('every shipped scenario has a forecast, and there are pages of every kind', () => {
  const count = (part) => made.all.filter(({ name }) => name.includes(part)).length;
  assert.ok(made.shipped > 0 && count('-forecast') >= made.shipped);
  for (const kind of ['compare', 'quote', 'client', 'sweep', 'grid', 'buckets', 'buckets-worth']) assert.ok(count(`-${kind}`) > 0, kind);
});

describe('in the browser', { concurrency: 2 }, () => {
  for (const one of made.all) {
    test(one.name, async () => {
      const faults = [];
      const page = await open(one, faults);
      await onePhone(page, faults);
      await onScreens(page, one.name, faults);
      await onPaper(page, one.name, faults);
      await accessible(page, faults);
      await page.close();
      assert.equal(faults.length, 0, `\n${faults.slice(0, 20).join('\n')}`);
    });
  }
});
