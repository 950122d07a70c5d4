import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { SendAgain } from '../../../src/use-cases/notices/send-again.js';
import { MendAddress } from '../../../src/use-cases/people/mend-address.js';
import { PersonLeft } from '../../../src/use-cases/people/person-left.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { aNotice, noticeRow } from './a-notice.js';
import { type NoticeService, startNoticeService, value } from './notice-service.js';
import { type OstrowYard, ostrowYard } from './ostrow-yard.js';

const NOON = '2025-05-12T17:00:00Z';

let inbox: Inbox;
let service: NoticeService;
let yard: OstrowYard;

beforeAll(async () => {
  inbox = await startInbox();
  service = await startNoticeService(inbox.url);
});
beforeEach(async () => {
  inbox.mails.length = 0;
  inbox.answer = () => 'accept';
  yard = await ostrowYard(service);
});
afterAll(async () => {
  await service.close();
  await inbox.close();
});

test('a notice goes out once, when its time has come and not before', async () => {
  const id = await aNotice(service, yard, yard.dale);
  expect(await service.deliverAll(yard.at('2025-05-12T16:59:59Z'))).toEqual([]);
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['sent']);
  expect(await service.deliverAll(yard.at('2025-05-13T17:00:00Z'))).toEqual([]);
  expect(inbox.mails.map(({ messageId }) => messageId)).toEqual([`<${id}@ostrow.example>`]);
  expect(await noticeRow(service, id)).toMatchObject({ state: 'sent', attempts: 1, sent_at: new Date(NOON) });
});

test('a stop goes before everything that waits', async () => {
  const first = await aNotice(service, yard, yard.dale);
  const stop = await aNotice(service, yard, yard.marta, { kind: 'stop' });
  await service.deliverAll(yard.at(NOON));
  expect(inbox.mails.map(({ messageId }) => messageId)).toEqual([
    `<${stop}@ostrow.example>`,
    `<${first}@ostrow.example>`,
  ]);
});

test('a server that says "later" is asked again with growing waits until it takes the mail', async () => {
  const id = await aNotice(service, yard, yard.dale);
  inbox.answer = () => ({ at: 'rcpt', code: 450, text: '4.2.0 Greylisted, come back' });
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['retry-later']);
  expect(await noticeRow(service, id)).toMatchObject({
    state: 'waiting',
    attempts: 1,
    last_error: expect.stringContaining('Greylisted'),
    not_before: new Date('2025-05-12T17:01:00Z'),
  });
  expect(await service.deliverAll(yard.at('2025-05-12T17:01:00Z'))).toEqual(['retry-later']);
  expect((await noticeRow(service, id)).not_before).toEqual(new Date('2025-05-12T17:03:00Z'));
  inbox.answer = () => 'accept';
  expect(await service.deliverAll(yard.at('2025-05-12T17:03:00Z'))).toEqual(['sent']);
  expect(await noticeRow(service, id)).toMatchObject({ state: 'sent', attempts: 3, last_error: null });
  expect(inbox.mails).toHaveLength(1);
});

test('a retry of the evening waits for the morning, one of a stop does not', async () => {
  const day = await aNotice(service, yard, yard.dale);
  const stop = await aNotice(service, yard, yard.marta, { kind: 'stop' });
  inbox.answer = () => ({ at: 'rcpt', code: 450, text: '4.2.0 Come back' });
  await service.deliverAll(yard.at('2025-05-13T00:59:30Z'));
  expect((await noticeRow(service, day)).not_before).toEqual(new Date('2025-05-13T11:00:00Z'));
  expect((await noticeRow(service, stop)).not_before).toEqual(new Date('2025-05-13T01:00:30Z'));
});

test('a server that hangs up after the data gets the mail again under the same Message-ID', async () => {
  const id = await aNotice(service, yard, yard.dale);
  inbox.answer = () => 'hang-up-after-data';
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['retry-later']);
  inbox.answer = () => 'accept';
  expect(await service.deliverAll(yard.at('2025-05-12T17:01:00Z'))).toEqual(['sent']);
  expect(inbox.mails.map(({ messageId }) => messageId)).toEqual([`<${id}@ostrow.example>`, `<${id}@ostrow.example>`]);
});

test('content that is refused is given up at once and stays to be seen, and nobody is marked for it', async () => {
  const id = await aNotice(service, yard, yard.dale);
  inbox.answer = () => ({ at: 'data', code: 554, text: '5.6.0 I do not like this mail' });
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['dead']);
  expect(await noticeRow(service, id)).toMatchObject({ state: 'dead', last_error: expect.stringContaining('5.6.0') });
  expect(await unreachable()).toEqual([]);
});

