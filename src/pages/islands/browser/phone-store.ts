import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { SheetAnswer } from '../../sheets/sheet-answer.js';

/** A picture as it lies on the phone: bytes, since not every browser keeps blobs. */
export interface PhonePicture {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: ArrayBuffer;
}

interface Filled {
  /** Made on this phone when the sheet was begun: sent under it twice, it is recorded once. */
  readonly sendId: string;
  /** Whose it is; nobody else sees or sends it. */
  readonly person: string;
  /** The page it is filled in on. */
  readonly path: string;
  readonly yardNumber: string;
  readonly check: string;
  /** Every field of the form, as it would be sent. */
  readonly fields: readonly (readonly [string, string])[];
  readonly photos: readonly PhonePicture[];
  readonly signature: PhonePicture | null;
}

/** A sheet being filled in. */
export interface Draft extends Filled {
  readonly savedAt: number;
  /** Why it came back, when the service refused it. */
  readonly refusedFor: readonly string[];
}

/** A sheet that was signed: nothing of it changes any more. */
export interface SignedSheet extends Filled {
  readonly signedAt: number;
  /** Where it is sent. */
  readonly action: string;
  /** Lines that keep people safe and were found bad: the trailer must not go out, sent or not. */
  readonly badSafety: readonly string[];
  /** What the service said; null while it waits. */
  readonly answer: Exclude<SheetAnswer, { kind: 'other-person' }> | null;
}

interface Phone extends DBSchema {
  drafts: { key: [string, string]; value: Draft };
  signed: { key: string; value: SignedSheet };
}

/** A random UUID (RFC 9562, version 4). A page that came over plain http has no ready-made one. */
export function newSendId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

let opened: Promise<IDBPDatabase<Phone>> | null = null;

function phone(): Promise<IDBPDatabase<Phone>> {
  opened ??= openDB<Phone>('axlebook', 1, {
    upgrade(database) {
      database.createObjectStore('drafts', { keyPath: ['person', 'path'] });
      database.createObjectStore('signed', { keyPath: 'sendId' });
    },
    // A newer page wants to change the store: let go of it, and take it up again when next asked.
    blocking(_before, _after, event) {
      (event.target as IDBDatabase).close();
      opened = null;
    },
    terminated() {
      opened = null;
    },
  });
  return opened;
}

export async function findDraft(person: string, path: string): Promise<Draft | null> {
  return (await (await phone()).get('drafts', [person, path])) ?? null;
}

export async function keepDraft(draft: Draft): Promise<void> {
  await (await phone()).put('drafts', draft);
}

export async function dropDraft({ person, path }: Pick<Draft, 'person' | 'path'>): Promise<void> {
  await (await phone()).delete('drafts', [person, path]);
}

export async function draftsOf(person: string): Promise<readonly Draft[]> {
  const all = await (await phone()).getAll('drafts');
  return all.filter((draft) => draft.person === person).sort((a, b) => b.savedAt - a.savedAt);
}

/** From being filled in to signed, in one step: at no moment is it both, or neither. */
export async function signSheet(sheet: SignedSheet): Promise<void> {
  const change = (await phone()).transaction(['drafts', 'signed'], 'readwrite', { durability: 'strict' });
  await Promise.all([
    change.objectStore('signed').put(sheet),
    change.objectStore('drafts').delete([sheet.person, sheet.path]),
    change.done,
  ]);
}

/**
 * A sheet that was refused goes back to be mended, and is signed anew. Its send id stays: had it been recorded after all,
 * the mended one is not doubled but comes back with that said. Only then does it get an id of its own.
 */
export async function mendSheet(sheet: SignedSheet): Promise<void> {
  const { signedAt, action: _action, badSafety: _bad, answer, ...filled } = sheet;
  const refused = answer?.kind === 'refused' ? answer : null;
  const draft: Draft = {
    ...filled,
    sendId: refused?.recordedBefore ? newSendId() : filled.sendId,
    signature: null,
    savedAt: signedAt,
    refusedFor: refused?.problems.map(({ message }) => message) ?? [],
  };
  const change = (await phone()).transaction(['drafts', 'signed'], 'readwrite', { durability: 'strict' });
  await Promise.all([
    change.objectStore('drafts').put(draft),
    change.objectStore('signed').delete(sheet.sendId),
    change.done,
  ]);
}

export async function signedSheets(): Promise<readonly SignedSheet[]> {
  return [...(await (await phone()).getAll('signed'))].sort((a, b) => a.signedAt - b.signedAt);
}

/** Notes what the service said. What it recorded is safe there, so its pictures leave the phone. */
export async function noteAnswer(sheet: SignedSheet, answer: NonNullable<SignedSheet['answer']>): Promise<void> {
  const left = answer.kind === 'recorded' ? { fields: [], photos: [], signature: null } : {};
  const change = (await phone()).transaction('signed', 'readwrite');
  // Thrown away or mended by another page meanwhile: it must not come back.
  const still = await change.store.get(sheet.sendId);
  if (still !== undefined) await change.store.put({ ...still, ...left, answer });
  await change.done;
}

export async function dropSigned(sendId: string): Promise<void> {
  await (await phone()).delete('signed', sendId);
}
