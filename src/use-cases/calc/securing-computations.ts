import { z } from 'zod';
import { checkTieDowns, securingForces, tieDownNeed } from '../../rules/load/tie-downs.js';
import {
  CHAIN_GRADES,
  CHAIN_SIZES,
  chainWorkingLoad,
  WIRE_ROPE_SIZES,
  weakestOf,
  webbingWorkingLoad,
  wireRopeWorkingLoad,
} from '../../rules/load/working-load.js';
import { computation } from './computation.js';
import { answer, answerOrNull, count, kilograms, length } from './values.js';

const SECURING = '49 CFR 393.102, 393.106, 393.110 and 393.130; check your state.';
const LENGTH = z.number().gt(0).max(100);

export const SECURING_COMPUTATIONS = [
  computation({
    name: 'tie-downs',
    about: 'How many tie-downs a cargo needs, how strong, and whether those in use are enough.',
    source: SECURING,
    input: z.object({
      massKg: kilograms('All of the cargo'),
      lengthM: length('Of the longest thing aboard', LENGTH).nullable(),
      blockedAhead: z.boolean().describe('Whether something firm stands ahead of it.'),
      machineKg: kilograms('The heaviest single machine on wheels or tracks').nullable(),
      used: z
        .array(
          z.strictObject({
            count: count('How many of this kind'),
            workingLoadKg: kilograms('Working load limit of one, the least of its parts and anchors').nullable(),
            way: z
              .enum(['direct', 'around', 'over'])
              .describe('To the cargo, round it and back to the same side, or over it to the other side.'),
          }),
        )
        .max(50)
        .describe('Those in use.'),
    }),
    output: z.object({
      neededCount: answer('Least number'),
      neededKg: answer('What they must count for together, kg'),
      because: z.enum(['heavy-machine', 'length', 'length-unknown']).describe('What sets the number.'),
      count: answer('How many are in use'),
      countsForKg: answer('What those in use count for, kg'),
      unrated: answer('How many of them have no known limit'),
      standing: z.enum(['enough', 'short', 'unrated']).describe('Whether they are enough.'),
      forwardN: answer('What they must withstand forward, N'),
      rearwardN: answer('And rearward, N'),
      sidewaysN: answer('And to either side, N'),
    }),
    example: {
      massKg: 5443.1084,
      lengthM: null,
      blockedAhead: false,
      machineKg: 5443.1084,
      used: [{ count: 4, workingLoadKg: 2993.7096, way: 'direct' as const }],
    },
    compute: ({ used, ...tied }) => {
      const { need, workingLoadKg, ...found } = checkTieDowns(tieDownNeed(tied), used);
      return {
        neededCount: need.count,
        neededKg: need.workingLoadKg,
        because: need.because,
        ...found,
        countsForKg: workingLoadKg,
        ...securingForces(tied.massKg),
      };
    },
  }),
  computation({
    name: 'chain-working-load',
    about: 'What a chain of a size and grade may hold where its maker marks no limit.',
    source: 'Tables of 49 CFR 393.108; an unmarked chain counts as grade 30.',
    input: z.object({
      size: z.enum(CHAIN_SIZES).describe('Nominal size as stamped, inches.'),
      grade: z.enum(CHAIN_GRADES).nullable().describe('Null for an unmarked chain.'),
    }),
    output: z.object({ workingLoadKg: answerOrNull('Working load limit, kg') }),
    example: { size: '5/16' as const, grade: 'grade80' as const },
    compute: ({ size, grade }) => ({ workingLoadKg: chainWorkingLoad(size, grade) }),
  }),
  computation({
    name: 'webbing-working-load',
    about: 'What an unmarked web strap of a width may hold.',
    source: 'Table of 49 CFR 393.108; between two widths the narrower row.',
    input: z.object({ widthM: length('Width of the webbing', z.number().gt(0).max(1)) }),
    output: z.object({ workingLoadKg: answerOrNull('Working load limit, kg') }),
    example: { widthM: 0.1016 },
    compute: ({ widthM }) => ({ workingLoadKg: webbingWorkingLoad(widthM) }),
  }),
  computation({
    name: 'wire-rope-working-load',
    about: 'What an unmarked wire rope of a size may hold.',
    source: 'Table of 49 CFR 393.108, 6 × 37 with a fibre core.',
    input: z.object({ size: z.enum(WIRE_ROPE_SIZES).describe('Nominal size, inches.') }),
    output: z.object({ workingLoadKg: answer('Working load limit, kg') }),
    example: { size: '1/2' as const },
    compute: ({ size }) => ({ workingLoadKg: wireRopeWorkingLoad(size) }),
  }),
  computation({
    name: 'tie-down-working-load',
    about: 'What a tie-down may hold as a whole: the least of its parts, tensioner and anchor points included.',
    source: '49 CFR 393.108(a).',
    input: z.object({
      parts: z
        .array(z.strictObject({ workingLoadKg: kilograms('Its working load limit').nullable() }))
        .min(1)
        .max(50)
        .describe('Every part; null where nobody knows its limit.'),
    }),
    output: z.object({ workingLoadKg: answerOrNull('Working load limit, kg') }),
    example: { parts: [{ workingLoadKg: 2131.8842 }, { workingLoadKg: 1814.3695 }, { workingLoadKg: 2267.9619 }] },
    compute: ({ parts }) => ({ workingLoadKg: weakestOf(parts.map((part) => part.workingLoadKg)) }),
  }),
];
