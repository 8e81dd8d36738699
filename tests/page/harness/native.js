// The program of the terminal, for comparison.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SHIPPED, native } from './built.js';

/** The files of a forecast of a shipped scenario, which is named as in the page: name and bytes. The manifest is of the folder, not of the answer. */
export function forecast(scenario, ...options) {
  const out = mkdtempSync(join(tmpdir(), 'heapcast-native-'));
  try {
    const said = spawnSync(native(), ['forecast', `${scenario}.toml`, ...options, '--out', out, '--quiet'], { cwd: SHIPPED, encoding: 'utf8' });
    if (said.status !== 0) throw new Error(said.stderr);
    const names = readdirSync(out).filter((name) => name !== 'heapcast.manifest.json');
    return new Map(names.sort().map((name) => [name, readFileSync(join(out, name))]));
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}