test('a notice that was given up goes out again when somebody of the shop asks, under the same Message-ID', async () => {
  const id = await aNotice(service, yard, yard.dale);
  inbox.answer = () => ({ at: 'data', code: 554, text: '5.6.0 I do not like this mail' });
  await service.deliverAll(yard.at(NOON));
  inbox.answer = () => 'accept';
  const again = service.get(SendAgain);
  expect(await again.run(yard.at(NOON, yard.wren), { noticeId: id })).toMatchObject({
    problem: { kind: 'not-allowed', needs: 'shop' },
  });
  value(await again.run(yard.at(NOON, yard.dale), { noticeId: id }));
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['sent']);
  expect(inbox.mails.map(({ messageId }) => messageId)).toEqual([`<${id}@ostrow.example>`]);
  expect(await again.run(yard.at(NOON, yard.dale), { noticeId: id })).toMatchObject({ problem: { kind: 'conflict' } });
});

test('a mailbox that does not exist is told to the owner the same day, and nothing more is sent there', async () => {
  const id = await aNotice(service, yard, yard.dale);
  const next = await aNotice(service, yard, yard.dale);
  inbox.answer = (to) => (to === yard.dale.address ? { at: 'rcpt', code: 550, text: '5.1.1 No such user' } : 'accept');
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['dead', 'cancelled', 'sent']);
  expect(await noticeRow(service, id)).toMatchObject({ state: 'dead' });
  expect(await noticeRow(service, next)).toMatchObject({ state: 'cancelled' });
  expect(await unreachable()).toEqual(['Dale Finch']);
  expect(inbox.mails).toHaveLength(1);
  expect(inbox.mails[0]?.to).toMatchObject({ value: [{ address: yard.marta.address }] });
  expect(inbox.mails[0]?.subject).toBe('Mail to Dale Finch does not arrive');
  expect(inbox.mails[0]?.text).toContain('5.1.1 No such user');
});

test('an address mended since the notice was written is where it goes', async () => {
  const id = await aNotice(service, yard, yard.dale);
  const email = 'dale@new.example';
  value(await service.get(MendAddress).run(yard.at(NOON, yard.marta), { personId: yard.dale.personId, email }));
  await service.deliverAll(yard.at(NOON));
  expect(inbox.mails[0]?.to).toMatchObject({ value: [{ address: email }] });
  expect(await noticeRow(service, id)).toMatchObject({ state: 'sent', to_email: email });
});

test('who has left the yard gets nothing that was written before', async () => {
  const id = await aNotice(service, yard, yard.dale);
  value(await service.get(PersonLeft).run(yard.at(NOON, yard.marta), { personId: yard.dale.personId }));
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['cancelled']);
  expect(inbox.mails).toEqual([]);
  expect(await noticeRow(service, id)).toMatchObject({
    state: 'cancelled',
    last_error: 'Dale Finch has left the yard',
  });
});

test('an invitation is forgotten once it is sent, and cannot be sent again', async () => {
  const id = await aNotice(service, yard, yard.wren, { kind: 'invitation' });
  expect((await noticeRow(service, id)).body_text).not.toBe('');
  await service.deliverAll(yard.at(NOON));
  expect(inbox.mails[0]?.text).toContain('Repack');
  expect((await noticeRow(service, id)).body_text).toBe('');
});

test('a notice that two ask for at the same moment is sent by one of them', async () => {
  const ids = await Promise.all(Array.from({ length: 12 }, () => aNotice(service, yard, yard.dale)));
  const both = await Promise.all([service.deliverAll(yard.at(NOON)), service.deliverAll(yard.at(NOON))]);
  expect(both.flat()).toEqual(ids.map(() => 'sent'));
  expect(inbox.mails.map(({ messageId }) => messageId).sort()).toEqual(
    ids.map((id) => `<${id}@ostrow.example>`).sort(),
  );
});

test('yards deliver their own notices only', async () => {
  const other = await ostrowYard(service);
  await aNotice(service, other, other.dale);
  expect(await service.deliverAll(yard.at(NOON))).toEqual([]);
  expect(await service.deliverAll(other.at(NOON))).toEqual(['sent']);
});

async function unreachable(): Promise<string[]> {
  const rows = await service.sql<{ name: string }>(
    'select name from membership where yard_id = $1 and bounced_at is not null',
    [yard.yardId],
  );
  return rows.map(({ name }) => name);
}
