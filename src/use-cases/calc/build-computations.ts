import { z } from 'zod';
import { explainLoad } from '../../rules/explain/explain-load.js';
import { explainPayload } from '../../rules/explain/explain-ratings.js';
import { DEFAULT_POLICY } from '../../rules/facts/yard-policy.js';
import { checkLoad } from '../../rules/load/load-check.js';
import { cargoEnvelope, payloadWith } from '../../rules/trailer/cargo-envelope.js';
import { contradictions } from '../../rules/trailer/contradictions.js';
import { ratings } from '../../rules/trailer/ratings.js';
import { classForGross, grossOfClass } from '../../rules/trailer/trailer-class.js';
import { limit, limitShown, loadCheck, loadCheckShown, workings, workingsShown } from './answers.js';
import { computation } from './computation.js';
import { EXAMPLE_BUILD, EXAMPLE_LOAD, EXAMPLE_TIRES } from './example-build.js';
import { build, coldPressures, limitsOf, load, refuseStrayWheels, tires, towVehicle } from './given-facts.js';
import { answer, answerOrNull, kilograms, length } from './values.js';

const CLASSES = ['light', 'medium', 'heavy', 'gooseneck-deck-over', 'not-an-equipment-trailer'] as const;
const EXAMPLE = { build: EXAMPLE_BUILD, tires: EXAMPLE_TIRES };
const EXAMPLE_RIG = { ...EXAMPLE, coldPressures: [], towVehicle: null };
const rig = { build, tires, coldPressures, towVehicle: towVehicle.nullable() };

const raisedM = length(
  'Coupler above the height at which torsion axles stand level',
  z.number().min(-2).max(2),
).nullable();
const place = {
  kind: z.string().describe('Which limit.'),
  subject: z.string().nullable().describe('Which one, where there are several.'),
};
const lacks = z.array(z.string()).describe('What is missing to say it; nothing when it can be said.');
const point = z.object({ balancePointM: answer('Rearward from the coupler, m'), cargoKg: answer('kg') });

