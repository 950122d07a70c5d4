import { z } from 'zod';
import { axleEquivalents, fourthPowerEquivalents } from '../../rules/fatigue/axle-equivalents.js';
import { minerSum, repeatsToFailure } from '../../rules/fatigue/miner.js';
import { DAMAGE_EXPONENT, loadFactor, ratedKm } from '../../rules/fatigue/trip-damage.js';
import { basquinCycles, constantAmplitudeLimit, cutOffLimit, weldCycles } from '../../rules/fatigue/weld.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, plain, road } from './values.js';

const CYCLES = z.number().gt(0).max(1e12);
const MPA = z.number().gt(0).max(2_000);

export const FATIGUE_COMPUTATIONS = [
  computation({
    name: 'weld-damage',
    about: 'How much of the life of a welded detail blocks of stress ranges use up, by the sum of their shares.',
    source: 'EN 1993-1-9, figure 7.1: slope 3, slope 5 below 5 million cycles, cut-off at 100 million; Miner.',
    input: z.object({
      category: plain('Detail category, MPa at 2 million cycles', z.number().min(30).max(160)),
      blocks: z
        .array(z.strictObject({ rangeMpa: plain('Stress range, MPa', MPA), cycles: plain('How often', CYCLES) }))
        .min(1)
        .max(1_000)
        .describe('Each stress range, and how often it came.'),
    }),
    output: z.object({
      damage: answer('1 is where failure is expected; tests have seen it from 0.3 to 3'),
      repeats: answerOrNull('How often all of it can be repeated'),
      cycles: z.array(z.number().nullable()).describe('Cycles to failure of each range; null below the cut-off.'),
      constantAmplitudeMpa: answer('Constant amplitude limit, MPa'),
      cutOffMpa: answer('Cut-off limit, MPa'),
    }),
    example: {
      category: 71,
      blocks: [
        { rangeMpa: 120, cycles: 20_000 },
        { rangeMpa: 60, cycles: 300_000 },
        { rangeMpa: 40, cycles: 1_500_000 },
        { rangeMpa: 25, cycles: 9_000_000 },
      ],
    },
    compute: ({ category, blocks }) => {
      const shares = blocks.map(({ rangeMpa, cycles }) => ({ cycles, toFailure: weldCycles(rangeMpa, category) }));
      return {
        damage: minerSum(shares),
        repeats: finite(repeatsToFailure(shares)),
        cycles: shares.map((one) => finite(one.toFailure)),
        constantAmplitudeMpa: constantAmplitudeLimit(category),
        cutOffMpa: cutOffLimit(category),
      };
    },
  }),
  computation({
    name: 'basquin-life',
    about: 'Cycles to failure of plain material whose stress amplitude and life follow a power law.',
    source: 'Basquin: N = ½ (σa / σf)^(1/b), amplitude and fatigue strength in one unit.',
    input: z.object({
      amplitudeMpa: plain('Stress amplitude, MPa', MPA),
      strengthMpa: plain('Fatigue strength coefficient, MPa', z.number().gt(0).max(5_000)),
      exponent: plain('Fatigue strength exponent, below 0', z.number().min(-0.5).max(-0.04)),
    }),
    output: z.object({ cycles: answer('Cycles to failure') }),
    example: { amplitudeMpa: 250, strengthMpa: 1_000, exponent: -0.1 },
    compute: ({ amplitudeMpa, strengthMpa, exponent }) => ({
      cycles: basquinCycles(amplitudeMpa, strengthMpa, exponent),
    }),
  }),
  computation({
    name: 'trip-damage',
    about: 'How many miles at the rating hurt a part as much as these at this load: for comparing use with use.',
    source:
      'Bearing 10/3: ISO 281. Weld 3: EN 1993-1-9. Road 4: AASHO rule of thumb. Spring 4.5: from memory, unverified.',
    input: z.object({
      distanceKm: road('Distance'),
      loadN: force('Load', z.number().min(0).max(1e6)),
      ratedN: force('What it is rated for', z.number().gt(100).max(1e7)),
      part: z.enum(['bearing', 'weld', 'spring', 'road']).describe('Which part.'),
    }),
    output: z.object({
      ratedKm: answer('Distance at the rating that does as much, km'),
      factor: answer('What each km counts for'),
      exponent: answer('Exponent of the part'),
    }),
    example: { distanceKm: 1_000, loadN: 34_251, ratedN: 31_137, part: 'bearing' as const },
    compute: ({ distanceKm, loadN, ratedN, part }) => ({
      ratedKm: ratedKm(distanceKm, loadN, ratedN, part),
      factor: loadFactor(loadN, ratedN, part),
      exponent: DAMAGE_EXPONENT[part],
    }),
  }),
  computation({
    name: 'axle-equivalents',
    about: 'How many standard 18,000 lb axles one pass of an axle group equals on flexible pavement.',
    source: 'AASHTO guide 1993, flexible pavement; the fourth power beside it. It says nothing of the trailer.',
    input: z.object({
      loadN: force('What the group carries', z.number().gt(1_000).max(1e6)),
      axles: plain('Axles in the group, 1 or 2', z.int().min(1).max(2)),
      structuralNumber: plain('Structural number of the pavement', z.number().min(1).max(6)),
      terminalServiceability: plain('Serviceability at which it is worn out', z.number().min(1.5).max(3)),
    }),
    output: z.object({
      equivalents: answer('Standard axles'),
      fourthPower: answer('By the fourth power, as a single axle'),
    }),
    example: { loadN: 133_446.65, axles: 1, structuralNumber: 3, terminalServiceability: 2.5 },
    compute: ({ loadN, axles, structuralNumber, terminalServiceability }) => ({
      equivalents: axleEquivalents(loadN, axles === 2 ? 2 : 1, { structuralNumber, terminalServiceability }),
      fourthPower: fourthPowerEquivalents(loadN),
    }),
  }),
];

/** JSON has no infinity. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
