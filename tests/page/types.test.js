// The scripts of the page, read by the type checker together, as a page loads them.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { test } from 'node:test';

const HERE = dirname(fileURLToPath(import.meta.url));
const TSC = createRequire(join(HERE, '../browser/package.json')).resolve('typescript/bin/tsc');

test('the types of all scripts hold, and each is checked', () => {
  const { status, stdout } = spawnSync(process.execPath, [TSC, '-p', HERE, '--listFiles'], { encoding: 'utf8' });
  const files = stdout.split('\n').filter((line) => /reports\/page\/web\/.*\.js$/.test(line));
  const said = stdout.split('\n').filter((line) => /error TS/.test(line));
  assert.deepEqual(said, []);
  assert.equal(status, 0);
  assert.ok(files.length > 10, `${files.length} scripts`);
});
