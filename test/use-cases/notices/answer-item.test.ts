import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { CheckKindStore } from '../../../src/store/check-kind-store.js';
import { AnswerItem } from '../../../src/use-cases/notices/answer-item.js';
import { PlanYardDay } from '../../../src/use-cases/notices/plan-yard-day.js';
import { RecordBounce } from '../../../src/use-cases/notices/record-bounce.js';
import { MendAddress } from '../../../src/use-cases/people/mend-address.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { type NoticeService, startNoticeService, value } from './notice-service.js';
import { type OstrowYard, ostrowYard, type Person, trailerSeven } from './ostrow-yard.js';

const MORNING = '2025-05-12T11:00:00Z';
const NOON = '2025-05-12T17:00:00Z';

let inbox: Inbox;
let service: NoticeService;
let yard: OstrowYard;
let trailerId: string;

beforeAll(async () => {
  inbox = await startInbox();
  service = await startNoticeService(inbox.url);
});
beforeEach(async () => {
  inbox.mails.length = 0;
  yard = await ostrowYard(service);
  ({ trailerId } = await trailerSeven(service, yard));
  await plan(MORNING);
  await service.deliverAll(yard.at(MORNING));
});
afterAll(async () => {
  await service.close();
  await inbox.close();
});

test('a safety check is put off to the day before the next job, and no further', async () => {
  const itemKey = await repackItem();
  const late = { itemKey, answer: 'later' as const, until: day('2025-05-20'), reason: 'parts come Monday' };
  expect(await answer(yard.dale, late)).toMatchObject({
    problem: {
      kind: 'invalid',
      fields: [
        { field: 'until', message: expect.stringMatching(/2025-05-19 at the latest.*Mill St fence.*2025-05-20/) },
      ],
    },
  });
  expect(await answers()).toEqual([]);
  value(await answer(yard.dale, { ...late, until: day('2025-05-19') }));
  expect(await answers()).toEqual([{ answer: 'later', until_on: '2025-05-19' }]);
  await plan('2025-05-18T11:00:00Z');
  expect(await toldTo(yard.dale)).toHaveLength(1);
  await plan('2025-05-19T11:00:00Z');
  expect(await toldTo(yard.dale)).toHaveLength(2);
});

test('on the eve of the job a safety check cannot be put off at all', async () => {
  const itemKey = await repackItem();
  const put = { itemKey, answer: 'later' as const, until: day('2025-05-20'), reason: 'no time' };
  expect(await answer(yard.dale, put, '2025-05-19T17:00:00Z')).toMatchObject({
    problem: { kind: 'conflict', message: expect.stringContaining('cannot be put off') },
  });
});

test('a check that hurts nobody is put off as long as somebody gives a reason', async () => {
  await service.database.inYard(yard.yardId, (tx) =>
    service.get(CheckKindStore).save(tx, { ...yard.hubs, safety: false }),
  );
  const itemKey = await repackItem();
  const put = { itemKey, answer: 'later' as const, until: day('2025-06-20') };
  expect(await answer(yard.dale, put)).toMatchObject({ problem: { fields: [{ field: 'reason' }] } });
  expect(await answer(yard.dale, { ...put, until: day('2025-05-12'), reason: 'rain' })).toMatchObject({
    problem: { fields: [{ field: 'until', message: expect.stringContaining('2025-05-13 or later') }] },
  });
  value(await answer(yard.dale, { ...put, reason: 'rain' }));
});

test('"not mine" goes to the backup the same day, and the owner hears of it', async () => {
  value(await answer(yard.dale, { itemKey: await repackItem(), answer: 'not-mine' }));
  expect(await toldTo(yard.wren)).toHaveLength(1);
  expect(await toldTo(yard.marta)).toHaveLength(1);
});

test('"already done" on a day moves the next due date for everybody, and needs a day that has been', async () => {
  const itemKey = await repackItem();
  const say = (doneOn: CivilDate) =>
    answer(yard.wren, { itemKey, answer: 'already-done', doneOn }, '2025-05-24T17:00:00Z');
  expect(await say(day('2025-05-25'))).toMatchObject({ problem: { fields: [{ field: 'doneOn' }] } });
  value(await say(day('2025-05-23')));
  const due = await service.sql(
    'select due_on::text, state from due_result where trailer_id = $1 and check_kind_id = $2',
    [trailerId, yard.hubs.id],
  );
  expect(due).toEqual([{ due_on: '2026-05-23', state: 'later' }]);
  await plan('2025-05-25T11:00:00Z');
  expect(await toldTo(yard.dale)).toHaveLength(1);
});

