import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { miles } from '../../src/rules/units/distance.js';
import { lb, toLb } from '../../src/rules/units/mass.js';
import { JobStore } from '../../src/store/job-store.js';
import { ResultStore } from '../../src/store/result-store.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { LiftHold } from '../../src/use-cases/holds/lift-hold.js';
import { OpenHold } from '../../src/use-cases/holds/open-hold.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { CancelJob } from '../../src/use-cases/jobs/cancel-job.js';
import { ChangeJob } from '../../src/use-cases/jobs/change-job.js';
import { FinishJob } from '../../src/use-cases/jobs/finish-job.js';
import { AddMachine } from '../../src/use-cases/machines/add-machine.js';
import { ReplaceMachine } from '../../src/use-cases/machines/replace-machine.js';
import { ReviseMachine } from '../../src/use-cases/machines/revise-machine.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { FitPart } from '../../src/use-cases/trailers/fit-part.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { WithdrawTrip } from '../../src/use-cases/trips/withdraw-trip.js';
import { SetCheckKind } from '../../src/use-cases/yard/set-check-kind.js';
import { SetYardSettings } from '../../src/use-cases/yard/set-yard-settings.js';
import { aBuild, aTire, cargo, TODAY, tiresOn } from '../support/trailers.js';
import { must, refusal, refusedFields, startUseCases, type UseCases, type Yard } from '../support/yard.js';

let service: UseCases;
let yard: Yard;
let numbers = 0;

beforeAll(async () => {
  service = await startUseCases();
  yard = await service.makeYard({
    checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => ['hub-repack', 'breakaway'].includes(kind.code)),
  });
});
afterAll(() => service.close());

const add = (more: object = {}) => {
  numbers += 1;
  return must(
    service.get(AddTrailer).run(yard.as('shop'), {
      yardNumber: `F-${numbers}`,
      build: aBuild(),
      builtSince: '2024-01-01',
      parts: tiresOn(2, { maxLoad: 3_520 }),
      ...more,
    }),
  );
};
const aTrailer = async (more: object = {}) => (await add(more)).trailerId;
const aMachine = async (pounds: number | null, name = 'Excavator') =>
  (
    await must(
      service
        .get(AddMachine)
        .run(yard.as('shop'), { name, massKg: pounds === null ? null : lb(pounds), basis: 'weighed' }),
    )
  ).machineId;
const kept = async (trailerId: string) => {
  const result = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
  if (result === null) throw new Error('never assessed');
  return result;
};
const facts = async (trailerId: string) => {
  const found = await yard.inYard((tx) => new TrailerStore().findFacts(tx, trailerId));
  if (found === null) throw new Error('no such trailer');
  return found;
};
const aDay = { startedOn: addDays(TODAY, -1), endedOn: addDays(TODAY, -1) };

