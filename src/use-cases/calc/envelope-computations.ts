import { z } from 'zod';
import { bestPlace } from '../../rules/envelope/best-place.js';
import { type EnvelopeInput, envelope } from '../../rules/envelope/envelope.js';
import { payloadAt } from '../../rules/envelope/payload-at.js';
import { HITCHES } from '../../rules/facts/build-sheet.js';
import type { Limit, LimitKind } from '../../rules/load/limit.js';
import type { LoadLimits } from '../../rules/load/load-limits.js';
import { axleGroupCentre } from '../../rules/load/statics.js';
import { tongueBand } from '../../rules/load/tongue-band.js';
import { type Newtons, newtons, weightOf } from '../../rules/units/force.js';
import { computation } from './computation.js';
import { answer, force, kilograms, length } from './values.js';

const SOURCE = 'Plane statics of a trailer on springs that share, each rating a line in cargo weight and moment.';
const BEHIND = z.number().gt(0).max(60);
const RATING = z.number().gt(0).max(1e6);

const trailer = {
  emptyKg: kilograms('The trailer alone', RATING),
  emptyTongueN: force('What it rests on its coupler, empty'),
  axles: z
    .array(
      z.strictObject({
        fromCouplerM: length('Where the axle is, rearward from the coupler', BEHIND),
        ratingKg: kilograms('Rating of the axle', RATING),
        tireKg: kilograms('What one of its two tires may carry', RATING),
      }),
    )
    .min(1)
    .max(6)
    .describe('Each axle from the front, on springs that share equally.'),
  gvwrKg: kilograms('Gross rating on the plate', RATING),
  couplerKg: kilograms('Gross rating of the coupler', RATING),
  couplerTongueN: force('Vertical rating of the coupler', z.number().gt(0).max(1e7)).nullable(),
  hitch: z.enum(HITCHES).describe('Its kind, which sets the band of the tongue.'),
  deckFrontM: length('Front edge of the deck, rearward from the coupler', z.number().min(0).max(60)),
  deckRearM: length('Rear edge of the deck', BEHIND),
};
const TRAILER = z.object(trailer);

/** A 14,000 lb trailer, 2,800 lb empty with 233 on its tongue, on two axles about 180 in behind the coupler. */
const EXAMPLE = {
  emptyKg: 1270.0586,
  emptyTongueN: 1037.9184,
  axles: [
    { fromCouplerM: 4.1275, ratingKg: 3175.1466, tireKg: 1551.2859 },
    { fromCouplerM: 5.0165, ratingKg: 3175.1466, tireKg: 1551.2859 },
  ],
  gvwrKg: 6350.2932,
  couplerKg: 6803.8856,
  couplerTongueN: null,
  hitch: 'bumper-pull' as const,
  deckFrontM: 1.2192,
  deckRearM: 7.3152,
};

const named = {
  kind: z.string().describe('What makes it: a rating, an end of the tongue’s band, an end of the deck.'),
  subject: z.string().nullable().describe('Which one, where there are several.'),
};
const point = z.object({ balancePointM: answer('Rearward from the coupler, m'), cargoKg: answer('kg') });

export const ENVELOPE_COMPUTATIONS = [
  computation({
    name: 'cargo-envelope',
    about: 'The corners of the region of balance point and cargo weight inside every limit, and what makes each edge.',
    source: SOURCE,
    input: TRAILER,
    output: z.object({
      edges: z
        .array(z.object({ ...named, from: point, to: point }))
        .describe('In order round it; none when no load at all is inside.'),
    }),
    example: EXAMPLE,
    compute: (input) => {
      const found = envelope(asked(input));
      if (found.kind === 'unknown') throw new RangeError(`"axles" leave no envelope: ${found.lacks.join(', ')}.`);
      return { edges: found.edges.map(({ kind, subject, from, to }) => ({ kind, subject, from, to })) };
    },
  }),
  computation({
    name: 'best-place',
    about: 'Where a machine leaves most of the tightest limit, and what may be carried with the balance point there.',
    source: SOURCE,
    input: TRAILER.extend({ machineKg: kilograms('The machine', RATING) }),
    output: z.object({
      balancePointM: answer('Rearward from the coupler, m'),
      shareLeft: answer('What is left of the tightest limit there, as a share of it; below nothing when it is passed'),
      tightest: z.object(named),
      mostKg: answer('The most that may be carried with the balance point there, kg'),
      governedBy: z.object(named).nullable(),
    }),
    example: { ...EXAMPLE, machineKg: 4082.3313 },
    compute: ({ machineKg, ...input }) => {
      const found = envelope(asked(input));
      const range = { fromM: input.deckFrontM, toM: input.deckRearM };
      const best =
        found.kind === 'unknown'
          ? null
          : bestPlace(found.bounds, weightOf(input.emptyKg), { massKg: machineKg, alongside: [], ...range });
      const most = found.kind === 'unknown' || best === null ? null : payloadAt(found.bounds, best.balancePointM);
      if (best === null || most === null) throw new RangeError('"deckRearM" must lie behind "deckFrontM".');
      return {
        balancePointM: best.balancePointM,
        shareLeft: best.tightest.share,
        tightest: nameOf(best.tightest.boundary),
        mostKg: most.mostKg,
        governedBy: most.governedBy === null ? null : nameOf(most.governedBy),
      };
    },
  }),
];

function nameOf({ kind, subject }: { readonly kind: string; readonly subject: string | null }) {
  return { kind, subject };
}

function asked(input: z.output<typeof TRAILER>): EnvelopeInput {
  return { limits: limitsOf(input), deck: { frontM: input.deckFrontM, rearM: input.deckRearM }, raisedM: null };
}

function limitsOf(input: z.output<typeof TRAILER>): LoadLimits {
  const rated = (kind: LimitKind, limitN: Newtons, subject: string | null = null): Limit => ({
    kind,
    subject,
    limitN,
    origin: 'plate',
  });
  const leastN = Math.min(...input.axles.map(({ ratingKg }) => weightOf(ratingKg)));
  return {
    plate: rated('plate', weightOf(input.gvwrKg)),
    axleGroup: rated('axle-group', newtons(leastN * input.axles.length)),
    axles: input.axles.map(({ ratingKg, tireKg }, index) => ({
      number: index + 1,
      wheels: 2,
      trackM: null,
      rated: rated('axle', weightOf(ratingKg), String(index + 1)),
      tires: [rated('tire', weightOf(tireKg), `${index + 1}L`)],
    })),
    legal: [],
    coupler: rated('coupler', weightOf(input.couplerKg)),
    couplerTongue: input.couplerTongueN === null ? null : rated('coupler-tongue', input.couplerTongueN),
    towHitch: null,
    towHitchTongue: null,
    sharing: 'equal',
    torsion: null,
    axleCentreM: axleGroupCentre(input.axles.map(({ fromCouplerM }) => fromCouplerM)),
    emptyKg: input.emptyKg,
    emptyWeighed: false,
    emptyTongueN: input.emptyTongueN,
    band: tongueBand(input.hitch),
    hitchKnown: true,
    ratingLacks: [],
  };
}
