import { day } from '../../src/rules/calendar/civil-date.js';
import { dayFromNumber, dayNumber } from '../../src/rules/calendar/day-number.js';
import type { CheckRecord } from '../../src/rules/facts/check.js';
import type { Part } from '../../src/rules/facts/part.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import type { Job, Trip } from '../../src/rules/facts/use.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { miles } from '../../src/rules/units/distance.js';
import { inch } from '../../src/rules/units/length.js';
import { axle, build, item, load, tires } from '../rules/sample-facts.js';
import { done, facts, job, kind, machine, trip } from '../rules/sample-trailer.js';

export const TODAY = day('2026-03-02');

const onDay = (before: number) => dayFromNumber(dayNumber(TODAY) - before);

/** A trailer with so many trips over four years, ten parts, every starting check recorded, and three jobs booked. */
export function workedTrailer(tripCount: number): TrailerFacts {
  const trips: Trip[] = Array.from({ length: tripCount }, (_, place) => {
    const before = Math.floor((1_460 * (tripCount - place)) / tripCount);
    return trip(onDay(before), 12 + ((place * 37) % 55), {
      id: `trip-${place}`,
      machineId: 'loader',
      roads: place % 9 === 0 ? ['gravel'] : place % 11 === 0 ? null : [],
      jobId: place % 6 === 0 ? `job-${place}` : null,
      load: load({
        cargo: [item('loader', 6_500 + ((place * 53) % 1_800), { machineId: 'loader' }), item('chains', 160)],
        balancePointM: inch(168),
      }),
    });
  });
  const others: Part[] = (['hub-bearings', 'brake-set', 'deck', 'coupler', 'jack', 'battery'] as const).map((of) => ({
    ...(tires(1)[0] as Part),
    id: of,
    kind: of,
    position: of === 'hub-bearings' || of === 'brake-set' ? '1L' : null,
    fittedOn: onDay(900),
    tire: null,
  }));
  const checkKinds = [
    ...DEFAULT_CHECK_KINDS.map((one) => ({ ...one, id: `kind-${one.code}` })),
    kind('every-forty-trips', [{ kind: 'trips', every: 40 }]),
  ];
  const checkRecords: CheckRecord[] = checkKinds.flatMap((one, place) =>
    [400, 250, 40].map((before) => done(one.code, onDay(before + place))),
  );
  const jobs: Job[] = [4, 12, 25].map((ahead) =>
    job(onDay(-ahead), { endsOn: onDay(-ahead - 2), distanceKm: miles(180), machineId: 'loader' }),
  );
  return facts({
    builds: [
      build({
        axles: [1, 2].map((number) =>
          axle(number, 7_000, {
            brakes: 'electric',
            lubricant: 'grease',
            fromCouplerM: inch(number === 1 ? 162 : 198),
          }),
        ),
      }),
    ],
    parts: [...tires(2), ...others],
    trips,
    jobs,
    checkKinds,
    checkRecords,
    machines: [machine('loader', 7_400)],
  });
}
