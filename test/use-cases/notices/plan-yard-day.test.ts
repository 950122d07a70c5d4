import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { MembershipStore } from '../../../src/store/membership-store.js';
import { NoticeStore } from '../../../src/store/notice-store.js';
import { YardStore } from '../../../src/store/yard-store.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { OpenHold } from '../../../src/use-cases/holds/open-hold.js';
import { CancelJob } from '../../../src/use-cases/jobs/cancel-job.js';
import { FindYardsWithWork } from '../../../src/use-cases/notices/find-yards-with-work.js';
import { PlanYardDay } from '../../../src/use-cases/notices/plan-yard-day.js';
import { PreviewYardDay } from '../../../src/use-cases/notices/preview-yard-day.js';
import { WakeTrailers } from '../../../src/use-cases/notices/wake-trailers.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { type NoticeService, startNoticeService, value } from './notice-service.js';
import { type OstrowYard, ostrowYard, trailerSeven } from './ostrow-yard.js';

/** Six in the morning in Chicago, the yard's plan hour. */
const MORNING = '2025-05-12T11:00:00Z';
const NEXT_MORNING = '2025-05-13T11:00:00Z';

let inbox: Inbox;
let service: NoticeService;
let yard: OstrowYard;

beforeAll(async () => {
  inbox = await startInbox();
  service = await startNoticeService(inbox.url);
});
beforeEach(async () => {
  inbox.mails.length = 0;
  yard = await ostrowYard(service);
});
afterAll(async () => {
  await service.close();
  await inbox.close();
});

test('a day is planned once, and what it told is not told again the next day', async () => {
  await trailerSeven(service, yard);
  expect(await plan(MORNING)).toEqual({ planned: true, written: 1 });
  expect(await plan(MORNING)).toEqual({ planned: false, written: 0 });
  expect(await plan('2025-05-12T20:00:00Z')).toEqual({ planned: false, written: 0 });
  expect(await plan(NEXT_MORNING)).toEqual({ planned: true, written: 0 });
});

test('a day planned by two copies at the same moment is planned by one of them', async () => {
  await trailerSeven(service, yard);
  const both = await Promise.all([plan(MORNING), plan(MORNING)]);
  expect(both.map(({ planned }) => planned).sort()).toEqual([false, true]);
  expect(await letters()).toHaveLength(1);
});

test('a plan that fails half way leaves the day to be planned', async () => {
  await trailerSeven(service, yard);
  await service.sql("alter table notice add constraint no_letters check (kind <> 'day') not valid");
  await expect(service.get(PlanYardDay).run(yard.at(MORNING))).rejects.toThrow();
  await service.sql('alter table notice drop constraint no_letters');
  expect(await plan(MORNING)).toEqual({ planned: true, written: 1 });
});

test('a person hears of everything in one mail a day', async () => {
  await trailerSeven(service, yard);
  await trailerSeven(service, yard, 'T-08');
  await plan(MORNING);
  const told = await letters();
  expect(told.map(({ to_name }) => to_name)).toEqual(['Dale Finch']);
  expect(told[0]?.subject).toContain('and 1 more');
  expect(told[0]?.body_text).toContain('T-08');
});

test('a letter planned in the quiet hours waits for their end', async () => {
  await trailerSeven(service, yard);
  await service.database.inYard(yard.yardId, (tx) => service.get(YardStore).save(tx, { quietToHour: 8 }));
  await plan(MORNING);
  expect((await letters())[0]?.not_before).toEqual(new Date('2025-05-12T13:00:00Z'));
});

test('who has left hears nothing; the backup does', async () => {
  await trailerSeven(service, yard);
  await service.database.inYard(yard.yardId, (tx) =>
    service.get(MembershipStore).save(tx, yard.dale.personId, { leftOn: day('2025-05-01') }),
  );
  await plan(MORNING);
  const told = await letters();
  expect(told.map(({ to_name }) => to_name)).toEqual(['Wren Castell']);
  expect(told[0]?.body_text).toContain('Whoever had this check cannot do it now');
});

test('a letter whose work was done before it went out is not sent', async () => {
  const { trailerId } = await trailerSeven(service, yard);
  await plan(MORNING);
  const doneOn = day('2025-05-12');
  const record = { trailerId, checkKindId: yard.hubs.id, doneOn, outcome: 'pass' as const };
  value(await service.get(RecordCheck).run(yard.at(MORNING, yard.wren), record));
  expect(await service.deliverAll(yard.at(MORNING))).toEqual(['cancelled']);
  expect(inbox.mails).toEqual([]);
});

test('a cancelled job leaves the due date and the letter as they are', async () => {
  const { jobs } = await trailerSeven(service, yard);
  await plan(MORNING);
  value(await service.get(CancelJob).run(yard.at(MORNING, yard.marta), { jobId: jobs.get('Hollow Rd') ?? '' }));
  expect(await service.deliverAll(yard.at(MORNING))).toEqual(['sent']);
});

test('the eve of a job brings whoever hauls a gate brief', async () => {
  await trailerSeven(service, yard);
  await plan('2025-05-19T11:00:00Z');
  const brief = (await letters()).find(({ to_name }) => to_name === 'Wren Castell');
  expect(brief?.subject).toMatch(/^T-07 to Mill St fence Tue 20 May: /);
  expect(brief?.body_text).toContain('Mill St fence, Tue 20 May: T-07, the long black one');
  expect(brief?.body_text).toContain('140 mi');
});

