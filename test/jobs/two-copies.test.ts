import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import { type Inbox, startInbox } from '../support/inbox.js';
import { buildService, type Service, startService } from '../support/service-process.js';
import { noticeStates, waitingNotices } from './waiting-notices.js';

const NOTICES = 30;

let database: FreshDatabase;
let inbox: Inbox;
let dataDir: string;
let copies: readonly Service[] = [];

beforeAll(async () => {
  await buildService();
  database = await freshDatabase();
  inbox = await startInbox();
  dataDir = await mkdtemp(join(tmpdir(), 'axlebook-copies-'));
}, 300_000);

afterAll(async () => {
  for (const copy of copies) copy.process.kill('SIGKILL');
  await Promise.all(copies.map(({ ended }) => ended));
  await inbox.close();
  await database.drop();
  await rm(dataDir, { recursive: true, force: true });
});

test('two copies on one database send each notice once, and both stop cleanly', { timeout: 180_000 }, async () => {
  const settings = { DATABASE_URL: database.url, SMTP_URL: inbox.url, AXLEBOOK_DATA: dataDir, AXLEBOOK_DEMO: 'no' };
  copies = await Promise.all([startService(settings), startService(settings)]);
  await Promise.all(copies.map(({ ready }) => ready));
  inbox.thinkMs = 20;
  const ids = await waitingNotices(database.url, NOTICES);
  await expect
    .poll(async () => (await noticeStates(database.url)).filter(({ state }) => state !== 'sent'), { timeout: 120_000 })
    .toEqual([]);
  for (const copy of copies) copy.process.kill('SIGTERM');
  expect(await Promise.all(copies.map(({ ended }) => ended))).toEqual([0, 0]);
  expect(inbox.mails.map(({ subject }) => subject).sort()).toEqual([...ids].sort());
  expect(copies.map((copy) => copy.said()).join('')).not.toMatch(/error/i);
});
