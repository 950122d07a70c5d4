import { z } from 'zod';
import { parseDateCode } from '../../rules/tire/date-code.js';
import { loadIndexCapacity } from '../../rules/tire/load-index.js';
import { tireAge } from '../../rules/tire/tire-age.js';
import { computation } from './computation.js';
import { answerOrNull, civilDay, plain, words } from './values.js';

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
    source: 'ETRTO and TRA load index table.',
    input: z.object({ loadIndex: plain('Load index', z.int().min(0).max(279)) }),
    output: z.object({ massKg: answerOrNull('Carried by one tire, kg') }),
    example: { loadIndex: 124 },
    compute: ({ loadIndex }) => ({ massKg: loadIndexCapacity(loadIndex) }),
  }),
];
