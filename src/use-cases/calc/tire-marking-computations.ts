import { z } from 'zod';
import { dayNumber } from '../../rules/calendar/day-number.js';
import type { TireMarks } from '../../rules/facts/part.js';
import { temperatureWhen } from '../../rules/tire/air.js';
import { dateCodeOf, parseDateCode } from '../../rules/tire/date-code.js';
import { pairPressure } from '../../rules/tire/dual-pair.js';
import { firstDayPastAge } from '../../rules/tire/tire-age.js';
import { TIRE_TRAITS, tireMismatches } from '../../rules/tire/tire-mismatch.js';
import { parseTireNumber } from '../../rules/tire/tire-number.js';
import { nominalDiameter, readTireSize } from '../../rules/tire/tire-size.js';
import { celsius } from '../../rules/units/temperature.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, length, plain, pressure, words } from './values.js';

const dayOrNull = (what: string) => z.string().nullable().describe(`${what}; null where it cannot be said.`);
const GAUGE = z.number().min(0).max(2_000);
const KINDS = ['ST', 'LT', 'passenger', 'truck'] as const;

export const TIRE_MARKING_COMPUTATIONS = [
  computation({
    name: 'tire-number',
    about: 'What a whole tire identification number says: plant, maker, and the week the tire was made in.',
    source: '49 CFR 574.5: thirteen symbols since 13 April 2025, up to twelve before, seven on a retread.',
    input: z.object({
      number: words('As on the sidewall, with or without the letters DOT'),
      asOf: civilDay('Day of reading it'),
    }),
    output: z.object({
      form: z.enum(['present', 'retread', 'old', 'before-2000']).nullable().describe('Null where it was refused.'),
      plant: z.string().nullable().describe('Plant.'),
      maker: z.string().nullable().describe('Maker; only the present form tells it.'),
      dateCode: z.string().nullable().describe('Its last digits, week and year.'),
      madeFrom: dayOrNull('First day of its week'),
      madeTo: dayOrNull('Last day of its week'),
      years: z.array(z.int()).describe('Years it can mean; three before 2000, when one digit told the year.'),
      oldFormLapsed: z.boolean().describe('The old form with a date from when it was no longer lawful.'),
      refused: z.string().nullable().describe('Why it is no such number; null when it is one.'),
    }),
    example: { number: 'DOT 9X9ABCDEF2319', asOf: '2025-06-01' },
    compute: ({ number, asOf }) => {
      const read = parseTireNumber(number, asOf);
      const nothing = { form: null, plant: null, maker: null, dateCode: null, madeFrom: null, madeTo: null, years: [] };
      if (read.kind === 'refused') return { ...nothing, oldFormLapsed: false, refused: read.reason.kind };
      if (read.kind === 'before-2000') {
        const { plantCode: plant, dateDigits: dateCode, yearCandidates } = read;
        const told = { form: read.kind, plant, dateCode, years: [...yearCandidates] };
        return { ...nothing, ...told, oldFormLapsed: false, refused: null };
      }
      const { form, plantCode: plant, manufacturerCode: maker, date, warnings } = read;
      return {
        ...{ form, plant, maker, dateCode: date.code, madeFrom: date.madeFrom, madeTo: date.madeTo },
        ...{ years: [date.year], oldFormLapsed: warnings.includes('old-form-lapsed'), refused: null },
      };
    },
  }),
  computation({
    name: 'tire-week',
    about: 'The date code of a tire made on a day, and the day from which it is past an age limit.',
    source: '49 CFR 574.5 for the week. The limit is your own: no federal age limit exists.',
    input: z.object({
      madeOn: civilDay('Day it was made'),
      limitYears: plain('Age limit, years', z.number().min(0.5).max(30)),
    }),
    output: z.object({
      dateCode: z.string().describe('Four digits, week and year.'),
      pastLimitFrom: dayOrNull('First day on which it has reached the limit'),
    }),
    example: { madeOn: '2024-01-03', limitYears: 6 },
    compute: ({ madeOn, limitYears }) => {
      const dateCode = dateCodeOf(madeOn);
      const read = parseDateCode(dateCode, madeOn);
      return { dateCode, pastLimitFrom: read.kind === 'week' ? firstDayPastAge(read.madeFrom, limitYears) : null };
    },
  }),
  computation({
    name: 'tire-size',
    about: 'What a metric tire size says: width, height, construction, rim, and how far a new tire stands across.',
    source: 'Reading of the letters: common practice; the designation itself 49 CFR 571.139 S5.5.',
    input: z.object({ size: words('Size as on the sidewall') }),
    output: z.object({
      letters: z.enum(['P', 'LT', 'ST']).nullable().describe('Null where it has none, or cannot be read.'),
      widthM: answerOrNull('Width, m'),
      aspect: answerOrNull('Height of the sidewall over the width'),
      construction: z.enum(['radial', 'diagonal', 'belted']).nullable().describe('Null where it cannot be read.'),
      rimM: answerOrNull('Rim, m'),
      acrossM: answerOrNull('Across, new and not loaded, m'),
    }),
    example: { size: 'ST235/80R16' },
    compute: ({ size }) => {
      const read = readTireSize(size);
      if (read === null)
        return { letters: null, widthM: null, aspect: null, construction: null, rimM: null, acrossM: null };
      return { ...read, acrossM: nominalDiameter(read) };
    },
  }),
  computation({
    name: 'tire-set',
    about: 'In what the tires of one axle, or of a dual pair, do not match.',
    source: 'Same size, construction and load range on an axle: common practice, no source.',
    input: z.object({
      tires: z
        .array(
          z.strictObject({
            position: words('Where it is, such as 1L'),
            size: words('Size').nullable(),
            kind: z.enum(KINDS).nullable().describe('What it was made for.'),
            loadRange: words('Load range, a letter').nullable(),
            dateCode: words('Four digits, week and year').nullable(),
          }),
        )
        .min(1)
        .max(24)
        .describe('Each tire; what nobody knows null.'),
      asOf: civilDay('Day of asking'),
    }),
    output: z.object({
      mismatches: z
        .array(
          z.object({
            trait: z.enum(TIRE_TRAITS).describe('In what.'),
            positions: z.array(z.string()).describe('Where.'),
            marked: z.array(z.string()).describe('What each is marked.'),
          }),
        )
        .describe('None when they match as far as is known.'),
    }),
    example: {
      tires: [
        { position: '1L', size: 'ST235/80R16', kind: 'ST' as const, loadRange: 'E', dateCode: '1519' },
        { position: '1R', size: 'ST235/80R16', kind: 'ST' as const, loadRange: 'G', dateCode: '2223' },
      ],
      asOf: '2025-11-20',
    },
    compute: ({ tires, asOf }) => {
      const fitted = tires.map(({ position, ...told }) => {
        const code = told.dateCode === null ? null : parseDateCode(told.dateCode, asOf);
        const marks: TireMarks = { ...UNKNOWN_MARKS, ...told };
        return { position, marks, madeFrom: code?.kind === 'week' ? dayNumber(code.madeFrom) : null };
      });
      const mismatches = tireMismatches(fitted).map(({ trait, positions, marked }) => ({
        ...{ trait, positions: [...positions], marked: [...marked] },
      }));
      return { mismatches };
    },
  }),
  computation({
    name: 'tire-temperature-at-pressure',
    about: 'How warm the air of a tire has become when its gauge shows more, no air let in or out.',
    source: 'Ideal gas law at constant volume; ISO 2533 standard atmosphere for the height.',
    input: z.object({
      gaugeKpa: pressure('Gauge pressure as read', GAUGE),
      airC: plain('Its air when read, degrees C', z.number().min(-90).max(200)).transform(celsius),
      heightM: length('Above the sea', z.number().min(-500).max(6_000)),
      thenKpa: pressure('Gauge pressure then', GAUGE),
    }),
    output: z.object({ airC: answer('Its air then, degrees C') }),
    example: { gaugeKpa: 482.633, airC: 21.111, heightM: 0, thenKpa: 579.16 },
    compute: ({ thenKpa, ...read }) => ({ airC: temperatureWhen(read, thenKpa) }),
  }),
  computation({
    name: 'dual-pair-pressure',
    about: 'The cold pressure at which a dual pair is taken: the softer tire lets its mate carry the more.',
    source: 'Common practice, no source.',
    input: z.object({
      innerKpa: pressure('Inner tire', GAUGE).nullable(),
      outerKpa: pressure('Outer tire', GAUGE).nullable(),
    }),
    output: z.object({ coldKpa: answerOrNull('Of the pair, kPa') }),
    example: { innerKpa: 551.581, outerKpa: 482.633 },
    compute: ({ innerKpa, outerKpa }) => ({ coldKpa: pairPressure(innerKpa, outerKpa) }),
  }),
];

const UNKNOWN_MARKS: TireMarks = {
  ...{ size: null, kind: null, maxLoadSingleKg: null, maxColdPressureKpa: null },
  ...{ loadIndexSingle: null, loadIndexDual: null, maxLoadDualKg: null },
  ...{ loadRange: null, speedSymbol: null, dateCode: null },
};
