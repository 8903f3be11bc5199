/**
 * Keeps one build of the app, whole, and answers from it: so it opens without a network, and never with files of two builds.
 *
 * Every file is checked against its hash as it comes in. A host that is just being filled with a newer build fails that check, and the browser
 * tries again later. A newer build waits until the one in use is left: when its last window closes, or is loaded again.
 */

/** Put in when the app is built: address of each file, relative to this one, and its hash as the browser checks it. */
declare const EARSHOT_BUILD: { readonly id: string; readonly files: Readonly<Record<string, string>> };

// the compiler knows workers in general; this one is a service worker
const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const { id, files } = EARSHOT_BUILD;
const PREFIX = 'earshot ';
/** Another copy of the app may lie on another path of the same host. */
const own = `${PREFIX}${worker.registration.scope} `;
const cacheName = own + id;
const page = new URL('./', worker.location.href).href;

const fetchWhole = (path: string, integrity: string): Request =>
  // names without a hash may be stale in the browser's own cache
  new Request(new URL(path, worker.location.href), { integrity, cache: path.startsWith('assets/') ? 'default' : 'no-cache' });

async function keep(): Promise<void> {
  const cache = await caches.open(cacheName);
  await cache.addAll(Object.entries(files).map(([path, integrity]) => fetchWhole(path, integrity)));
}

async function dropOlder(): Promise<void> {
  for (const other of await caches.keys()) if (other.startsWith(own) && other !== cacheName) await caches.delete(other);
  // the page that brought this worker in is answered from now on, not only from its next load
  await worker.clients.claim();
}

/** Once in the life of this worker, so that a newer build that cannot take over does not keep the app from opening. */
let asked = false;

/** The page; or, where a newer build waits and this window is the only one, a page that lets it take over. */
async function answerPage(): Promise<Response> {
  if (asked || !worker.registration.waiting || (await worker.clients.matchAll({ type: 'window' })).length > 1) return answer(page);
  asked = true;
  // An icon of no bytes, or browsers would ask this worker for one while the newer takes over; one that has something to do is not replaced (in
  // Chromium not even a little later, as was seen).
  const body = '<!doctype html><title>Earshot</title><link rel="icon" href="data:,"><script type="module" src="./take-over.js"></script>';
  return new Response(body, { headers: { 'content-type': 'text/html' } });
}

const answer = async (request: Request | string): Promise<Response> =>
  (await (await caches.open(cacheName)).match(request, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);

worker.addEventListener('install', (e) => e.waitUntil(keep()));
worker.addEventListener('activate', (e) => e.waitUntil(dropOlder()));
worker.addEventListener('message', (e) => {
  if (e.data === 'take over') e.waitUntil(worker.skipWaiting());
});
worker.addEventListener('fetch', (e) => {
  const { method, mode, url } = e.request;
  const { origin, pathname } = new URL(url);
  if (method !== 'GET' || origin !== worker.location.origin) return;
  const forPage = mode === 'navigate' && [page, `${page}index.html`].includes(origin + pathname);
  e.respondWith(forPage ? answerPage() : answer(e.request));
});
