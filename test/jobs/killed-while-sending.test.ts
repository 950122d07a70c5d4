import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import { type Inbox, startInbox } from '../support/inbox.js';
import { buildService, type Service, startService } from '../support/service-process.js';
import { noticeStates, waitingNotices } from './waiting-notices.js';

// The promise: none lost and none sent twice when the service is killed at any moment. Killed between the server's
// acceptance and our record, a notice is sent again, under the same Message-ID.

const NOTICES = 40;
const ROUNDS = 8;
/** So that a run which fails can be repeated. */
const SEED = 20_250_602;

let database: FreshDatabase;
let inbox: Inbox;
let dataDir: string;
let running: Service | null = null;

beforeAll(async () => {
  await buildService();
  database = await freshDatabase();
  inbox = await startInbox();
  dataDir = await mkdtemp(join(tmpdir(), 'axlebook-killed-'));
}, 300_000);

afterAll(async () => {
  running?.process.kill('SIGKILL');
  await running?.ended;
  await inbox.close();
  await database.drop();
  await rm(dataDir, { recursive: true, force: true });
});

test('a service killed again and again while it sends loses no notice and renames none', {
  timeout: 900_000,
}, async () => {
  const ids = await waitingNotices(database.url, NOTICES);
  const random = seeded(SEED);
  inbox.thinkMs = 40;

  for (let round = 0; round < ROUNDS; round += 1) {
    running = await startService(settings());
    // Some of this round's mails, so that every kill falls while notices are being sent, at a moment within the
    // conversation about one of them that nobody chose.
    const already = inbox.mails.length;
    const enough = already + Math.floor(random() * 5);
    await Promise.race([inbox.until((mails) => mails.length > enough), running.ended]);
    await new Promise((later) => setTimeout(later, random() * 120));
    running.process.kill('SIGKILL');
    await running.ended;
    expect(inbox.mails.length).toBeGreaterThan(already);
  }
  const killed = await noticeStates(database.url);
  expect(killed.filter(({ state }) => state === 'waiting').length).toBeGreaterThan(0);

  inbox.thinkMs = 0;
  running = await startService(settings());
  await expect
    .poll(async () => (await noticeStates(database.url)).filter(({ state }) => state !== 'sent'), { timeout: 120_000 })
    .toEqual([]);
  running.process.kill('SIGTERM');
  await running.ended;

  // Each notice came, and however often it came, it came under the Message-ID that its row has had from the start.
  const rows = await noticeStates(database.url);
  expect(rows.map(({ id }) => id)).toEqual([...ids].sort());
  const cameAs = new Map<string, Set<string>>();
  for (const { subject = '', messageId = '' } of inbox.mails) {
    cameAs.set(subject, (cameAs.get(subject) ?? new Set()).add(messageId));
  }
  expect(Object.fromEntries([...cameAs].map(([id, as]) => [id, [...as]]))).toEqual(
    Object.fromEntries(ids.map((id) => [id, [`<${id}@ostrow.example>`]])),
  );
  // A repeat is the one that was on the wire when the service was killed: no more than two lanes a kill.
  expect(inbox.mails.length).toBeLessThanOrEqual(NOTICES + 2 * ROUNDS);
});

function settings(): Record<string, string> {
  return { DATABASE_URL: database.url, SMTP_URL: inbox.url, AXLEBOOK_DATA: dataDir, AXLEBOOK_DEMO: 'no' };
}

/** Mulberry32: a small generator whose whole state is its seed. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
