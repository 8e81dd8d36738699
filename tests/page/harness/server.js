// A static host for the folder, as plain as one can be, on this machine alone. Keeps what was asked of it.

import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.svg': 'image/svg+xml',
  '.png': 'image/png', '.wasm': 'application/wasm', '.webmanifest': 'application/manifest+json', '.json': 'application/json', '.toml': 'text/plain',
};

/** Serves `folder`, or what `other` holds of a file instead. @returns {Promise<{ url: string, other: Map<string, Buffer>, asked: string[], stop: () => Promise<void> }>} */
export async function serve(folder, { port = 0 } = {}) {
  const host = { other: new Map(), asked: [] };
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, 'http://host').pathname));
    host.asked.push(path);
    const name = path.endsWith('/') ? `${path}index.html` : path;
    try {
      const bytes = host.other.get(name.slice(1)) ?? await readFile(join(folder, name));
      response.writeHead(200, { 'content-type': TYPES[extname(name)] ?? 'application/octet-stream', 'cache-control': 'no-cache' });
      response.end(bytes);
    } catch {
      response.writeHead(404).end('nothing of that name');
    }
  });
  await new Promise((ready) => server.listen(port, '127.0.0.1', ready));
  host.url = `http://127.0.0.1:${server.address().port}/`;
  host.stop = () => new Promise((done) => {
    server.close(done);
    server.closeAllConnections();
  });
  return host;
}
