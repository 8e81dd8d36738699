// Makes every page with the program itself, into target/browser/pages.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CASES, bucketList } from './nasty.js';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../..');
const SHIPPED = join(ROOT, 'scenarios/scenarios');
/** Where pictures and pages are kept. */
export const KEPT = join(ROOT, 'target/browser');
/** Runs of each job: the pages look the same with more. */
const RUNS = '200';

function program() {
  const built = ['release', 'debug'].map((kind) => join(ROOT, 'target', kind, 'heapcast'));
  const found = process.env.HEAPCAST ?? built.find((path) => existsSync(path));
  if (!found) throw new Error('no heapcast is built: cargo build, or name one in HEAPCAST');
  return found;
}

/** Pages of one command; none where the job has nothing of the kind (`optional`). */
function pages(of, name, args, optional = false) {
  if (process.env.ONLY && !`${of}-${name}`.includes(process.env.ONLY)) return [];
  const out = join(KEPT, 'pages', `${of}-${name}`);
  const said = spawnSync(program(), [...args, '--runs', RUNS, '--out', out, '--quiet'], { encoding: 'utf8' });
  if (said.status === 2 && optional && !said.stderr.includes('--help')) return [];
  if (said.status !== 0) throw new Error(`heapcast ${args.join(' ')}: ${said.stderr}`);
  return readdirSync(out)
    .filter((file) => file.endsWith('.html'))
    .map((file) => ({ name: `${of}-${name}${file === 'report.html' ? '' : '-client'}`, path: join(out, file), kind: file }));
}

function ofScenario(file) {
  const of = basename(file, '.toml');
  const grid = ['--vary', 'rakers 1..4', '--vary', 'room 1..5'];
  const compared = pages(of, 'compare', ['compare', file], true);
  return [
    ...pages(of, 'forecast', ['forecast', file, '--by', '15:00']),
    ...(compared.length ? compared : pages(of, 'compare', ['compare', file, '--change', 'rakers = 2'], true)),
    ...pages(of, 'quote', ['quote', file], true),
    ...pages(of, 'quote-by-the-hour', ['quote', file, '--rate', '$95/h'], true),
    ...pages(of, 'sweep', ['sweep', file, '--vary', 'rakers 1..4', '--by', '15:00'], true),
    ...(of.includes('riding') || of.includes('hostile') ? pages(of, 'grid', ['sweep', file, ...grid], true) : []),
  ];
}

function ofBuckets(scenario, list) {
  const of = basename(list, '.csv');
  const loader = JSON.parse(/\[\[loader\]\]\nname = (".*")/.exec(readFileSync(scenario, 'utf8'))[1]);
  const args = ['buckets', scenario, list, '--loader', loader];
  const worth = ['--jobs-per-year', '12..20', '--hour-worth', '$60/h'];
  return [
    ...pages(of, 'buckets', args),
    ...pages(of, 'buckets-worth', [...args, ...worth], true),
  ];
}

/** The scenario a shipped list of buckets is for stands in the remarks at its head. */
function shippedLists() {
  const lists = readdirSync(SHIPPED).filter((file) => file.endsWith('.csv'));
  const texts = lists.map((file) => [join(SHIPPED, file), readFileSync(join(SHIPPED, file), 'utf8')]);
  return texts
    .filter(([, text]) => /^name,.*heaped/m.test(text))
    .map(([file, text]) => [join(SHIPPED, /([\w-]+\.toml)/.exec(text)[1]), file]);
}

/** Every page: those of every shipped scenario, and those of the nasty ones. */
export function make() {
  rmSync(KEPT, { recursive: true, force: true });
  const cases = join(KEPT, 'cases');
  mkdirSync(cases, { recursive: true });
  const shipped = readdirSync(SHIPPED).filter((file) => file.endsWith('.toml'));
  const all = shipped.flatMap((file) => ofScenario(join(SHIPPED, file)));
  all.push(...shippedLists().flatMap(([scenario, list]) => ofBuckets(scenario, list)));
  for (const { name, toml, buckets } of CASES) {
    const file = join(cases, `${name}.toml`);
    writeFileSync(file, toml);
    all.push(...ofScenario(file));
    if (!buckets) continue;
    const list = join(cases, `${name}-list.csv`);
    writeFileSync(list, bucketList(buckets));
    all.push(...ofBuckets(file, list));
  }
  return { all, shipped: shipped.length };
}
