import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join, normalize } from 'node:path';
import { builtFile } from '../builtFile';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.wasm': 'application/wasm',
  '.png': 'image/png',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

function answerWith({ status = 200, type, body, etag }: OtherFile, { headers }: IncomingMessage, response: ServerResponse): void {
  const own = { 'content-type': type ?? TYPES['.xlsx']!, ...(etag !== undefined && { etag }) };
  // RFC 9110, section 13.1.2: who has the file already is told so.
  if (etag !== undefined && headers['if-none-match'] === etag) response.writeHead(304, own).end();
  else response.writeHead(status, own).end(body);
}

/** A file beside those of dist/, or what a host answers in its place. */
export interface OtherFile {
  readonly status?: number;
  readonly type?: string;
  readonly body: string | Uint8Array;
  readonly etag?: string;
}

/**
 * Serves dist/ on a free port of this computer, as any static host would.
 * @param others what the host has beside it, by path; looked up at each request
 */
export async function serveDist(
  others: ReadonlyMap<string, OtherFile> = new Map(),
): Promise<{ url: string; close(): Promise<void> }> {
  const dist = dirname(builtFile('preview.html'));
  const server = createServer((request, response) => {
    const other = others.get(new URL(request.url!, 'http://localhost').pathname);
    if (other) return answerWith(other, request, response);
    const path = join(dist, normalize(decodeURIComponent(new URL(request.url!, 'http://localhost').pathname)));
    if (!path.startsWith(dist) || !existsSync(path) || !statSync(path).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'application/octet-stream' });
    createReadStream(path).pipe(response);
  });
  await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}/`, close: () => new Promise(resolve => server.close(() => resolve())) };
}
