import {
  cpSync,
  createReadStream,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';

const FOLDER = '/garage/emberlap/';
const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

/** A copy of the built page in a subfolder of a server of its own, which may be renewed and shut. */
export interface Site {
  url: string;
  /** When each file was asked for, milliseconds since 1970. */
  asked: Map<string, number>;
  /** What a build with another title would put there. */
  renew(title: string): void;
  shut(): Promise<void>;
}

export async function openSite(dist: string): Promise<Site> {
  const root = mkdtempSync(join(tmpdir(), 'emberlap-'));
  cpSync(dist, root, { recursive: true });
  const asked = new Map<string, number>();
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const name = pathname.startsWith(FOLDER) ? pathname.slice(FOLDER.length) || 'index.html' : '';
    const file = join(root, name);
    asked.set(name, Date.now());
    if (!name || !existsSync(file) || !statSync(file).isFile()) return void response.writeHead(404).end();
    response.writeHead(200, { 'Content-Type': TYPES[extname(file)] ?? '', 'Cache-Control': 'no-cache' });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://localhost:${port}${FOLDER}`,
    asked,
    renew(title) {
      change(join(root, 'index.html'), /<title>.*<\/title>/, `<title>${title}</title>`);
      const revised = '$1`0123456789abcdef`';
      change(join(root, 'service-worker.js'), /(url:`index\.html`,revision:)`[0-9a-f]{16}`/, revised);
    },
    async shut() {
      await closed(server);
      rmSync(root, { recursive: true, force: true });
    },
  };
}

function change(file: string, from: RegExp, to: string): void {
  const text = readFileSync(file, 'utf8');
  if (!from.test(text)) throw new Error(`${file}: nothing like ${from.source}`);
  writeFileSync(file, text.replace(from, to));
}

async function closed(server: Server): Promise<void> {
  if (!server.listening) return;
  const done = new Promise((resolve) => server.close(resolve));
  server.closeAllConnections();
  await done;
}
