import { signedSheets } from './phone-store.js';

/** Names every store of pages of ours; the worker's own carries a number behind it. */
export const PAGES = 'axlebook-sheets-';

/** Asks a browser that can to send what waits as soon as there is a signal, even with every page closed. */
export const SEND_TAG = 'axlebook-send';

interface WithSync extends ServiceWorkerRegistration {
  readonly sync?: { register(tag: string): Promise<void> };
}

/** Has pages kept on this phone. False where the browser cannot: then a sheet must stay open until it is sent. */
export async function keepPages(paths: readonly string[]): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false;
  try {
    const registration = await navigator.serviceWorker.register('/sw.js', { scope: '/sheets' });
    const worker = registration.active ?? (await activated(registration));
    return await new Promise<boolean>((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = ({ data }) => resolve(data === true);
      worker.postMessage({ kind: 'keep', paths }, [port2]);
    });
  } catch {
    return false;
  }
}

function activated({ installing, waiting }: ServiceWorkerRegistration): Promise<ServiceWorker> {
  const worker = installing ?? waiting;
  if (worker === null) return Promise.reject(new Error('no worker'));
  return new Promise((resolve, reject) => {
    worker.addEventListener('statechange', () => {
      if (worker.state === 'activated') resolve(worker);
      else if (worker.state === 'redundant') reject(new Error('the worker did not start'));
    });
  });
}

/** Has the worker send when there is a signal, where the browser can. */
export async function sendWhenThereIsSignal(): Promise<void> {
  const registration = (await navigator.serviceWorker?.getRegistration('/sheets')) as WithSync | undefined;
  await registration?.sync?.register(SEND_TAG).catch(() => undefined);
}

/** Takes every kept page off this phone. Signed sheets stay: they are nowhere else yet. */
export async function wipePages(): Promise<void> {
  if (!('caches' in globalThis)) return;
  const ours = (await caches.keys()).filter((name) => name.startsWith(PAGES));
  await Promise.all(ours.map((name) => caches.delete(name)));
}

/** The kept sheets by their titles. */
export async function keptPages(): Promise<readonly { readonly path: string; readonly title: string }[]> {
  if (!('caches' in globalThis)) return [];
  const pages: { path: string; title: string }[] = [];
  for (const name of (await caches.keys()).filter((one) => one.startsWith(PAGES))) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const { pathname: path } = new URL(request.url);
      if (!/^\/sheets\/[^/]+\/[^/]+$/.test(path)) continue;
      const title = /<title>([^<]*)/.exec((await (await cache.match(request))?.text()) ?? '')?.[1] ?? path;
      pages.push({ path, title: decoded(title.replace(/ · Axlebook$/, '')) });
    }
  }
  return pages.sort((a, b) => (a.title < b.title ? -1 : 1));
}

function decoded(html: string): string {
  return new DOMParser().parseFromString(html, 'text/html').documentElement.textContent ?? html;
}

/** Signing out takes the kept pages along, and says so when something still waits here. */
export function wipeOnSignOut(person: string): void {
  const form = document.querySelector<HTMLFormElement>('form[action="/sign-out"]');
  form?.addEventListener('submit', (event) => {
    event.preventDefault();
    void leave(form, person);
  });
}

async function leave(form: HTMLFormElement, person: string): Promise<void> {
  const waiting = (await signedSheets()).filter((sheet) => sheet.person === person && sheet.answer === null).length;
  const stays = waiting === 1 ? 'A signed sheet waits' : `${waiting} signed sheets wait`;
  const sure =
    waiting === 0 ||
    confirm(`${stays} on this phone to be sent. They stay here until you sign in on it again. Sign out all the same?`);
  if (!sure) return;
  await wipePages();
  form.submit();
}
