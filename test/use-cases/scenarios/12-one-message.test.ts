import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Due } from '../../../src/rules/inspection/due.js';
import { yardDaysFrom } from '../../../src/rules/inspection/yard-days.js';
import { toMiles } from '../../../src/rules/units/distance.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { CancelJob } from '../../../src/use-cases/jobs/cancel-job.js';
import { PlanYardDay } from '../../../src/use-cases/notices/plan-yard-day.js';
import { WakeTrailers } from '../../../src/use-cases/notices/wake-trailers.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { type NoticeService, startNoticeService, value } from '../notices/notice-service.js';
import { type OstrowYard, ostrowYard, trailerSeven } from '../notices/ostrow-yard.js';

const MORNING = '2025-05-12T11:00:00Z';

describe('One message: repacked 2 June 2024, 3,100 miles ago, limit 12 months or 12,000; jobs 20 May, 28 May, 9 June', () => {
  let inbox: Inbox;
  let service: NoticeService;
  let yard: OstrowYard;
  let trailerId: string;
  let jobs: ReadonlyMap<string, string>;

  beforeAll(async () => {
    inbox = await startInbox();
    service = await startNoticeService(inbox.url);
  });
  beforeEach(async () => {
    inbox.mails.length = 0;
    yard = await ostrowYard(service);
    ({ trailerId, jobs } = await trailerSeven(service, yard));
    value(await service.get(WakeTrailers).run(yard.at(MORNING)));
  });
  afterAll(async () => {
    await service.close();
    await inbox.close();
  });

  const repack = async (): Promise<Due> => {
    const kept = await service.database.inYard(yard.yardId, (tx) => service.get(ResultStore).find(tx, trailerId));
    const due = kept?.due.find((one) => one.code === 'hub-repack');
    if (due === undefined) throw new Error('the repack is not due at all');
    return due;
  };

  const morningMails = async (iso: string) => {
    inbox.mails.length = 0;
    value(await service.get(PlanYardDay).run(yard.at(iso)));
    await service.deliverAll(yard.at(iso));
    return inbox.mails.map((mail) => mail.subject ?? '');
  };

  it('the date comes first, on 2 June, and it blocks the job of 9 June', async () => {
    const due = await repack();
    expect(due).toMatchObject({ state: 'due-soon', dueOn: '2025-06-02', trigger: { kind: 'months', every: 12 } });
    expect(due.firstJobAtRisk).toEqual({ jobId: jobs.get('Hollow Rd'), startsOn: '2025-06-09' });
  });

  it('of the 12,000 miles 3,100 are used', async () => {
    const [row] = await service.sql<{ km: number }>(
      `select sum(distance_km) as km from trip where trailer_id = $1 and started_on > '2024-06-02'`,
      [trailerId],
    );
    const kept = await service.database.inYard(yard.yardId, (tx) => service.get(ResultStore).find(tx, trailerId));
    expect(kept?.use.totalKm).toBeCloseTo(row?.km ?? 0, 6);
    expect(kept?.use.totalKm && toMiles(kept.use.totalKm)).toBeCloseTo(3_100, 6);
  });

  it('the days in the yard before that are 13 to 19, 21 to 27 May, and 29 May to 2 June', async () => {
    // What is kept was worked out the day before; whoever reads it cuts off what has passed.
    expect(yardDaysFrom((await repack()).yardDays, day('2025-05-13'))).toEqual([
      { from: '2025-05-13', to: '2025-05-19' },
      { from: '2025-05-21', to: '2025-05-27' },
      { from: '2025-05-29', to: '2025-06-02' },
    ]);
  });

  it('one mail goes out, not three for three jobs, and it bundles seals, shoes and magnets', async () => {
    const subjects = await morningMails(MORNING);
    expect(subjects).toHaveLength(1);
    expect(subjects[0]).toContain('by Mon 2 Jun, before Hollow Rd Mon 9 Jun');
    expect(inbox.mails[0]?.text?.replace(/\s+/g, ' ')).toContain('seals, shoes and magnets');
    expect(await morningMails('2025-05-13T11:00:00Z')).toEqual([]);
  });

  it('with the job of 9 June cancelled the due date stays', async () => {
    const jobId = jobs.get('Hollow Rd') ?? '';
    value(await service.get(CancelJob).run(yard.at(MORNING, yard.marta), { jobId, reason: 'rain' }));
    expect(await repack()).toMatchObject({ dueOn: '2025-06-02', firstJobAtRisk: null });
  });

  it('done on 23 May it is next due on 23 May 2026, and nobody hears of it again', async () => {
    await morningMails(MORNING);
    const doneOn = day('2025-05-23');
    value(
      await service.get(RecordCheck).run(yard.at('2025-05-23T20:00:00Z', yard.dale), {
        trailerId,
        checkKindId: yard.hubs.id,
        doneOn,
        outcome: 'pass',
      }),
    );
    expect(await repack()).toMatchObject({ state: 'later', dueOn: '2026-05-23', lastDoneOn: doneOn });
    for (const morning of ['2025-05-26', '2025-06-03', '2025-06-09']) {
      const subjects = await morningMails(`${morning}T11:00:00Z`);
      expect(subjects.filter((subject) => subject.includes('bearings'))).toEqual([]);
    }
  });
});