describe('a trailer that is entered', () => {
  it('may be unknown but for its number, and says what that keeps from being worked out', async () => {
    const { unknowns, contradictions, trailerId } = await add({ build: undefined, parts: [] });
    expect(unknowns.length).toBeGreaterThan(0);
    expect(contradictions).toEqual([]);
    expect((await kept(trailerId)).ratings?.payloadKg ?? null).toBeNull();
  });

  it('whose build contradicts itself is taken, and the contradiction said', async () => {
    const { contradictions } = await add({ build: aBuild({ plate: 20_000 }) });
    expect(contradictions.map((one) => one.kind)).toContain('plate-above-axles');
  });

  it('with a number that is taken is refused', async () => {
    await add({ yardNumber: 'Q-2' });
    expect(await refusedFields(service.get(AddTrailer).run(yard.as('shop'), { yardNumber: ' Q-2 ' }))).toEqual({
      yardNumber: 'Another trailer of this yard is Q-2; enter a number that is free.',
    });
  });

  it('with a VIN whose check digit does not agree is taken and doubted; one with a letter O is refused', async () => {
    expect((await add({ vin: '1G4AH59H55G118341' })).vinDoubt).toMatchObject({
      kind: 'bad-check-digit',
      expected: '4',
    });
    expect((await add({ vin: '1x9bf2022a0lm1234' })).vinDoubt).toBeNull();
    expect(
      await refusedFields(
        service.get(AddTrailer).run(yard.as('shop'), { yardNumber: 'V-1', vin: '1G4AH59H45GO18341' }),
      ),
    ).toEqual({ vin: expect.stringContaining('no VIN holds "O" (place 12)') });
  });

  it('has tires only where its wheels are', async () => {
    const trailerId = await aTrailer();
    const fields = await refusedFields(service.get(FitPart).run(yard.as('shop'), { trailerId, ...aTire('3L') }));
    expect(fields).toEqual({ position: "Choose one of this trailer's positions: 1L, 1R, 2L, 2R, spare." });
  });

  it('loses its booked jobs when it is sold, keeps its history, and is reminded of nothing', async () => {
    const trailerId = await aTrailer();
    await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...aDay, distanceKm: miles(20) }));
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand'), { name: 'Hollow Rd', trailerId, startsOn: TODAY, endsOn: TODAY }),
    );
    const { jobsWithoutTrailer } = await must(
      service.get(UpdateTrailer).run(yard.as('owner'), { trailerId, status: 'sold' }),
    );
    expect(jobsWithoutTrailer).toEqual([jobId]);
    expect(await kept(trailerId)).toMatchObject({ readiness: 'gone', due: [], flags: [] });
    expect((await facts(trailerId)).trips).toHaveLength(1);
    expect(
      await refusedFields(
        service.get(BookJob).run(yard.as('hand'), { name: 'Mill St', trailerId, startsOn: TODAY, endsOn: TODAY }),
      ),
    ).toEqual({ trailerId: expect.stringContaining('is sold') });
  });
});

describe('a load', () => {
  it('has its machine in it at the weight the yard knows, and what goes along beside it', async () => {
    const trailerId = await aTrailer();
    const machineId = await aMachine(7_650);
    await must(
      service.get(RecordTrip).run(yard.as('hand'), {
        trailerId,
        ...aDay,
        machineId,
        load: { cargo: [cargo('chains', 120)] },
      }),
    );
    const [trip] = (await facts(trailerId)).trips;
    expect(trip?.load.cargo.map(({ name, massKg }) => [name, Math.round(toLb(massKg))])).toEqual([
      ['Excavator', 7_650],
      ['chains', 120],
    ]);
  });

  it('of a machine nobody weighed is unknown alone, and refused with other things listed, or the sum would be short', async () => {
    const trailerId = await aTrailer();
    const machineId = await aMachine(null, 'Old roller');
    const trip = { trailerId, ...aDay, machineId };
    await must(service.get(RecordTrip).run(yard.as('hand'), trip));
    expect(
      await refusedFields(
        service.get(RecordTrip).run(yard.as('hand'), { ...trip, load: { cargo: [cargo('chains', 120)] } }),
      ),
    ).toEqual({ machineId: expect.stringContaining('Nobody has said what Old roller weighs') });
  });

  it('that was hauled keeps its weight when the machine is weighed again; the trailer is judged by the new one', async () => {
    const trailerId = await aTrailer();
    const machineId = await aMachine(9_000);
    await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...aDay, machineId }));
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).not.toContain('outgrown');
    const { trailersAssessed } = await must(
      service.get(ReviseMachine).run(yard.as('shop'), {
        machineId,
        name: 'Excavator',
        massKg: lb(10_800),
        basis: 'weighed',
      }),
    );
    expect(trailersAssessed).toBe(1);
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).toContain('outgrown');
    expect(toLb((await facts(trailerId)).trips[0]?.load.cargo[0]?.massKg ?? lb(0))).toBeCloseTo(9_000, 6);
  });
});

