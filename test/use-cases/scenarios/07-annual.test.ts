import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, day } from '../../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { keepThrough } from '../../../src/rules/inspection/proof.js';
import { lb } from '../../../src/rules/units/mass.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { BookJob } from '../../../src/use-cases/jobs/book-job.js';
import { AddTowVehicle } from '../../../src/use-cases/machines/add-tow-vehicle.js';
import { WakeTrailers } from '../../../src/use-cases/notices/wake-trailers.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const BOOKED_ON = day('2026-01-12');
const PASSED_ON = day('2025-03-14');
const JOB_ON = day('2026-04-03');

describe('Annual: passed 14 March 2025, a commercial job booked for 3 April 2026', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;
  let towVehicleId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({
      checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => kind.code === 'annual-inspection'),
    });
    const shop = yard.as('shop', BOOKED_ON);
    ({ trailerId } = await must(
      service.get(AddTrailer).run(shop, {
        yardNumber: 'A-7',
        build: aBuild(),
        builtSince: '2024-01-01',
        parts: tiresOn(2, { maxLoad: 3_520 }),
      }),
    ));
    await must(
      service.get(RecordCheck).run(shop, {
        trailerId,
        checkKindId: yard.checkKindId('annual-inspection'),
        doneOn: PASSED_ON,
        outcome: 'pass',
        inspectedBy: 'own',
        proofOnTrailer: true,
      }),
    );
    ({ towVehicleId } = await must(service.get(AddTowVehicle).run(shop, { name: 'Truck', gvwrKg: lb(11_200) })));
  });

  afterAll(() => service.close());

  const book = (on = BOOKED_ON, commercial = true) =>
    must(
      service.get(BookJob).run(yard.as('owner', on), {
        name: 'Hollow Rd',
        trailerId,
        startsOn: JOB_ON,
        endsOn: JOB_ON,
        commercial,
        towVehicleId,
        haulerPersonId: yard.idOf('hand'),
        load: { cargo: [cargo('load', 5_000)] },
      }),
    );

  const dueOn = async (on: ReturnType<typeof day>) => {
    await must(service.get(WakeTrailers).run({ ...yard.as('owner', on), door: 'job' }));
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    return kept?.due.find((due) => due.code === 'annual-inspection');
  };

  it('whoever books is warned at once that it will have expired, and that it must be passed before', async () => {
    const { jobId, fit } = await book();
    expect(fit?.verdict).toBe('go-after');
    const due = fit?.reasons.find((reason) => reason.kind === 'due');
    if (due?.kind !== 'due') throw new Error('nobody was warned');
    expect(due.when).toBe('before');
    // Read strictly: the anniversary itself. The end of the month holds only for a State program's pass.
    expect(due.due.dueOn).toBe('2026-03-14');
    expect(due.due.firstJobAtRisk).toEqual({ jobId, startsOn: JOB_ON });
    expect(fit?.remedies).toContainEqual(
      expect.objectContaining({ kind: 'do-check', code: 'annual-inspection', by: '2026-03-14' }),
    );
  });

  it('an own, not commercial haul on that day is not stopped by it', async () => {
    expect((await book(BOOKED_ON, false)).fit?.verdict).toBe('go');
  });

  it('it is due soon from 14 days before, and no sooner', async () => {
    expect((await dueOn(day('2026-02-27')))?.state).toBe('later');
    expect((await dueOn(addDays(day('2026-03-14'), -14)))?.state).toBe('due-soon');
  });

  it('on 3 April it has expired whichever way twelve months are read: the commercial job is stopped until it is passed', async () => {
    expect((await dueOn(JOB_ON))?.state).toBe('overdue');
    expect((await book(JOB_ON)).fit?.verdict).toBe('no-go');
    await must(
      service.get(RecordCheck).run(yard.as('shop', JOB_ON), {
        trailerId,
        checkKindId: yard.checkKindId('annual-inspection'),
        doneOn: JOB_ON,
        outcome: 'pass',
        inspectedBy: 'own',
        proofOnTrailer: false,
      }),
    );
    expect((await book(JOB_ON)).fit?.verdict).toBe('go');
  });

  it('a decal nobody finds on the trailer is an item of its own though the report is in date', async () => {
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    expect(kept?.due.find((due) => due.code === 'annual-inspection')?.state).toBe('later');
    expect(kept?.flags.find((flag) => flag.rule === 'missing-proof')?.evidence).toMatchObject({
      kind: 'proof-missing',
      code: 'annual-inspection',
    });
  });

  it('the report of 14 March 2025 is kept to 14 May 2026 (49 CFR 396.21(b)(1))', () => {
    const kind = DEFAULT_CHECK_KINDS.find((one) => one.code === 'annual-inspection');
    expect(keepThrough(PASSED_ON, kind?.proof?.keepMonths ?? 0)).toBe('2026-05-14');
  });
});
