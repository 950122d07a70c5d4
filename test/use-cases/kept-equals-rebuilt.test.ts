import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/rules/assess.js';
import { addDays, type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { yardDaysFrom } from '../../src/rules/inspection/yard-days.js';
import { km, miles } from '../../src/rules/units/distance.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';
import { ResultStore } from '../../src/store/result-store.js';
import { RebuildResults } from '../../src/use-cases/assessments/rebuild-results.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { OpenHold } from '../../src/use-cases/holds/open-hold.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { AddMachine } from '../../src/use-cases/machines/add-machine.js';
import { ReplaceMachine } from '../../src/use-cases/machines/replace-machine.js';
import { WakeTrailers } from '../../src/use-cases/notices/wake-trailers.js';
import { RecordReading } from '../../src/use-cases/readings/record-reading.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { FitPart } from '../../src/use-cases/trailers/fit-part.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { SetYardSettings } from '../../src/use-cases/yard/set-yard-settings.js';
import { aBuild, aTire, cargo, tiresOn } from '../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../support/yard.js';

const FIRST = day('2025-01-06');
const LAST = day('2025-07-15');

describe('what is kept about every trailer', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerIds: readonly string[];

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ checkKinds: DEFAULT_CHECK_KINDS });
    await halfAYear();
  });
  afterAll(() => service.close());

  /** Three trailers through half a year, each fact entered on its own day, and the timer's work on some mornings. */
  async function halfAYear(): Promise<void> {
    const shop = (on: CivilDate) => yard.as('shop', on);
    const add = async (yardNumber: string, plate: number) =>
      must(
        service.get(AddTrailer).run(shop(FIRST), {
          yardNumber,
          build: aBuild({ plate }),
          builtSince: '2022-01-01',
          registrationExpiresOn: day('2025-07-01'),
          parts: [
            ...tiresOn(2, { dateCode: '2619', fittedOn: day('2022-01-01') }),
            { kind: 'deck', fittedOn: day('2022-01-01') },
          ],
        }),
      ).then(({ trailerId }) => trailerId);
    const [one, two, three] = [await add('R-1', 14_000), await add('R-2', 9_990), await add('R-3', 14_000)];
    trailerIds = [one, two, three];
    const { machineId } = await must(
      service.get(AddMachine).run(shop(FIRST), { name: 'Skid steer', massKg: lb(7_200), basis: 'weighed' }),
    );
    const dates = Array.from({ length: 20 }, (_, week) => addDays(FIRST, 7 * week));
    for (const [week, on] of dates.entries()) {
      await must(service.get(WakeTrailers).run({ ...yard.as('owner', on), door: 'job' }));
      const trailerId = [one, two, three][week % 3] ?? one;
      await must(
        service.get(RecordTrip).run(yard.as('hand', on), {
          trailerId,
          startedOn: on,
          endedOn: on,
          distanceKm: miles(40 + week),
          machineId,
          roads: week % 4 === 0 ? ['salt'] : null,
          load: { cargo: [cargo('chains', 120)] },
        }),
      );
      if (week === 4 || week === 12) {
        await must(
          service
            .get(RecordReading)
            .run(yard.as('hand', on), { trailerId: one, takenOn: on, shownKm: km(1_000 + 400 * week) }),
        );
      }
      if (week === 6) {
        const kinds = ['hub-repack', 'annual-inspection', 'wheel-nut-torque'];
        for (const code of kinds) {
          await must(
            service.get(RecordCheck).run(shop(on), {
              trailerId: two,
              checkKindId: yard.checkKindId(code),
              doneOn: on,
              outcome: 'pass',
              proofOnTrailer: code === 'annual-inspection' ? false : null,
            }),
          );
        }
      }
      if (week === 8)
        await must(service.get(FitPart).run(shop(on), { trailerId: two, ...aTire('1L', { fittedOn: on }) }));
      // What this deck tells changes what is expected of the other two.
      if (week === 9) {
        const deck = { trailerId: two, kind: 'deck' as const, fittedOn: on, replacedFor: 'worn-out' };
        await must(service.get(FitPart).run(shop(on), deck));
      }
      if (week === 10) {
        await must(
          service.get(RecordCheck).run(yard.as('hand', on), {
            trailerId: three,
            checkKindId: yard.checkKindId('tire-pressure'),
            doneOn: on,
            lines: [
              {
                code: 'pressure',
                position: '1L',
                result: null,
                measured: { quantity: 'cold-pressure-kpa', value: psi(45) },
              },
            ],
          }),
        );
      }
      if (week === 13) {
        await must(
          service.get(ReplaceMachine).run(shop(on), {
            machineId,
            replacedOn: on,
            by: { name: 'Track loader', massKg: lb(9_920), basis: 'stated' },
          }),
        );
        await must(service.get(OpenHold).run(yard.as('hand', on), { trailerId: three, reason: 'ramp bent' }));
      }
      if (week === 15)
        await must(service.get(SetYardSettings).run(yard.as('owner', on), { policy: { tireAgeLimitYears: 5 } }));
    }
    const on = dates.at(-1) ?? FIRST;
    await must(
      service.get(BookJob).run(yard.as('hand', on), {
        name: 'Hollow Rd',
        trailerId: two,
        startsOn: day('2025-07-20'),
        endsOn: day('2025-07-22'),
        distanceKm: miles(140),
        machineId,
      }),
    );
    await must(service.get(UpdateTrailer).run(yard.as('owner', on), { trailerId: three, status: 'sold' }));
    await must(service.get(WakeTrailers).run({ ...yard.as('owner', LAST), door: 'job' }));
  }

  const everything = async () => ({
    results: await yard.inYard((tx) => new ResultStore().findMany(tx, trailerIds)),
    due: await service.sql('select * from due_result order by trailer_id, check_kind_id'),
    flags: await service.sql('select * from flag_result order by trailer_id, key'),
    trailers: await service.sql(
      'select trailer_id, wake_on, readiness, stop_flags, limit_flags, watch_flags, overdue, next_due_on, payload_kg, trailer_class from trailer_result order by trailer_id',
    ),
  });

  /** A kept answer holds until its wake day but for `asOf`, and for yard days that have passed since. */
  const readOn = (assessment: Assessment, on: CivilDate) => ({
    ...assessment,
    asOf: on,
    due: assessment.due.map((due) => ({ ...due, yardDays: yardDaysFrom(due.yardDays, addDays(on, 1)) })),
  });

  it('holds something of every sort, or the comparison would say nothing', async () => {
    const { results, due, flags } = await everything();
    const all = [...results.values()];
    expect(new Set(all.map((one) => one.readiness)).size).toBeGreaterThan(1);
    expect(all.some((one) => one.readiness === 'gone')).toBe(true);
    expect(due.length).toBeGreaterThan(20);
    const rules = (flags as { rule: string }[]).map(({ rule }) => rule);
    expect(rules).toEqual(expect.arrayContaining(['tire-age', 'outgrown', 'missing-proof']));
  });

  it('reads the same when it is thrown away and worked out again from the facts', async () => {
    const kept = await everything();
    // Somebody has meddled: one trailer says it is fine, another has no flags at all.
    await service.sql(
      `update trailer_result set readiness = 'ready', overdue = 0, assessment = '{"flags": [], "due": []}'`,
    );
    await service.sql('delete from flag_result');
    await service.sql('delete from due_result where code = $1', ['hub-repack']);
    expect(await must(service.get(RebuildResults).run(yard.as('owner', LAST)))).toEqual({ rebuilt: 3 });

    const rebuilt = await everything();
    expect([...rebuilt.results.keys()].sort()).toEqual([...kept.results.keys()].sort());
    for (const [trailerId, before] of kept.results) {
      const after = rebuilt.results.get(trailerId);
      expect(after && readOn(after, LAST)).toEqual(readOn(before, LAST));
    }
    expect(rebuilt.flags).toEqual(kept.flags);
    expect(rebuilt.trailers).toEqual(kept.trailers);
    const dates = (rows: readonly object[]) => rows.map((row) => ({ ...row, due: null }));
    expect(dates(rebuilt.due)).toEqual(dates(kept.due));
  });

  it('a second rebuild on the same day changes nothing at all', async () => {
    const before = await everything();
    await must(service.get(RebuildResults).run(yard.as('owner', LAST)));
    expect(await everything()).toEqual(before);
  });
});
