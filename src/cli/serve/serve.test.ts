import { mkdirSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ServedShoot } from './ServedShoot.ts';
import { type Serving, serve } from './serve.ts';

const text = readFileSync(new URL('../../../examples/tiny.shoot.json', import.meta.url), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'setworthy-'));
const file = join(folder, 'tiny.shoot.json');
const site = join(folder, 'site');
let serving: Serving;

beforeAll(async () => {
  writeFileSync(file, text);
  writeFileSync(join(folder, 'secret.json'), '{}');
  mkdirSync(site);
  writeFileSync(join(site, 'index.html'), '<meta charset="utf-8" /><title>page</title>');
  serving = await serve({ folder: site, shoot: new ServedShoot(file, () => new Date(0)), port: 0 });
});
afterAll(() => serving.close());

interface Answered {
  readonly status: number;
  readonly body: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

/** A request as written, without the tidying of paths and hosts that `fetch` does. */
function ask(path: string, { method = 'GET', headers = {}, body = '' }: { method?: string; headers?: Record<string, string>; body?: string } = {}): Promise<Answered> {
  const { port } = new URL(serving.url);
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers: { host: `127.0.0.1:${port}`, ...headers } }, (response) => {
      let received = '';
      response.on('data', (chunk: Buffer) => (received += chunk.toString()));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body: received, headers: response.headers }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const tokenIn = (page: string) => /setworthy-token" content="([^"]+)"/.exec(page)?.[1] ?? '';

describe('who may ask', () => {
  test('another host name pointed at this machine is turned away', async () => {
    expect((await ask('/', { headers: { host: 'elsewhere.example' } })).status).toBe(403);
  });
  test('a page of another origin is turned away', async () => {
    expect((await ask('/shoot', { headers: { origin: 'https://elsewhere.example' } })).status).toBe(403);
    expect((await ask('/shoot', { headers: { 'sec-fetch-site': 'cross-site' } })).status).toBe(403);
  });
  test.each(['/../secret.json', '/..%2fsecret.json', '/%2e%2e/secret.json', '/assets/../../secret.json', '/..\\secret.json', '/%00', '/%zz'])('%s leads nowhere', async (path) => {
    expect((await ask(path)).status).toBe(404);
  });
  test('the page comes with a strict policy', async () => {
    const { status, headers } = await ask('/');
    expect(status).toBe(200);
    expect(headers['content-security-policy']).toMatch(/default-src 'self'.*frame-ancestors 'none'/);
    expect(headers['content-security-policy']).not.toMatch(/'unsafe-eval|script-src[^;]*unsafe-inline|https?:/);
  });
});

describe('writing', () => {
  const put = async (body: string, change: Record<string, string> = {}) => {
    const token = tokenIn((await ask('/')).body);
    const version = String((await ask('/shoot', { method: 'HEAD' })).headers['etag']);
    return ask('/shoot', { method: 'PUT', body, headers: { 'x-setworthy-token': token, 'if-match': version, ...change } });
  };

  test('needs the token of the page', async () => {
    expect((await put(text, { 'x-setworthy-token': 'guessed' })).status).toBe(403);
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
  test('half a file is refused and nothing is written', async () => {
    const refused = await put(text.slice(0, 900));
    expect(refused).toMatchObject({ status: 422, body: expect.stringContaining('Nothing was written') as string });
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
  test('saves, and keeps the version before beside it', async () => {
    const changed = text.replace('One lens, one block', 'Another title, one block');
    expect((await put(changed)).status).toBe(204);
    expect(readFileSync(file, 'utf8')).toBe(changed);
    const [kept = ''] = readdirSync(join(folder, 'tiny.versions'));
    expect(readFileSync(join(folder, 'tiny.versions', kept), 'utf8')).toBe(text);
  });
  test('a file changed outside is not overwritten', async () => {
    const version = String((await ask('/shoot', { method: 'HEAD' })).headers['etag']);
    const outside = text.replace('One lens', 'Changed outside');
    writeFileSync(file, outside);
    expect((await put(text, { 'if-match': version })).status).toBe(412);
    expect(readFileSync(file, 'utf8')).toBe(outside);
  });
});
