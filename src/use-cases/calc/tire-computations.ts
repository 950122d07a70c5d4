import { z } from 'zod';
import type { TireMarks } from '../../rules/facts/part.js';
import { pressureWhen } from '../../rules/tire/air.js';
import { parseDateCode } from '../../rules/tire/date-code.js';
import { loadIndexCapacity } from '../../rules/tire/load-index.js';
import { estimateLoad, estimatePressure } from '../../rules/tire/load-law.js';
import { speedOfSymbol } from '../../rules/tire/speed-symbol.js';
import { tireAge } from '../../rules/tire/tire-age.js';
import { pressureNeeded, tireCapacity } from '../../rules/tire/tire-capacity.js';
import { coldFromWarm } from '../../rules/tire/warm-reading.js';
import { kmPerHour } from '../../rules/units/speed.js';
import { celsius } from '../../rules/units/temperature.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, kilograms, length, plain, pressure, words } from './values.js';

const TIRE = z.object({
  size: words('Size as on the sidewall'),
  kind: z.enum(['ST', 'LT', 'passenger', 'truck']).describe('What it was made for.'),
  fullLoadKg: kilograms('Greatest load, single'),
  fullKpa: pressure('Cold pressure at which it holds', z.number().min(1).max(2_000)),
});

const EXAMPLE_TIRE = { size: 'ST235/80R16', kind: 'ST', fullLoadKg: 1551.286, fullKpa: 551.581 } as const;