describe('a machine that is weighed again, or replaced', () => {
  const booked = async (machineId: string, load: object = { cargo: [cargo('chains', 120)] }) => {
    const trailerId = await aTrailer();
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand'), {
        name: 'Hollow Rd',
        trailerId,
        startsOn: addDays(TODAY, 3),
        endsOn: addDays(TODAY, 3),
        machineId,
        load,
      }),
    );
    return jobId;
  };
  const cargoOf = async (jobId: string) => {
    const job = await yard.inYard((tx) => new JobStore().find(tx, jobId));
    return job?.load.cargo.map(({ name, massKg, basis }) => `${name} ${Math.round(toLb(massKg))} ${basis}`);
  };
  const weigh = (machineId: string, pounds: number | null) =>
    must(
      service.get(ReviseMachine).run(yard.as('shop'), {
        machineId,
        name: 'Excavator',
        massKg: pounds === null ? null : lb(pounds),
        basis: 'weighed',
      }),
    );

  it('is carried at its new weight by the jobs to come, but for one that was given a weight of its own', async () => {
    const machineId = await aMachine(7_650);
    const [listed, own] = [
      await booked(machineId),
      await booked(machineId, { cargo: [cargo('excavator without its arm', 6_100, { machineId })] }),
    ];
    expect((await weigh(machineId, 8_020)).jobsReloaded).toHaveLength(2);
    expect(await cargoOf(listed)).toEqual(['Excavator 8020 weighed', 'chains 120 weighed']);
    expect(await cargoOf(own)).toEqual(['excavator without its arm 6100 weighed']);
  });

  it('of which the weight is no longer known leaves no load that looks light', async () => {
    const machineId = await aMachine(7_650);
    const jobId = await booked(machineId);
    await weigh(machineId, null);
    expect(await cargoOf(jobId)).toEqual([]);
    await weigh(machineId, 8_020);
    expect(await cargoOf(jobId)).toEqual(['Excavator 8020 weighed']);
  });

  it('hands its jobs to the machine that takes over its work', async () => {
    const machineId = await aMachine(7_650);
    const jobId = await booked(machineId);
    await must(
      service.get(ReplaceMachine).run(yard.as('shop'), {
        machineId,
        replacedOn: TODAY,
        by: { name: 'Larger excavator', massKg: lb(9_900), basis: 'stated' },
      }),
    );
    expect(await cargoOf(jobId)).toEqual(['Larger excavator 9900 stated', 'chains 120 weighed']);
  });
});

describe('a job', () => {
  it('that is done becomes one trip, and its miles are counted once', async () => {
    const trailerId = await aTrailer();
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand', addDays(TODAY, -5)), {
        name: 'Hollow Rd',
        trailerId,
        startsOn: addDays(TODAY, -2),
        endsOn: addDays(TODAY, -1),
        distanceKm: miles(140),
      }),
    );
    await must(service.get(FinishJob).run(yard.as('hand'), { jobId, distanceKm: miles(152) }));
    expect((await kept(trailerId)).use).toMatchObject({ trips: 1, totalKm: expect.closeTo(miles(152), 6) });
    expect(await refusal(service.get(FinishJob).run(yard.as('hand'), { jobId }))).toMatchObject({ kind: 'conflict' });
    expect((await facts(trailerId)).trips).toMatchObject([{ jobId, startedOn: addDays(TODAY, -2) }]);
    expect(await refusal(service.get(CancelJob).run(yard.as('hand'), { jobId }))).toMatchObject({ kind: 'conflict' });
  });

  it('whose trip is taken back is booked again, for the trailer that really went', async () => {
    const [wrong, right] = [await aTrailer(), await aTrailer()];
    const window = { startsOn: addDays(TODAY, -2), endsOn: addDays(TODAY, -2) };
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand', addDays(TODAY, -4)), { name: 'Mill St', trailerId: wrong, ...window }),
    );
    const { tripId } = await must(service.get(FinishJob).run(yard.as('hand'), { jobId }));
    const { reopenedJobId } = await must(
      service.get(WithdrawTrip).run(yard.as('shop'), { trailerId: wrong, tripId, reason: 'the other one went' }),
    );
    expect(reopenedJobId).toBe(jobId);
    await must(service.get(ChangeJob).run(yard.as('hand'), { jobId, trailerId: right }));
    await must(service.get(FinishJob).run(yard.as('hand'), { jobId }));
    expect((await facts(wrong)).trips).toEqual([]);
    expect((await facts(right)).trips).toHaveLength(1);
  });

  it('that moves to another trailer leaves nothing at the first', async () => {
    const [first, second] = [await aTrailer(), await aTrailer()];
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand'), {
        name: 'Depot',
        trailerId: first,
        startsOn: addDays(TODAY, 5),
        endsOn: addDays(TODAY, 6),
      }),
    );
    await must(service.get(ChangeJob).run(yard.as('hand'), { jobId, trailerId: second, startsOn: addDays(TODAY, 4) }));
    expect((await facts(first)).jobs).toEqual([]);
    expect((await facts(second)).jobs).toMatchObject([{ id: jobId, startsOn: addDays(TODAY, 4) }]);
  });

  it('given another machine carries only that one', async () => {
    const trailerId = await aTrailer();
    const [light, heavy] = [await aMachine(5_000, 'Roller'), await aMachine(9_000, 'Loader')];
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand'), {
        name: 'Depot',
        trailerId,
        startsOn: TODAY,
        endsOn: TODAY,
        machineId: light,
        load: { cargo: [cargo('chains', 120)] },
        haulerPersonId: yard.idOf('hand'),
      }),
    );
    await must(
      service.get(ChangeJob).run(yard.as('hand'), { jobId, machineId: heavy, haulerPersonId: yard.idOf('driver') }),
    );
    const job = await yard.inYard((tx) => new JobStore().find(tx, jobId));
    expect(job?.load.cargo.map((item) => item.name)).toEqual(['Loader', 'chains']);
    expect(job?.driver).toEqual({ name: 'Dale Harrow', cdl: 'A' });
  });
});