export const BUILD_COMPUTATIONS = [
  computation({
    name: 'build-ratings',
    about: 'Every limit of a build, what it leaves for cargo, which limit governs, and the class of trailer it is.',
    source:
      'Ratings as marked: 49 CFR 571.120; 23 CFR 658.17 for legal weights; the class by common practice, no source.',
    input: z.object({ build, tires }),
    output: z.object({
      limits: z.array(limit).describe('Every limit, with its origin.'),
      governing: limit.nullable().describe('The one that leaves least.'),
      grossKg: answerOrNull('Greatest gross that every known limit allows, kg'),
      payloadKg: answerOrNull('Cargo that leaves, kg'),
      axleGroupKg: answerOrNull('What the axles carry together, kg'),
      axleSumKg: answerOrNull('Sum of the plate’s axle ratings, which people mistake for the plate, kg'),
      tongueShareAssumed: answer('Share of the gross taken to rest on the hitch'),
      trailerClass: z.enum(CLASSES).nullable().describe('Null while neither frame nor axles are known.'),
      workings,
    }),
    example: EXAMPLE,
    compute: ({ build, tires }) => {
      refuseStrayWheels(
        build,
        tires.map(({ position }) => position),
        'tires',
      );
      const { limits, governing, ...found } = ratings(build, tires);
      const explained = explainPayload(build, tires);
      return {
        ...found,
        limits: limits.map(limitShown),
        governing: governing === null ? null : limitShown(governing),
        workings: workingsShown(explained === null ? [] : [explained]),
      };
    },
  }),
  computation({
    name: 'build-contradictions',
    about: 'What in a build contradicts itself, or what nobody should build. An unknown contradicts nothing.',
    source: '49 CFR 571.110 and 571.120, 393.42, 393.43; NHTSA letters; SAE J684; the rest common practice, no source.',
    input: z.object({ build, tires }),
    output: z.object({
      contradictions: z.array(z.looseObject({ kind: z.string().describe('What.') })).describe('Each with its numbers.'),
    }),
    example: { ...EXAMPLE, build: { ...EXAMPLE_BUILD, plate: { gvwrKg: 7257.4779, coldPressureKpa: 551.581 } } },
    compute: ({ build, tires }) => {
      refuseStrayWheels(
        build,
        tires.map(({ position }) => position),
        'tires',
      );
      return { contradictions: contradictions(build, tires).map((one) => ({ ...one })) };
    },
  }),
  computation({
    name: 'build-load-check',
    about: 'One load on one build as it stands on level ground, against every limit, and how each sum was worked out.',
    source:
      'Plane statics; ratings as marked. An unmeasured weight within 3 % of a limit is to be weighed first: our rule.',
    input: z.object({ ...rig, load }),
    output: z.object({ ...loadCheck, workings }),
    example: { ...EXAMPLE_RIG, load: EXAMPLE_LOAD },
    compute: ({ load, ...given }) => {
      const limits = limitsOf(given);
      return {
        ...loadCheckShown(checkLoad(limits, load, DEFAULT_POLICY)),
        workings: workingsShown(explainLoad({ limits, load, policy: DEFAULT_POLICY })),
      };
    },
  }),
  computation({
    name: 'build-payload-at-place',
    about: 'What a build may carry with the cargo’s balance point in one place, and what governs there.',
    source: 'Plane statics; each rating a line in cargo weight and moment.',
    input: z.object({ ...rig, raisedM, balancePointM: length('Rearward from the coupler', z.number().gt(0).max(60)) }),
    output: z.object({
      mostKg: answerOrNull('Most, kg'),
      governedBy: z.object(place).nullable().describe('What stops there.'),
      leastKg: answerOrNull('Less than this leaves a limit broken that more mends, kg'),
      leastBy: z.object(place).nullable().describe('Which one.'),
      lacks,
    }),
    example: { ...EXAMPLE_RIG, raisedM: null, balancePointM: 3.97129 },
    compute: ({ balancePointM, raisedM, ...given }) => {
      const found = payloadWith({ build: given.build, limits: limitsOf(given), raisedM }, balancePointM);
      if (found.kind === 'unknown') {
        return { mostKg: null, governedBy: null, leastKg: null, leastBy: null, lacks: [...found.lacks] };
      }
      const { mostKg, governedBy, leastKg, leastBy } = found.payload;
      return { mostKg, governedBy: named(governedBy), leastKg, leastBy: named(leastBy), lacks: [] };
    },
  }),
  computation({
    name: 'build-envelope',
    about: 'The corners of the region of balance point and cargo weight inside every limit of a build.',
    source: 'Plane statics; each rating a line in cargo weight and moment.',
    input: z.object({ ...rig, raisedM }),
    output: z.object({
      edges: z
        .array(z.object({ ...place, from: point, to: point }))
        .nullable()
        .describe('In order round it; none when no load at all is inside, null while something is missing.'),
      lacks,
    }),
    example: { ...EXAMPLE_RIG, raisedM: null },
    compute: ({ raisedM, ...given }) => {
      const found = cargoEnvelope({ build: given.build, limits: limitsOf(given), raisedM });
      if (found.kind === 'unknown') return { edges: null, lacks: [...found.lacks] };
      return { edges: found.edges.map(({ kind, subject, from, to }) => ({ kind, subject, from, to })), lacks: [] };
    },
  }),
  computation({
    name: 'class-for-gross',
    about: 'The class of trailer whose usual two axles carry a gross weight, and from which weight that class begins.',
    source: 'Common practice, no source.',
    input: z.object({ grossKg: kilograms('Trailer and load', z.number().gt(0).max(1e5)) }),
    output: z.object({
      trailerClass: z.enum(CLASSES).nullable().describe('Null when none of them carries it.'),
      builtForKg: answerOrNull('Gross that the class is built for, kg'),
    }),
    example: { grossKg: 6_000 },
    compute: ({ grossKg }) => {
      const trailerClass = classForGross(grossKg);
      return { trailerClass, builtForKg: trailerClass === null ? null : grossOfClass(trailerClass) };
    },
  }),
];

function named(boundary: { readonly kind: string; readonly subject: string | null } | null) {
  return boundary === null ? null : { kind: boundary.kind, subject: boundary.subject };
}
