// A network nobody gets through: a proxy that refuses everything and remembers what was asked.

import { createServer } from 'node:net';

/** Keeps the first line of every request in `asked`. @returns {Promise<{ port: number, stop: () => void }>} */
export function refuser(asked) {
  return new Promise((resolve) => {
    const server = createServer((socket) => {
      socket.on('error', () => {});
      socket.once('data', (data) => {
        asked.push(data.toString().split('\r\n')[0]);
        socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n');
      });
    }).listen(0, '127.0.0.1', () => resolve({ port: server.address().port, stop: () => server.close() }));
  });
}