describe('a hold', () => {
  const bad = async (trailerId: string, by: 'hand' | 'driver' = 'hand') => {
    const kind = DEFAULT_CHECK_KINDS.find((one) => one.code === 'breakaway');
    const line = kind?.lines.find((one) => one.safety && one.kind === 'tick');
    return must(
      service.get(RecordCheck).run(yard.as(by), {
        trailerId,
        checkKindId: yard.checkKindId('breakaway'),
        doneOn: TODAY,
        lines: [{ code: line?.code ?? '', result: 'bad', position: null, measured: null }],
      }),
    );
  };

  it('is put on by a bad safety line in the same breath, once for the same fault', async () => {
    const trailerId = await aTrailer();
    const { holdId, raised } = await bad(trailerId);
    expect(holdId).not.toBeNull();
    expect(raised.map((flag) => flag.rule)).toContain('on-hold');
    expect((await kept(trailerId)).readiness).toBe('down');
    expect((await bad(trailerId, 'driver')).holdId).toBeNull();
    expect((await facts(trailerId)).holds).toHaveLength(1);
  });

  it('cannot be hidden by calling the check passed', async () => {
    const trailerId = await aTrailer();
    const { checkRecordId } = await bad(trailerId);
    const [record] = (await facts(trailerId)).checkRecords.filter((one) => one.id === checkRecordId);
    expect(record?.outcome).toBe('fail');
    const passed = service.get(RecordCheck).run(yard.as('hand'), {
      trailerId,
      checkKindId: yard.checkKindId('breakaway'),
      doneOn: TODAY,
      outcome: 'pass',
      lines: record?.lines ?? [],
    });
    expect(await refusedFields(passed)).toEqual({ outcome: expect.stringContaining('mark the check as failed') });
  });

  it('is told to owner and shop at once, in the transaction that put it on', async () => {
    const trailerId = await aTrailer();
    await must(service.get(OpenHold).run(yard.as('hand'), { trailerId, reason: 'crack at the tongue' }));
    const told = await service.sql<{ kind: string; name: string }>(
      `select n.kind, n.to_name as name from notice n join notice_item i on i.notice_id = n.id
       where i.trailer_id = $1 order by 2`,
      [trailerId],
    );
    expect(told).toContainEqual({ kind: 'stop', name: 'Marta Quill' });
    expect(told).toContainEqual({ kind: 'stop', name: 'Luis Ostrow' });
  });

  it('is lifted by a recorded repair, or by somebody with a name who says why; and once', async () => {
    const trailerId = await aTrailer();
    const { holdId } = await bad(trailerId);
    const lift = { trailerId, holdId: holdId ?? '' };
    expect(await refusedFields(service.get(LiftHold).run(yard.as('shop'), lift))).toEqual({
      reason: expect.stringContaining('Say why'),
    });
    const failed = (await facts(trailerId)).checkRecords[0]?.id ?? '';
    expect(await refusedFields(service.get(LiftHold).run(yard.as('shop'), { ...lift, checkRecordId: failed }))).toEqual(
      {
        checkRecordId: expect.stringContaining('that passed on or after'),
      },
    );
    const { checkRecordId } = await must(
      service.get(RecordCheck).run(yard.as('shop'), {
        trailerId,
        checkKindId: yard.checkKindId('breakaway'),
        doneOn: TODAY,
        outcome: 'pass',
      }),
    );
    expect((await kept(trailerId)).readiness).toBe('down');
    await must(service.get(LiftHold).run(yard.as('shop'), { ...lift, checkRecordId }));
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).not.toContain('on-hold');
    expect(await refusal(service.get(LiftHold).run(yard.as('shop'), { ...lift, checkRecordId }))).toMatchObject({
      kind: 'conflict',
    });
    const [row] = await service.sql('select lifted_by_name, lift_check_record_id from hold where id = $1', [holdId]);
    expect(row).toEqual({ lifted_by_name: 'Luis Ostrow', lift_check_record_id: checkRecordId });
  });
});

