import { randomBytes, timingSafeEqual } from 'node:crypto';
import { type IncomingMessage, type Server, type ServerResponse, createServer } from 'node:http';
import { MOST_CHARACTERS } from '../../shoot/readJson.ts';
import { Refusal } from '../Refusal.ts';
import type { ServedShoot } from './ServedShoot.ts';
import { siteFile } from './site.ts';

export interface Serving {
  readonly url: string;
  readonly close: () => Promise<void>;
}

export interface ServeOptions {
  /** The folder of the built page. */
  readonly folder: string;
  /** The file to edit; without one the page keeps shoots in the browser. */
  readonly shoot: ServedShoot | undefined;
  readonly port: number;
}

const POLICY = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; worker-src 'self' blob:; connect-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** Serves the page and the one file on this machine only. Another site's page can neither read nor write through it. */
export async function serve({ folder, shoot, port }: ServeOptions): Promise<Serving> {
  const token = randomBytes(24).toString('base64url');
  const server = createServer((request, response) => void answer(request, response, { folder, shoot, token }));
  const bound = await listen(server, port);
  return {
    url: `http://127.0.0.1:${bound}/`,
    close: () => new Promise((resolve) => {
      server.closeAllConnections();
      server.close(() => resolve());
    }),
  };
}

/** Takes the port wished for, so that what the browser keeps is found again; any free one where it is taken. */
function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const bound = () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    };
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EADDRINUSE') return reject(error);
      server.once('error', reject).listen(0, '127.0.0.1', bound);
    });
    server.listen(port, '127.0.0.1', bound);
  });
}

interface Within {
  readonly folder: string;
  readonly shoot: ServedShoot | undefined;
  readonly token: string;
}

async function answer(request: IncomingMessage, response: ServerResponse, within: Within): Promise<void> {
  try {
    if (!isOwn(request)) return refuse(response, 403, 'This address does not belong to Setworthy.');
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    if (path === '/shoot') return await answerShoot(request, response, within);
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405, 'Only the shoot can be written.');
    answerSite(response, path, within);
  } catch (thrown) {
    refuse(response, 500, thrown instanceof Refusal ? thrown.message : 'Something went wrong here; nothing was written.');
  }
}

/** Only the page's own address and origin: a name that another site points at this machine is turned away. */
function isOwn({ headers, socket }: IncomingMessage): boolean {
  const hosts = ['127.0.0.1', 'localhost'].map((name) => `${name}:${socket.localPort}`);
  if (!hosts.includes(headers.host ?? '')) return false;
  const { origin } = headers;
  const site = headers['sec-fetch-site'];
  return (origin === undefined || hosts.some((host) => origin === `http://${host}`)) && (site === undefined || site === 'same-origin' || site === 'none');
}

function answerSite(response: ServerResponse, path: string, { folder, shoot, token }: Within): void {
  const file = siteFile(folder, path);
  if (file === undefined) return refuse(response, 404, 'There is nothing here.');
  const isPage = file.type.startsWith('text/html');
  const named = shoot === undefined ? '' : `<meta name="setworthy-file" content="${escaped(shoot.name)}" />`;
  const content = isPage ? file.content.toString('utf8').replace('<meta charset="utf-8" />', `<meta charset="utf-8" /><meta name="setworthy-token" content="${token}" />${named}`) : file.content;
  head(response, 200, { 'content-type': file.type, 'cache-control': file.forever ? 'public, max-age=31536000, immutable' : 'no-store' });
  response.end(content);
}

async function answerShoot(request: IncomingMessage, response: ServerResponse, { shoot, token }: Within): Promise<void> {
  if (shoot === undefined) return refuse(response, 404, 'No file was opened; shoots are kept in the browser.');
  if (request.method === 'GET' || request.method === 'HEAD') {
    const { text, version } = shoot.read();
    head(response, 200, { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store', etag: version });
    return void response.end(request.method === 'HEAD' ? undefined : text);
  }
  if (request.method !== 'PUT') return refuse(response, 405, 'The shoot is read or written whole.');
  if (!sameToken(request.headers['x-setworthy-token'], token)) return refuse(response, 403, 'This page was opened by an earlier start of the program; load it again.');
  const text = await bodyOf(request);
  if (text === undefined) return refuse(response, 413, 'More than 33 MB cannot be a shoot.');
  const saved = shoot.write(text, request.headers['if-match'] ?? '');
  if (!saved.saved) return refuse(response, saved.why === 'changed outside' ? 412 : 422, saved.says);
  head(response, 204, { etag: saved.version });
  response.end();
}

function sameToken(given: string | string[] | undefined, token: string): boolean {
  const offered = Buffer.from(typeof given === 'string' ? given : '');
  const wanted = Buffer.from(token);
  return offered.length === wanted.length && timingSafeEqual(offered, wanted);
}

async function bodyOf(request: IncomingMessage): Promise<string | undefined> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > MOST_CHARACTERS) return undefined;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

function head(response: ServerResponse, status: number, headers: Readonly<Record<string, string>>): void {
  response.writeHead(status, {
    'content-security-policy': POLICY, 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin', 'x-frame-options': 'DENY', ...headers,
  });
}

function refuse(response: ServerResponse, status: number, says: string): void {
  if (response.headersSent) return void response.end();
  head(response, status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' });
  response.end(says);
}

const escaped = (text: string): string => text.replace(/[&"<>]/g, (letter) => `&#${letter.charCodeAt(0)};`);