test('a hold is told at once to owner and shop, whatever the hour, with its cause or not at all', async () => {
  const { trailerId } = await trailerSeven(service, yard);
  const night = yard.at('2025-05-13T04:30:00Z', yard.wren);
  value(await service.get(OpenHold).run(night, { trailerId, reason: 'left rear hub smoking' }));
  const told = await letters();
  expect(told.map(({ to_name }) => to_name).sort()).toEqual(['Dale Finch', 'Marta Ostrow']);
  for (const notice of told) {
    expect(notice).toMatchObject({ kind: 'stop', not_before: night.now });
    expect(notice.subject).toBe('Do not load T-07: on hold');
    expect(notice.body_text).toContain('Left rear hub smoking');
    expect(notice.body_text).toContain('It is booked for Mill St fence, Tue 20 May');
  }
});

test('a stop that could not be written down takes its cause with it', async () => {
  const { trailerId } = await trailerSeven(service, yard);
  await service.sql("alter table notice add constraint no_stops check (kind <> 'stop') not valid");
  const hold = service.get(OpenHold).run(yard.at(MORNING, yard.wren), { trailerId, reason: 'hub smoking' });
  await expect(hold).rejects.toThrow();
  await service.sql('alter table notice drop constraint no_stops');
  expect(await service.sql('select 1 from hold where trailer_id = $1', [trailerId])).toEqual([]);
});

test('each yard is planned by its own clock, once it is past its plan hour, and a missed day only once', async () => {
  const auckland = await ostrowYard(service, 'Pacific/Auckland');
  expect(await yardsToPlan('2025-05-12T10:59:00Z', yard, auckland)).toEqual([auckland.yardId]);
  expect(await yardsToPlan(MORNING, yard, auckland)).toEqual([yard.yardId, auckland.yardId]);
  await plan(MORNING);
  expect(await yardsToPlan(MORNING, yard, auckland)).toEqual([auckland.yardId]);
  expect(await yardsToPlan('2025-05-13T10:59:00Z', yard)).toEqual([]);
  // Three days without the service: today is planned, the days between are not.
  expect(await yardsToPlan('2025-05-15T19:00:00Z', yard)).toEqual([yard.yardId]);
  expect(await plan('2025-05-15T19:00:00Z')).toMatchObject({ planned: true });
  expect(await yardsToPlan('2025-05-15T19:00:00Z', yard)).toEqual([]);
});

test('a plan hour that the clock skips in spring is past when the clock goes on', async () => {
  await service.database.inYard(yard.yardId, (tx) => service.get(YardStore).save(tx, { planHour: 2 }));
  await plan('2025-03-08T12:00:00Z');
  expect(await yardsToPlan('2025-03-09T01:59:00-06:00', yard)).toEqual([]);
  expect(await yardsToPlan('2025-03-09T03:00:00-05:00', yard)).toEqual([yard.yardId]);
});

test('a plan hour that comes twice in autumn plans one day', async () => {
  await service.database.inYard(yard.yardId, (tx) => service.get(YardStore).save(tx, { planHour: 1 }));
  expect(await yardsToPlan('2025-11-02T01:00:00-05:00', yard)).toEqual([yard.yardId]);
  await plan('2025-11-02T01:00:00-05:00');
  expect(await yardsToPlan('2025-11-02T01:00:00-06:00', yard)).toEqual([]);
});

test('a trailer is woken on the day on which something about it reads differently', async () => {
  const { trailerId } = await trailerSeven(service, yard);
  const [{ wake_on: wakeOn = '' } = {}] = await service.sql<{ wake_on: string }>(
    'select wake_on::text from trailer_result where trailer_id = $1',
    [trailerId],
  );
  const eve = new Date(new Date(`${wakeOn}T05:00:00Z`).getTime() - 60_000).toISOString();
  expect(value(await service.get(WakeTrailers).run(yard.at(eve)))).toEqual({ woken: 0 });
  expect(value(await service.get(WakeTrailers).run(yard.at(`${wakeOn}T05:00:00Z`)))).toEqual({ woken: 1 });
  const [after] = await service.sql<{ as_of: string }>('select as_of::text from trailer_result where trailer_id = $1', [
    trailerId,
  ]);
  expect(after?.as_of).toBe(wakeOn);
});

test('a preview says what would be sent and writes nothing', async () => {
  await trailerSeven(service, yard);
  const preview = value(await service.get(PreviewYardDay).run(yard.at(MORNING, yard.marta)));
  expect(preview).toMatchObject([{ to: { name: 'Dale Finch' }, kind: 'day', text: expect.stringContaining('T-07') }]);
  expect(await letters()).toEqual([]);
  expect(await service.database.inYard(yard.yardId, (tx) => service.get(NoticeStore).plannedOn(tx))).toBeNull();
  expect(await service.get(PreviewYardDay).run(yard.at(MORNING, yard.wren))).toMatchObject({
    problem: { kind: 'not-allowed', needs: 'owner' },
  });
});

async function plan(iso: string) {
  await service.get(WakeTrailers).run(yard.at(iso));
  return value(await service.get(PlanYardDay).run(yard.at(iso)));
}

interface LetterRow {
  readonly kind: string;
  readonly to_name: string;
  readonly subject: string;
  readonly body_text: string;
  readonly not_before: Date;
}

function letters(): Promise<LetterRow[]> {
  return service.sql<LetterRow>(
    'select kind, to_name, subject, body_text, not_before from notice where yard_id = $1 order by id',
    [yard.yardId],
  );
}

/** Which of these yards want planning at a moment, in the order given. */
async function yardsToPlan(iso: string, ...of: readonly OstrowYard[]): Promise<string[]> {
  const all = new Set(await service.get(FindYardsWithWork).toPlan(new Date(iso)));
  return of.map(({ yardId }) => yardId).filter((yardId) => all.has(yardId));
}
