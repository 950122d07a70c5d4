import { z } from 'zod';
import type { Working } from '../../rules/explain/working.js';
import type { Limit } from '../../rules/load/limit.js';
import type { LoadCheck } from '../../rules/load/load-check.js';
import { answer, answerOrNull } from './values.js';

/** One rated number. */
export const limit = z.object({
  kind: z.string().describe('What it rates.'),
  subject: z.string().nullable().describe('Which one, where there are several.'),
  limitN: answer('As a force, N'),
  origin: z.string().describe('Where it comes from.'),
});

export function limitShown({ kind, subject, limitN, origin }: Limit): z.input<typeof limit> {
  return { kind, subject, limitN, origin };
}

const known = z.union([z.number(), z.string()]).describe('A number in the unit beside it, or a day.');

/** How a number was worked out. */
export const workings = z
  .array(
    z.object({
      of: z.string().describe('Which number.'),
      subject: z.string().nullable().describe('Which one, where there are several.'),
      value: known,
      unit: z.string().describe('Its unit.'),
      formula: z.string().describe('In words.'),
      source: z.string().describe('Where the formula comes from.'),
      inputs: z
        .array(
          z.object({
            name: z.string().describe('What went in.'),
            subject: z.string().nullable().describe('Which one.'),
            value: known,
            unit: z.string().describe('Its unit.'),
            basis: z.string().describe('How it is known.'),
            sway: answer('How far the answer moves when this alone is off by its doubt'),
          }),
        )
        .describe('What went into it.'),
      mattersMost: z.int().nullable().describe('Place among the inputs of the one whose doubt moves it furthest.'),
    }),
  )
  .describe('How it was worked out.');

export function workingsShown(all: readonly Working[]): z.input<typeof workings> {
  return all.map((one) => ({ ...one, inputs: one.inputs.map((input) => ({ ...input })) }));
}

const force = z.object({ leastN: answer('At least, N'), mostN: answer('At most, N') });

/** One load against every limit. */
export const loadCheck = {
  grossKg: answerOrNull('Trailer and load, kg'),
  cargoKg: answerOrNull('Load, kg'),
  tongueN: answerOrNull('On the coupler, N'),
  tongueShare: answerOrNull('Of the gross'),
  tongueRangeN: force.nullable().describe('Between what it lies, where torsion axles leave it open.'),
  tongueBand: z
    .object({
      low: answer('Least share of the gross'),
      high: answerOrNull('Most'),
      standing: z.enum(['inside', 'low', 'high', 'unknown']).describe('Where the share stands.'),
    })
    .describe('What the kind of hitch asks of the tongue.'),
  axleGroupN: answerOrNull('On the axles together, N'),
  axleN: z.array(z.number()).nullable().describe('On each axle from the front, N.'),
  axleRangeN: z.array(force).nullable().describe('Between what each lies, where torsion axles leave it open.'),
  method: z.enum(['scale', 'statics', 'range', 'bound']).nullable().describe('How tongue and axles became known.'),
  comparisons: z
    .array(
      z.object({
        limit,
        loadN: answer('Load on it, N'),
        marginN: answer('Limit less load, N; below nothing when over'),
        measured: z.boolean().describe('Whether every weight in the sum was weighed.'),
        standing: z.enum(['inside', 'near', 'over']).describe('`near`: weigh it first.'),
      }),
    )
    .describe('Each limit that could be held against it.'),
  unknowns: z
    .array(
      z.object({
        lacks: z.string().describe('What nobody gave.'),
        stops: z.string().describe('What that stops.'),
        subject: z.string().nullable().describe('Where, if in one place.'),
      }),
    )
    .describe('What could not be said.'),
};

export function loadCheckShown(check: LoadCheck) {
  const { grossKg, cargoKg, tongueN, tongueShare, tongueRangeN, tongueBand, axleGroupN, axleN, axleRangeN } = check;
  return {
    ...{ grossKg, cargoKg, tongueN, tongueShare, tongueRangeN, tongueBand, axleGroupN, method: check.method },
    ...{ axleN: axleN === null ? null : [...axleN], axleRangeN: axleRangeN === null ? null : [...axleRangeN] },
    comparisons: check.comparisons.map((one) => ({ ...one, limit: limitShown(one.limit) })),
    unknowns: check.unknowns.map(({ lacks, stops, subject }) => ({ lacks, stops, subject: subject ?? null })),
  };
}