test('a second "done" of another person is kept beside the first, and asks for nothing twice', async () => {
  const itemKey = await repackItem();
  value(await answer(yard.dale, { itemKey, answer: 'done' }));
  value(await answer(yard.wren, { itemKey, answer: 'done' }, '2025-05-13T17:00:00Z'));
  const records = await service.sql(
    "select by_name, done_on::text from check_record where trailer_id = $1 and done_on > '2025-01-01' order by done_on",
    [trailerId],
  );
  expect(records).toEqual([
    { by_name: 'Dale Finch', done_on: '2025-05-12' },
    { by_name: 'Wren Castell', done_on: '2025-05-13' },
  ]);
});

test('an item of another yard, or of none, cannot be answered', async () => {
  const stranger = await ostrowYard(service);
  const itemKey = await repackItem();
  const from = stranger.at(NOON, stranger.marta);
  expect(await service.get(AnswerItem).run(from, { itemKey, answer: 'done' })).toMatchObject({
    problem: { kind: 'not-found' },
  });
  expect(await answer(yard.dale, { itemKey: 'no such thing', answer: 'done' })).toMatchObject({
    problem: { kind: 'not-found' },
  });
});

test('who may only read cannot answer', async () => {
  const reader = { ...yard.wren, role: 'viewer' as const };
  expect(await answer(reader, { itemKey: await repackItem(), answer: 'done' })).toMatchObject({
    problem: { kind: 'not-allowed', needs: 'hand' },
  });
});

test('mail that comes back: owner told the same day, item goes to the backup, and to the person once mended', async () => {
  const bounce = { personId: yard.dale.personId, note: 'mailbox does not exist' };
  value(await service.get(RecordBounce).run(yard.at(NOON, yard.marta), bounce));
  inbox.mails.length = 0;
  expect(await service.deliverAll(yard.at(NOON))).toEqual(['sent', 'sent']);
  const byAddress = new Map(inbox.mails.map((mail) => [addressOf(mail.to), mail]));
  const toOwner = byAddress.get(yard.marta.address);
  expect(toOwner?.subject).toBe('Mail to Dale Finch does not arrive: 1 open');
  expect(toOwner?.text).toContain('T-07, the long black one: hub repack, due by Mon 2 Jun');
  expect(byAddress.get(yard.wren.address)?.text).toContain('Whoever had this check cannot do it now');

  await plan('2025-05-13T11:00:00Z');
  expect(await service.deliverAll(yard.at('2025-05-13T11:00:00Z'))).toEqual([]);

  value(
    await service
      .get(MendAddress)
      .run(yard.at(NOON, yard.marta), { personId: yard.dale.personId, email: 'dale@mended.example' }),
  );
  await plan('2025-05-14T11:00:00Z');
  expect(await service.deliverAll(yard.at('2025-05-14T11:00:00Z'))).toEqual(['sent']);
  expect(addressOf(inbox.mails.at(-1)?.to)).toBe('dale@mended.example');
});

test('a bounce before the day is planned leaves the handing over to the plan', async () => {
  const early = '2025-05-13T09:00:00Z';
  const bounce = { personId: yard.dale.personId, note: 'mailbox full' };
  value(await service.get(RecordBounce).run(yard.at(early, yard.marta), bounce));
  expect(await toldTo(yard.wren)).toEqual([]);
  await plan('2025-05-13T11:00:00Z');
  expect(await toldTo(yard.wren)).toHaveLength(1);
});

test('a bounce of somebody who is not of the yard is refused', async () => {
  const stranger = await ostrowYard(service);
  const bounce = { personId: stranger.dale.personId, note: 'gone' };
  expect(await service.get(RecordBounce).run(yard.at(NOON, yard.marta), bounce)).toMatchObject({
    problem: { kind: 'not-found' },
  });
});

async function plan(iso: string): Promise<void> {
  value(await service.get(PlanYardDay).run(yard.at(iso)));
}

function answer(who: Person, input: Parameters<AnswerItem['run']>[1], at = NOON) {
  return service.get(AnswerItem).run(yard.at(at, who), input);
}

/** What Dale was told about the hubs this morning. */
async function repackItem(): Promise<string> {
  const [item] = await toldTo(yard.dale);
  if (item === undefined) throw new Error('Dale was told nothing');
  return item;
}

async function toldTo({ personId }: Person): Promise<string[]> {
  const rows = await service.sql<{ item_key: string }>(
    `select i.item_key from notice_item i join notice n on n.id = i.notice_id
     where n.person_id = $1 and i.check_kind_id = $2 order by i.id`,
    [personId, yard.hubs.id],
  );
  return rows.map(({ item_key }) => item_key);
}

function answers() {
  return service.sql('select answer, until_on::text from notice_answer where yard_id = $1 order by id', [yard.yardId]);
}

function addressOf(to: unknown): string | undefined {
  return (to as { value?: { address?: string }[] } | undefined)?.value?.[0]?.address;
}
