import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { km, miles } from '../../src/rules/units/distance.js';
import { lb, toLb } from '../../src/rules/units/mass.js';
import { BuildStore } from '../../src/store/build-store.js';
import { CheckStore } from '../../src/store/check-store.js';
import { PartStore } from '../../src/store/part-store.js';
import { ReadingStore } from '../../src/store/reading-store.js';
import { ResultStore } from '../../src/store/result-store.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { TripStore } from '../../src/store/trip-store.js';
import { CorrectCheck } from '../../src/use-cases/checks/correct-check.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { CorrectReading } from '../../src/use-cases/readings/correct-reading.js';
import { RecordReading } from '../../src/use-cases/readings/record-reading.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { CorrectPart } from '../../src/use-cases/trailers/correct-part.js';
import { FitPart } from '../../src/use-cases/trailers/fit-part.js';
import { ReviseBuildSheet } from '../../src/use-cases/trailers/revise-build-sheet.js';
import { CorrectTrip } from '../../src/use-cases/trips/correct-trip.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { WithdrawTrip } from '../../src/use-cases/trips/withdraw-trip.js';
import { aBuild, aTire, cargo, TODAY, tiresOn } from '../support/trailers.js';
import { must, refusal, refusedFields, startUseCases, type UseCases, type Yard } from '../support/yard.js';