describe('the settings of a yard', () => {
  it('judge every trailer anew, and none stays marked as stale', async () => {
    const settled = await service.makeYard();
    const old = tiresOn(2, { dateCode: '2021', fittedOn: null });
    const ids: string[] = [];
    for (const yardNumber of ['S-1', 'S-2', 'S-3']) {
      const { trailerId } = await must(
        service.get(AddTrailer).run(settled.as('shop'), { yardNumber, build: aBuild(), parts: old }),
      );
      ids.push(trailerId);
    }
    const aged = async () => {
      const results = await settled.inYard((tx) => new ResultStore().findMany(tx, ids));
      return ids.filter((id) => results.get(id)?.flags.some((flag) => flag.rule === 'tire-age')).length;
    };
    expect(await aged()).toBe(0);
    const policy = { tireAgeLimitYears: 4 };
    expect(await must(service.get(SetYardSettings).run(settled.as('owner'), { policy }))).toEqual({
      assessed: 3,
      waiting: 0,
    });
    expect(await aged()).toBe(3);
    expect(await settled.inYard((tx) => new ResultStore().wakeBy(tx, TODAY))).toEqual([]);
  });

  it('a check may not belong to somebody who is not of the yard', async () => {
    const kind = DEFAULT_CHECK_KINDS.find((one) => one.code === 'hub-repack');
    if (kind === undefined) throw new Error('no hub repack');
    const stranger = await service.makeYard({ name: 'Ostrow Fencing' });
    const set = { ...kind, checkKindId: yard.checkKindId('hub-repack'), ownerPersonId: stranger.idOf('shop') };
    expect(await refusedFields(service.get(SetCheckKind).run(yard.as('owner'), set))).toEqual({
      ownerPersonId: expect.stringContaining("Choose one of the yard's people"),
    });
  });
});

describe('two people at once', () => {
  it('give one number to two trailers, and one of them is told that it is taken', async () => {
    const answers = await Promise.all(
      [1, 2].map(() => service.get(AddTrailer).run(yard.as('shop'), { yardNumber: 'TWICE' })),
    );
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
    expect(answers.find((answer) => !answer.ok)).toMatchObject({
      problem: { kind: 'invalid', fields: [{ field: 'yardNumber' }] },
    });
  });

  it('record trips of one trailer, and what is kept knows of all of them', async () => {
    const trailerId = await aTrailer();
    const trips = Array.from({ length: 6 }, (_, place) =>
      service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...aDay, distanceKm: miles(10 + place) }),
    );
    for (const trip of await Promise.all(trips)) expect(trip.ok).toBe(true);
    expect((await kept(trailerId)).use).toMatchObject({ trips: 6, totalKm: expect.closeTo(miles(75), 6) });
  });

  it('finish one job, and one trip is made', async () => {
    const trailerId = await aTrailer();
    const { jobId } = await must(
      service.get(BookJob).run(yard.as('hand'), { name: 'Hollow Rd', trailerId, startsOn: TODAY, endsOn: TODAY }),
    );
    const answers = await Promise.all(
      [1, 2, 3].map(() => service.get(FinishJob).run(yard.as('hand'), { jobId, distanceKm: miles(30) })),
    );
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
    expect((await facts(trailerId)).trips).toHaveLength(1);
  });
});
