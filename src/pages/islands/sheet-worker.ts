import { PERSON_HEADER } from '../sheets/sheet-answer.js';
import { PAGES, SEND_TAG } from './browser/keep-pages.js';
import { sendWaiting } from './browser/send-sheets.js';

/** The parts of a service worker's world that are used here; the compiler knows only that of pages. */
interface WorkEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface AskEvent extends WorkEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface WorkerScope {
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: 'install' | 'activate', run: (event: WorkEvent) => void): void;
  addEventListener(type: 'fetch', run: (event: AskEvent) => void): void;
  addEventListener(type: 'sync', run: (event: WorkEvent & { readonly tag: string }) => void): void;
  addEventListener(type: 'message', run: (event: WorkEvent & MessageEvent) => void): void;
}

const worker = self as unknown as WorkerScope;

/** Counted up when what is kept changes its shape. */
const STORE = `${PAGES}1`;

/** Where it is noted whose the kept pages are. */
const WHOSE = '/sheets/.whose';

/** After so long a kept page is better than a bar of signal that brings nothing. */
const PATIENCE_MS = 4_000;

/** A page kept so lately is not fetched again only to be kept. */
const FRESH_MS = 10 * 60_000;

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));

worker.addEventListener('activate', (event) => {
  const old = async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith(PAGES) && name !== STORE);
    await Promise.all(names.map((name) => caches.delete(name)));
    await worker.clients.claim();
  };
  event.waitUntil(old());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (request.mode === 'navigate') event.respondWith(page(event));
  else if (pathname.startsWith('/assets/') || pathname === '/favicon.svg') event.respondWith(asset(pathname));
});

worker.addEventListener('sync', (event) => {
  if (event.tag === SEND_TAG) event.waitUntil(sendWaiting(null));
});

worker.addEventListener('message', (event) => {
  const { kind, paths } = event.data as { kind: string; paths: readonly string[] };
  if (kind === 'keep') event.waitUntil(keepEach(paths).then((kept) => event.ports[0]?.postMessage(kept)));
});

/** From the service while it answers soon; otherwise as it was kept. */
async function page(event: AskEvent): Promise<Response> {
  const fresh = fetch(event.request).then(async (answer) => {
    if (answer.status >= 500) throw new Error(`the service answered ${answer.status}`);
    await keep(new URL(event.request.url).pathname, answer);
    return answer;
  });
  event.waitUntil(fresh.catch(() => undefined));
  const kept = await (await caches.open(STORE)).match(new URL(event.request.url).pathname);
  if (kept === undefined) return fresh.catch(notHere);
  const late = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE_MS, null));
  return (await Promise.race([fresh.catch(() => null), late])) ?? kept;
}

/** What is shown of a page that is not here: the list of those that are. */
async function notHere(): Promise<Response> {
  const list = await (await caches.open(STORE)).match('/sheets');
  const text = 'There is no signal, and this page is not kept on this phone. Go back, or try again later.';
  return list ?? new Response(text, { status: 503, headers: { 'content-type': 'text/plain; charset=utf-8' } });
}

/** Named by their content, so what is kept is what would come. */
async function asset(path: string): Promise<Response> {
  const cache = await caches.open(STORE);
  const kept = await cache.match(path);
  if (kept !== undefined) return kept;
  const answer = await fetch(path);
  if (answer.ok) await cache.put(path, answer.clone());
  return answer;
}

/** Whether each is on the phone now. */
async function keepEach(paths: readonly string[]): Promise<boolean> {
  let all = true;
  for (const path of paths) {
    const kept = await (await caches.open(STORE)).match(path);
    if (kept !== undefined && Date.now() - Date.parse(kept.headers.get('date') ?? '') < FRESH_MS) continue;
    try {
      const answer = await fetch(path, { redirect: 'manual' });
      if (!(await keep(path, answer))) all = false;
    } catch {
      all &&= kept !== undefined;
    }
  }
  return all;
}

/** Keeps a page of the person who is signed in, with what it is drawn with. One that sends to sign-in empties the store. */
async function keep(path: string, answer: Response): Promise<boolean> {
  if (answer.type === 'opaqueredirect') {
    await caches.delete(STORE);
    return false;
  }
  const person = answer.headers.get(PERSON_HEADER);
  if (answer.status !== 200 || person === null) return false;
  let cache = await caches.open(STORE);
  const whose = await (await cache.match(WHOSE))?.text();
  if (whose !== undefined && whose !== person) {
    await caches.delete(STORE);
    cache = await caches.open(STORE);
  }
  const text = await answer.clone().text();
  await cache.put(WHOSE, new Response(person));
  await cache.put(path, answer.clone());
  const assets = new Set([...text.matchAll(/\/assets\/[\w.-]+/g)].map(([file]) => file));
  await Promise.all([...assets, '/favicon.svg'].map((file) => asset(file)));
  return true;
}