describe('a fact that was wrong', () => {
  let service: UseCases;
  let yard: Yard;
  let numbers = 0;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => kind.code === 'hub-repack') });
  });
  afterAll(() => service.close());

  const aTrailer = async (plate = 14_000) => {
    numbers += 1;
    const { trailerId } = await must(
      service.get(AddTrailer).run(yard.as('shop'), {
        yardNumber: `C-${numbers}`,
        build: aBuild({ plate }),
        builtSince: '2024-01-01',
        parts: tiresOn(2, { maxLoad: 3_520 }),
      }),
    );
    return trailerId;
  };
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
  const haul = (pounds: number, far = 40, on: CivilDate = addDays(TODAY, -3)) => ({
    startedOn: on,
    endedOn: on,
    distanceKm: miles(far),
    load: { cargo: [cargo('machine', pounds)] },
  });

  it('a trip recorded too heavy takes its flag down when corrected, and both stay in the history', async () => {
    const trailerId = await aTrailer();
    const { tripId, raised } = await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...haul(11_000) }));
    expect(raised.map((flag) => flag.rule)).toContain('over-plate');
    const { tripId: mendedId } = await must(
      service.get(CorrectTrip).run(yard.as('hand'), { trailerId, tripId, ...haul(6_000) }),
    );
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).not.toContain('over-plate');
    expect((await facts(trailerId)).trips.map((trip) => trip.id)).toEqual([mendedId]);

    const history = await yard.inYard((tx) => new TripStore().history(tx, trailerId));
    expect(
      history.map(({ fact, correctsId, standing }) => [
        toLb(fact.load.cargo[0]?.massKg ?? lb(0)),
        correctsId,
        standing,
      ]),
    ).toEqual([
      [expect.closeTo(11_000, 6), null, false],
      [expect.closeTo(6_000, 6), tripId, true],
    ]);
  });

  it('a fact is mended once: who comes second is told that it does not stand any more', async () => {
    const trailerId = await aTrailer();
    const { tripId } = await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...haul(6_000) }));
    const answers = await Promise.all(
      [5_000, 5_500].map((pounds) =>
        service.get(CorrectTrip).run(yard.as('hand'), { trailerId, tripId, ...haul(pounds) }),
      ),
    );
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
    expect(answers.find((answer) => !answer.ok)).toEqual({ ok: false, problem: { kind: 'not-found', what: 'trip' } });
    expect((await facts(trailerId)).trips).toHaveLength(1);
  });

  it('a trip of another trailer is taken back: its miles no longer count, its record stays', async () => {
    const trailerId = await aTrailer();
    const { tripId } = await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...haul(6_000, 90) }));
    await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...haul(6_000, 10) }));
    expect((await kept(trailerId)).use.totalKm).toBeCloseTo(miles(100), 6);
    await must(service.get(WithdrawTrip).run(yard.as('shop'), { trailerId, tripId, reason: 'it was C-1' }));
    expect((await kept(trailerId)).use.totalKm).toBeCloseTo(miles(10), 6);
    const history = await yard.inYard((tx) => new TripStore().history(tx, trailerId));
    expect(history.map(({ standing, withdrawn }) => [standing, withdrawn])).toEqual([
      [false, false],
      [true, false],
      [false, true],
    ]);
  });

  it('a mistake in the plate is mended in its version; a change of axles makes a new one, and old trips keep theirs', async () => {
    const trailerId = await aTrailer(9_990);
    await must(service.get(RecordTrip).run(yard.as('hand'), { trailerId, ...haul(7_000, 40, addDays(TODAY, -30)) }));
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).toContain('over-plate');
    const [first] = (await facts(trailerId)).builds;
    const correctsId = first?.id ?? '';

    const better = { trailerId, build: aBuild({ plate: 12_000 }), effectiveFrom: addDays(TODAY, -10) };
    await must(service.get(ReviseBuildSheet).run(yard.as('shop'), better));
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).toContain('over-plate');
    expect((await kept(trailerId)).ratings?.payloadKg).toBeCloseTo(lb(12_000 - 3_900), 6);

    await must(
      service.get(ReviseBuildSheet).run(yard.as('shop'), { trailerId, build: aBuild({ plate: 11_000 }), correctsId }),
    );
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).not.toContain('over-plate');
    expect((await facts(trailerId)).builds.map((build) => build.effectiveFrom)).toEqual([
      '2024-01-01',
      addDays(TODAY, -10),
    ]);
    expect(await yard.inYard((tx) => new BuildStore().history(tx, trailerId))).toHaveLength(3);
    expect(await refusedFields(service.get(ReviseBuildSheet).run(yard.as('shop'), better))).toEqual({
      effectiveFrom: expect.stringContaining('stands already'),
    });
  });

  it('a misread date code is mended; a tire that was never there is taken back', async () => {
    const trailerId = await aTrailer();
    const { partId } = await must(
      service.get(FitPart).run(yard.as('shop'), { trailerId, ...aTire('spare', { dateCode: '1009', fittedOn: null }) }),
    );
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).toContain('tire-age');
    const { partId: mendedId } = await must(
      service.get(CorrectPart).run(yard.as('shop'), {
        trailerId,
        partId,
        ...aTire('spare', { dateCode: '1019', fittedOn: null }),
        removedOn: TODAY,
      }),
    );
    expect((await kept(trailerId)).flags.map((flag) => flag.rule)).not.toContain('tire-age');
    await must(service.get(CorrectPart).run(yard.as('shop'), { trailerId, partId: mendedId ?? '', neverFitted: true }));
    expect((await facts(trailerId)).parts.filter((part) => part.position === 'spare')).toEqual([]);
    const history = await yard.inYard((tx) => new PartStore().history(tx, trailerId));
    expect(history.filter(({ standing }) => !standing)).toHaveLength(3);
  });

  it('a check recorded for the wrong trailer is taken back, and the due date goes back with it', async () => {
    const trailerId = await aTrailer();
    const record = { trailerId, checkKindId: yard.checkKindId('hub-repack'), outcome: 'pass' as const };
    await must(service.get(RecordCheck).run(yard.as('hand'), { ...record, doneOn: addDays(TODAY, -200) }));
    const { checkRecordId } = await must(service.get(RecordCheck).run(yard.as('hand'), { ...record, doneOn: TODAY }));
    const lastDone = async () => (await kept(trailerId)).due.find((due) => due.code === 'hub-repack')?.lastDoneOn;
    expect(await lastDone()).toBe(TODAY);
    await must(
      service
        .get(CorrectCheck)
        .run(yard.as('shop'), { trailerId, checkRecordId, doneOn: addDays(TODAY, -1), outcome: 'pass' }),
    );
    expect(await lastDone()).toBe(addDays(TODAY, -1));
    const standing = (await facts(trailerId)).checkRecords.find((one) => one.doneOn === addDays(TODAY, -1));
    await must(
      service.get(CorrectCheck).run(yard.as('shop'), {
        trailerId,
        checkRecordId: standing?.id ?? '',
        neverDone: true,
      }),
    );
    expect(await lastDone()).toBe(addDays(TODAY, -200));
    expect(await yard.inYard((tx) => new CheckStore().history(tx, trailerId))).toHaveLength(4);
  });

  describe('of a hub meter', () => {
    const read = (trailerId: string, far: number, on: CivilDate, more: object = {}) =>
      service.get(RecordReading).run(yard.as('hand'), { trailerId, takenOn: on, shownKm: km(far), ...more });

    it('a lower reading without a reason is refused, and says how to mend it', async () => {
      const trailerId = await aTrailer();
      await must(read(trailerId, 12_000, addDays(TODAY, -20)));
      expect(await refusedFields(read(trailerId, 300, addDays(TODAY, -2)))).toEqual({
        shownKm: expect.stringMatching(/7,456 mi \(12,000 km\), which is more\. .*rolled over or was replaced/),
      });
      await must(read(trailerId, 300, addDays(TODAY, -2), { kind: 'rolled-over', meterSpanKm: km(12_500) }));
      await must(read(trailerId, 0, addDays(TODAY, -2), { kind: 'replaced' }));
      await must(read(trailerId, 40, TODAY));
      expect((await kept(trailerId)).use.totalKm).toBeCloseTo(800 + 40, 6);
    });

    it('a reading entered later for a day between two others must fit both', async () => {
      const trailerId = await aTrailer();
      await must(read(trailerId, 1_000, addDays(TODAY, -20)));
      await must(read(trailerId, 2_000, addDays(TODAY, -10)));
      expect(await refusedFields(read(trailerId, 2_100, addDays(TODAY, -15)))).toEqual({
        shownKm: expect.stringContaining(`does not fit the reading of ${addDays(TODAY, -10)}`),
      });
      await must(read(trailerId, 1_500, addDays(TODAY, -15)));
    });

    it('a slipped digit is caught by how far a trailer can go', async () => {
      const trailerId = await aTrailer();
      await must(read(trailerId, 12_000, addDays(TODAY, -2)));
      expect(await refusedFields(read(trailerId, 121_000, TODAY))).toEqual({
        shownKm: expect.stringContaining('farther than any trailer goes'),
      });
    });

    it('a reading is mended against its neighbors, and one the others lean on is not taken back', async () => {
      const trailerId = await aTrailer();
      await must(read(trailerId, 1_000, addDays(TODAY, -20)));
      const { readingId } = await must(read(trailerId, 5, addDays(TODAY, -10), { kind: 'replaced' }));
      await must(read(trailerId, 60, TODAY));
      const mend = (more: object) =>
        service.get(CorrectReading).run(yard.as('hand'), { trailerId, readingId, ...more } as never);
      expect(await refusedFields(mend({ neverTaken: true }))).toEqual({
        neverTaken: expect.stringContaining(`The reading of ${TODAY} would not fit`),
      });
      expect(await refusedFields(mend({ takenOn: addDays(TODAY, -10), shownKm: km(70), kind: 'replaced' }))).toEqual({
        shownKm: expect.stringContaining('does not fit the reading of'),
      });
      await must(mend({ takenOn: addDays(TODAY, -10), shownKm: km(15), kind: 'replaced' }));
      expect((await kept(trailerId)).use.totalKm).toBeCloseTo(45, 6);
      expect(await refusal(mend({ neverTaken: true }))).toEqual({ kind: 'not-found', what: 'reading' });
      expect(await yard.inYard((tx) => new ReadingStore().history(tx, trailerId))).toHaveLength(4);
    });
  });
});
