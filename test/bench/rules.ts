import { assess } from '../../src/rules/assess.js';
import { dayNumber } from '../../src/rules/calendar/day-number.js';
import { fit } from '../../src/rules/fit/fit.js';
import { trailerOn } from '../../src/rules/history/trailer-on.js';
import { scheduleOn } from '../../src/rules/inspection/due.js';
import { useSoFar } from '../../src/rules/inspection/use-so-far.js';
import { checkLoad } from '../../src/rules/load/load-check.js';
import { TODAY, workedTrailer } from './yard.js';

/**
 * How long the rules take, in this run on this machine: medians, and how they stand to each other and to a plain sum over
 * the same trips, which is what no answer about them could do without. Printed, never asserted.
 */
interface Timed {
  readonly name: string;
  readonly work: () => unknown;
}

const ROUNDS = 300;
const WARM_UP = 100;

/** Middle of many rounds, in milliseconds; the rounds of all go in turn, so that a busy moment hits each alike. */
function medians(all: readonly Timed[]): readonly number[] {
  const taken = all.map(() => [] as number[]);
  for (let round = 0; round < WARM_UP + ROUNDS; round++) {
    all.forEach(({ work }, place) => {
      const start = performance.now();
      work();
      if (round >= WARM_UP) taken[place]?.push(performance.now() - start);
    });
  }
  return taken.map((times) => times.sort((a, b) => a - b)[ROUNDS / 2] as number);
}

const thousand = workedTrailer(1_000);
const hundred = workedTrailer(100);
const trailer = trailerOn(thousand, TODAY);
const use = useSoFar(trailer);
const limits = trailer.limitsOn(TODAY);
const lastTrip = trailer.trips.at(-1);
const firstJob = trailer.jobs[0];
if (limits === null || lastTrip === undefined || firstJob === undefined)
  throw new Error('the sample trailer lost its facts');

let sink = 0;
const timed: readonly Timed[] = [
  {
    name: 'a plain sum over 1,000 trips',
    work: () => {
      for (const one of thousand.trips) sink += dayNumber(one.startedOn) + (one.distanceKm ?? 0);
    },
  },
  { name: 'assess, 1,000 trips and 10 parts', work: () => assess(thousand, TODAY) },
  { name: 'assess, 100 trips and 10 parts', work: () => assess(hundred, TODAY) },
  { name: '  of it: facts in the order of time', work: () => trailerOn(thousand, TODAY) },
  { name: '  of it: use behind and ahead', work: () => useSoFar(trailer) },
  { name: '  of it: when each check falls due', work: () => scheduleOn(trailer, use) },
  { name: 'fit of one job', work: () => fit(thousand, firstJob, TODAY) },
  { name: 'one load check', work: () => checkLoad(limits, lastTrip.load, thousand.policy) },
];

const found = medians(timed);
const sum = found[0] as number;
for (const [place, { name }] of timed.entries()) {
  const taken = found[place] as number;
  console.log(
    `${name.padEnd(40)} ${(taken * 1_000).toFixed(1).padStart(9)} µs  ${(taken / sum).toFixed(1).padStart(8)} times the sum`,
  );
}
// Used, so that nothing of the sum may be left out.
if (!Number.isFinite(sink)) throw new Error('the sum has no end');
