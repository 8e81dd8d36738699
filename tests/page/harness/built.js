// What is tested: the page as the builder made it, the scenarios it ships with and the native program beside it.

import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../../..');
export const SHIPPED = join(ROOT, 'scenarios/scenarios');

function found(what, paths) {
  const path = paths.find((one) => one && existsSync(one));
  if (!path) throw new Error(`${what} is missing: ${paths.filter(Boolean).join(', ')}`);
  return path;
}

/** Where the builder leaves its work; another place is named in HEAPCAST_PAGE. */
const BUILT = process.env.HEAPCAST_PAGE ?? join(ROOT, 'target/page');
const single = found('the single file', [join(BUILT, 'heapcast.html')]);

export const SINGLE = { path: single, url: pathToFileURL(single).href };
export const FOLDER = found('the folder', [join(BUILT, 'folder')]);
/** The program of the terminal. */
export const native = () => found('heapcast', [process.env.HEAPCAST, ...['release', 'debug'].map((kind) => join(ROOT, 'target', kind, 'heapcast'))]);
