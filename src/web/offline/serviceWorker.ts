/** Keeps everything the page is built of, so that it opens without a network. The two lists are written before this when it is built. */
declare const FILES: readonly string[];
declare const VERSION: string;

export interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const kept = `setworthy-${VERSION}`;
const worker = globalThis as unknown as EventTarget & { skipWaiting(): Promise<void>; readonly clients: { claim(): Promise<void> }; readonly registration: { readonly scope: string } };

worker.addEventListener('install', (event) => {
  (event as Waiting).waitUntil(caches.open(kept).then((cache) => cache.addAll([...FILES])).then(() => worker.skipWaiting()));
});

worker.addEventListener('activate', (event) => {
  const dropOld = caches.keys().then((names) => Promise.all(names.filter((name) => name.startsWith('setworthy-') && name !== kept).map((name) => caches.delete(name))));
  (event as Waiting).waitUntil(dropOld.then(() => worker.clients.claim()));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event as Fetching;
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  (event as Fetching).respondWith(answer(request));
});

/** What is kept comes first: its names change whenever its content does. The page itself is asked for anew where that is possible. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(kept);
  if (request.mode === 'navigate') {
    try {
      return await fetch(request);
    } catch {
      return (await cache.match('./')) ?? Response.error();
    }
  }
  return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
}

