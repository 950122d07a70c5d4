import type { SheetAnswer } from '../../sheets/sheet-answer.js';
import { noteAnswer, type PhonePicture, type SignedSheet, signedSheets } from './phone-store.js';

/** How far it got: all gone, no signal, a service in trouble, or somebody must sign in first. */
export type Sent = 'all' | 'no-signal' | 'later' | 'signed-out' | 'other-person';

/** An upload with photos on the poorest signal that still gets anywhere. */
const PATIENCE_MS = 120_000;

const CHANNEL = 'axlebook-sheets';

/** Hears of every change that another page, or the worker, made to what waits. */
export function onSheetsChanged(run: () => void): () => void {
  const channel = new BroadcastChannel(CHANNEL);
  channel.addEventListener('message', run);
  return () => channel.close();
}

function tellChanged(): void {
  const channel = new BroadcastChannel(CHANNEL);
  channel.postMessage('changed');
  channel.close();
}

/**
 * Sends what waits, oldest first; only this person's, or everybody's when null: the service takes a sheet from its
 * signer alone. One page at a time does it. Were two to do it all the same, the send id would still keep each sheet one.
 */
export function sendWaiting(person: string | null): Promise<Sent> {
  const send = () => sendEach(person);
  return 'locks' in navigator ? (navigator.locks.request('axlebook-send', send) as Promise<Sent>) : send();
}

async function sendEach(person: string | null): Promise<Sent> {
  let reached: Sent = 'all';
  for (const sheet of await signedSheets()) {
    if (sheet.answer !== null || (person !== null && sheet.person !== person)) continue;
    const answer = await sendOne(sheet);
    if (typeof answer !== 'string') {
      await noteAnswer(sheet, answer);
      tellChanged();
    } else if (answer === 'other-person') reached = answer;
    else return answer;
  }
  return reached;
}

async function sendOne(sheet: SignedSheet): Promise<NonNullable<SignedSheet['answer']> | Exclude<Sent, 'all'>> {
  let response: Response;
  try {
    response = await fetch(sheet.action, {
      method: 'POST',
      body: formOf(sheet),
      headers: { accept: 'application/json' },
      redirect: 'manual',
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
  } catch {
    return 'no-signal';
  }
  if (response.type === 'opaqueredirect' || response.status === 401) return 'signed-out';
  const answer = await readAnswer(response);
  if (answer === null) return refusedWithout(response.status) ?? 'later';
  if (answer.kind === 'other-person') return 'other-person';
  // A page of the network's own that looks like an answer is none of ours.
  if (answer.kind === 'recorded' && answer.sendId !== sheet.sendId) return 'later';
  return answer;
}

async function readAnswer(response: Response): Promise<SheetAnswer | null> {
  if (!response.headers.get('content-type')?.startsWith('application/json')) return null;
  try {
    const answer: unknown = await response.json();
    return typeof answer === 'object' && answer !== null && 'kind' in answer ? (answer as SheetAnswer) : null;
  } catch {
    return null;
  }
}

const REFUSED: Readonly<Record<number, string>> = {
  403: 'Your role in this yard may not record checks. Ask the owner to change it, then send it again.',
  404: 'This trailer or this check is no longer in the yard. The sheet stays here: copy what it says, or mend it.',
  413: 'The pictures are too large to send. Open the sheet and take some off.',
};

/** A refusal that comes as a page: the status alone says which. Null for one that may pass. */
function refusedWithout(status: number): NonNullable<SignedSheet['answer']> | null {
  const message = REFUSED[status];
  return message === undefined
    ? null
    : { kind: 'refused', recordedBefore: false, problems: [{ field: 'form', message }] };
}

function formOf({ fields, photos, signature }: SignedSheet): FormData {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  for (const photo of photos) form.append('photos', asFile(photo), photo.name);
  if (signature !== null) form.append('signature', asFile(signature), signature.name);
  return form;
}

function asFile({ mediaType, bytes }: PhonePicture): Blob {
  return new Blob([bytes], { type: mediaType });
}