export const TIRE_COMPUTATIONS = [
  computation({
    name: 'tire-date-code',
    about: 'The week a tire was made in, from the last four digits of its identification number.',
    source: '49 CFR 574.5: week 01 begins on the first Sunday of the year; the days before belong to the year before.',
    input: z.object({ dateCode: words('Four digits, week and year'), asOf: civilDay('Day of reading it') }),
    output: z.object({
      madeFrom: z.string().nullable().describe('First day of its week; null where it was refused.'),
      madeTo: z.string().nullable().describe('Last day of its week; null where it was refused.'),
      refused: z.string().nullable().describe('Why it is no date code; null when it is one.'),
    }),
    example: { dateCode: '1519', asOf: '2025-11-20' },
    compute: ({ dateCode, asOf }) => {
      const read = parseDateCode(dateCode, asOf);
      return read.kind === 'week'
        ? { madeFrom: read.madeFrom, madeTo: read.madeTo, refused: null }
        : { madeFrom: null, madeTo: null, refused: read.reason.kind };
    },
  }),
  computation({
    name: 'tire-age',
    about: 'Completed years and months since the first day of the week of a tire’s date code.',
    source: '49 CFR 574.5 for the week; completed months by the calendar.',
    input: z.object({ dateCode: words('Four digits, week and year'), asOf: civilDay('Day of asking') }),
    output: z.object({ years: answerOrNull('Completed years'), months: answerOrNull('Completed months beyond those') }),
    example: { dateCode: '1519', asOf: '2025-11-20' },
    compute: ({ dateCode, asOf }) => {
      const age = tireAge(dateCode, asOf);
      return { years: age?.years ?? null, months: age?.months ?? null };
    },
  }),
  computation({
    name: 'load-index',
    about: 'The mass a tire of a load index carries at its speed symbol’s speed.',
    source: 'UN Regulations 30 and 54, annex 4: list of load-capacity indices.',
    input: z.object({ loadIndex: plain('Load index', z.int().min(0).max(279)) }),
    output: z.object({ massKg: answerOrNull('Carried by one tire, kg') }),
    example: { loadIndex: 124 },
    compute: ({ loadIndex }) => ({ massKg: loadIndexCapacity(loadIndex) }),
  }),
  computation({
    name: 'speed-symbol',
    about: 'The speed up to which a tire of a speed symbol carries its load.',
    source: 'Speed symbols of UN Regulations No. 30 and No. 54; A1 to A8 from memory, unverified.',
    input: z.object({ symbol: words('Letter beside the load index') }),
    output: z.object({ kmPerHour: answerOrNull('Greatest speed, km/h') }),
    example: { symbol: 'L' },
    compute: ({ symbol }) => ({ kmPerHour: speedOfSymbol(symbol) }),
  }),
  computation({
    name: 'tire-load-at-pressure',
    about: 'What a tire carries at a cold pressure: by the published row, and beside it by the law as an estimate.',
    source: 'Published ST rows; load = full load × (pressure / full pressure)^n, an estimate and never a rating.',
    input: TIRE.extend({ coldKpa: pressure('Cold gauge pressure') }),
    output: z.object({
      carriesKg: answerOrNull('By the sidewall or a published row, kg'),
      estimateKg: answerOrNull('By the law, kg'),
      exponent: answerOrNull('n of the law'),
    }),
    example: { ...EXAMPLE_TIRE, coldKpa: 344.738 },
    compute: ({ coldKpa, ...given }) => {
      const marks = marksOf(given);
      const row = tireCapacity(marks, 'single', coldKpa);
      const law = estimateLoad(marks, 'single', coldKpa);
      return {
        carriesKg: row.kind === 'known' ? row.massKg : null,
        estimateKg: law.kind === 'estimate' ? law.massKg : null,
        exponent: law.kind === 'estimate' ? law.law.exponent : null,
      };
    },
  }),
  computation({
    name: 'tire-pressure-for-load',
    about: 'The cold pressure a load on one tire needs: by the published row, and beside it by the law as an estimate.',
    source:
      '49 CFR 393.75(i)(1) for the duty; published ST rows; the law is an estimate. What the plate asks comes first.',
    input: TIRE.extend({ loadKg: kilograms('Load on the tire') }),
    output: z.object({
      coldKpa: answerOrNull('By the lowest published row that carries it, or the sidewall, kPa'),
      estimateKpa: answerOrNull('By the law, kPa'),
    }),
    example: { ...EXAMPLE_TIRE, loadKg: 1088.622 },
    compute: ({ loadKg, ...given }) => {
      const marks = marksOf(given);
      const row = pressureNeeded(marks, 'single', loadKg);
      const law = estimatePressure(marks, 'single', loadKg);
      return {
        coldKpa: row.kind === 'known' ? row.coldKpa : null,
        estimateKpa: law.kind === 'estimate' ? law.coldKpa : null,
      };
    },
  }),
  computation({
    name: 'tire-pressure-at-temperature',
    about: 'What a tire reads when its air is warmer or colder, or higher above the sea, with no air let in or out.',
    source: 'Ideal gas law at constant volume; ISO 2533 standard atmosphere for the height.',
    input: z.object({
      gaugeKpa: pressure('Gauge pressure as read', z.number().min(0).max(2_000)),
      airC: plain('Its air when read, degrees C', z.number().min(-90).max(200)).transform(celsius),
      heightM: length('Above the sea when read', z.number().min(-500).max(6_000)),
      thenC: plain('Its air then, degrees C', z.number().min(-90).max(200)).transform(celsius),
      thenHeightM: length('Above the sea then', z.number().min(-500).max(6_000)),
    }),
    output: z.object({ gaugeKpa: answer('Gauge pressure then, kPa') }),
    example: { gaugeKpa: 551.581, airC: 21.111, heightM: 0, thenC: -6.667, thenHeightM: 0 },
    compute: ({ thenC, thenHeightM, ...read }) => ({ gaugeKpa: pressureWhen(read, thenC, { heightM: thenHeightM }) }),
  }),
  computation({
    name: 'tire-warm-reading',
    about: 'The most that a tire read warm can have cold. It never asks to let air out.',
    source: '49 CFR 393.75(i)(2), Table 1: the least that running adds at 41 to 55 mph.',
    input: z.object({
      measuredKpa: pressure('As read warm', z.number().min(0).max(2_000)),
      ratedKg: kilograms('Greatest load of the tire'),
      averageKmPerHour: plain('Average speed of the last hour, km/h', z.number().min(0).max(200)).transform(kmPerHour),
    }),
    output: z.object({
      coldAtMostKpa: answer('Cold, at most, kPa'),
      takenOffKpa: answer('Taken off, kPa'),
      basis: z.enum(['table', 'beyond-table', 'none']),
    }),
    example: { measuredKpa: 579.16, ratedKg: 1551.286, averageKmPerHour: 80.467 },
    compute: ({ measuredKpa, ratedKg, averageKmPerHour }) => coldFromWarm(measuredKpa, ratedKg, averageKmPerHour),
  }),
];

/** A tire with what its load, mounted single, rests on; the rest of its marks unknown. */
function marksOf({ size, kind, fullLoadKg, fullKpa }: z.output<typeof TIRE>): TireMarks {
  return {
    ...{ size, kind, maxLoadSingleKg: fullLoadKg, maxColdPressureKpa: fullKpa },
    ...{ loadIndexSingle: null, loadIndexDual: null, maxLoadDualKg: null },
    ...{ loadRange: null, speedSymbol: null, dateCode: null },
  };
}
