import { z } from 'zod';
import { DECK_LACKS } from '../../rules/deck/plank-check.js';
import { REAR_SUPPORT, TIE_DOWN_CHECK, TIE_DOWN_NEED, TOO_LONG, TOO_WIDE } from './loading-schema.js';
import { COMPARISON, DUE, FOUND_BOARD, PLANK_STRESS, SHARE_BOUND, STANDING, UNKNOWN } from './result-schema.js';
import { computed, DAY, ID, known } from './values.js';
import { WORKING } from './working-schema.js';

const RANGE = z.object({ leastN: computed('N'), mostN: computed('N') });

const LOAD_CHECK = z
  .object({
    ...known({
      grossKg: computed('Whole trailer as loaded, kg.'),
      cargoKg: computed('kg'),
      tongueN: computed('N'),
      tongueShare: computed('Tongue weight over gross weight, 0 to 1.'),
      axleGroupN: computed('What the axles carry together, N; with method `bound`, the most they can carry.'),
      axleN: z.array(computed('N')).describe('Each axle from the front, N.'),
      axleRangeN: z.array(RANGE).describe('Between what each axle lies, where torsion axles leave it open, N.'),
      tongueRangeN: RANGE.describe('Between what the tongue lies, where torsion axles leave it open, N.'),
      sideN: z
        .array(z.object({ leftN: computed('N'), rightN: computed('N') }))
        .describe('What the two sides of each axle carry, where it is known how the load sits across, N.'),
      attitude: z
        .object({
          raisedM: computed('Coupler above the height at which the trailer is level, m; negative is nose low.'),
          standing: z.enum(['nose-high', 'level', 'nose-low']),
        })
        .describe('How torsion axles ride.'),
      method: z.enum(['scale', 'statics', 'range', 'bound']).describe('How the tongue and axle loads became known.'),
    }),
    comparisons: z.array(COMPARISON),
    tongueBand: z.object({
      low: computed('0 to 1'),
      high: computed('0 to 1').nullable(),
      standing: z.enum(['inside', 'low', 'high', 'unknown']),
    }),
    unknowns: z.array(UNKNOWN.extend({ subject: z.string().optional() })),
  })
  .meta({ id: 'LoadCheck' });

const MASS = computed('kg');
const POSITIONS = z.array(z.string()).describe('Wheel positions.');
const REASON = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.enum(['over', 'near']), comparison: COMPARISON }),
    z.object({
      kind: z.literal('tongue-share'),
      share: computed('0 to 1'),
      bound: SHARE_BOUND,
      low: computed('0 to 1'),
      high: computed('0 to 1').nullable(),
    }),
    z.object({
      kind: z.literal('attitude'),
      standing: z.enum(['nose-high', 'nose-low']),
      raisedM: computed('Coupler above the height at which the trailer is level, m; negative is nose low.').nullable(),
    }),
    z.object({
      kind: z.literal('road'),
      way: z.enum(['bump', 'dip']),
      heightM: computed('m'),
      mostN: computed('The most one axle carries there, N.'),
      axle: z.int().describe('Which one, counted from the front.'),
      ratedN: computed('N').nullable(),
      liftsAtM: computed('The least height at which an axle leaves the ground, m.').nullable(),
      lifts: z.int().nullable().describe('Which axle that is.'),
      ratesAssumed: z.boolean().describe('Whether the stiffness is only taken to be the most it may be.'),
    }),
    z.object({ kind: z.literal('hold'), reason: z.string() }),
    z.object({ kind: z.literal('due'), due: DUE, when: z.enum(['before', 'during']) }),
    z.object({ kind: z.literal('never-proven'), checkKindId: ID, what: z.string() }),
    z.object({ kind: z.literal('tires-past-age'), positions: POSITIONS }),
    z.object({
      kind: z.literal('licence'),
      threshold: z.enum(['cdl-a', 'cdl-b']),
      combinationKg: MASS,
      thresholdKg: MASS,
      driverHolds: z.enum(['A', 'B', 'none']).nullable(),
    }),
    z.object({ kind: z.literal('commercial-rules'), combinationKg: MASS, thresholdKg: MASS }),
    z.object({ kind: z.literal('wider-than-law'), widthM: computed('m'), limitM: computed('m') }),
    z.object({ kind: z.literal('ball-size'), couplerM: computed('m'), ballM: computed('m') }),
    z.object({ kind: z.literal('too-wide'), machineId: ID, ...TOO_WIDE }),
    z.object({ kind: z.literal('too-long'), machineId: ID, ...TOO_LONG }),
    z.object({
      kind: z.literal('ramp-rating'),
      machineId: ID,
      machineKg: MASS,
      ratingKg: computed('What the ramps carry together, kg.'),
      marginKg: MASS,
      standing: z.enum(['near', 'over']),
    }),
    z.object({
      kind: z.literal('rear-lift'),
      machineId: ID,
      machineKg: MASS,
      liftN: computed('How hard the hitch is pulled up with nothing under the tail, N.'),
      support: REAR_SUPPORT,
      supportLeastN: computed('Least a support takes, N.').nullable(),
      supportMostN: computed('Most a support can be made to take, N.').nullable(),
    }),
    z.object({
      kind: z.literal('hangs-up'),
      machineId: ID,
      neededM: computed('m'),
      clearanceM: computed('m'),
      isMost: z.boolean().describe('A dovetail makes it less.'),
    }),
    z.object({
      kind: z.literal('tilt-stays-up'),
      machineId: ID,
      shortM: computed('Balance point ahead of the pivot at most, m; 0 or negative.'),
    }),
    z.object({ kind: z.literal('tie-downs'), tied: TIE_DOWN_CHECK }),
    z.object({ kind: z.literal('tie-downs-unsaid'), need: TIE_DOWN_NEED }),
    z.object({
      kind: z.literal('deck-plank'),
      machine: z.string(),
      standing: z.enum(['breaks', 'over', 'doubtful']),
      stress: PLANK_STRESS,
    }),
    z.object({
      kind: z.literal('deck-unknown'),
      machine: z.string(),
      lacks: z.array(z.enum(DECK_LACKS)).describe('Why it cannot be held against the planks.'),
    }),
    z.object({
      kind: z.literal('soft-deck'),
      boards: z.array(FOUND_BOARD),
      boardCount: z.int().nullable(),
      replaceM: computed('m'),
    }),
    z.object({ kind: z.literal('unknown'), lacks: z.string(), stops: z.string() }),
  ])
  .meta({ id: 'FitReason' });

const REMEDY = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('lighten'),
      items: z.array(z.string()).describe('Cargo items to leave off, swap or wash, all before included.'),
      grossKg: MASS,
      overKg: computed('By how much the tightest limit is still passed, kg; negative when inside.'),
      standing: STANDING,
    }),
    z.object({
      kind: z.literal('move-load'),
      forwardFromM: computed('Least it must move, m; forward is positive.'),
      forwardToM: computed('Most it may move, m.'),
      tongueFromN: computed('N'),
      tongueToN: computed('N'),
    }),
    z.object({
      kind: z.literal('inflate'),
      positions: POSITIONS,
      toKpa: computed('Cold pressure, kPa.'),
      askedByPlateKpa: computed('kPa').nullable(),
      carriesN: computed('What the axle’s tires then carry, N.'),
    }),
    z.object({
      kind: z.literal('level'),
      hitchHeightM: computed('Coupler height at which the deck is level, m.').nullable(),
      axleN: z.array(computed('N')).nullable().describe('What each axle then carries, N.'),
      tongueN: computed('What the tongue then carries, N.').nullable(),
      tongueShare: computed('0 to 1').nullable(),
      tongueShareWanted: computed('The share it should not fall below, 0 to 1.'),
    }),
    z.object({
      kind: z.literal('unload'),
      leastKg: computed('At least this much off the deck, the hitch staying as it is, kg.').nullable(),
    }),
    z.object({ kind: z.literal('do-check'), checkKindId: ID, code: z.string(), by: DAY.nullable() }),
    z.object({ kind: z.literal('replace-tires'), positions: POSITIONS }),
    z.object({ kind: z.literal('fold-in'), machineId: ID, lengthM: computed('At most, m.') }),
    z.object({
      kind: z.literal('tie-down'),
      count: z.int().describe('How many more.'),
      workingLoadKg: computed('How much more counted working load, kg.'),
    }),
    z.object({ kind: z.literal('spread-load'), boards: z.int().describe('That must share it.') }),
    z.object({ kind: z.literal('replace-boards'), boards: z.array(z.string().nullable()) }),
    z.object({ kind: z.enum(['prop-tail', 'flatten-ramp', 'weigh', 'another-driver', 'permit', 'lift-hold']) }),
  ])
  .meta({ id: 'FitRemedy' });

const PARKING = z
  .object({
    machineId: ID,
    balancePointM: computed('Where its balance point is best put, m behind the coupler.'),
    frontM: computed('Where its front then stands, m behind the coupler.').nullable(),
    inside: z
      .object({ fromM: computed('m'), toM: computed('m') })
      .nullable()
      .describe('From where to where every limit that depends on the place holds.'),
    tightest: z.object({
      kind: z.string(),
      subject: z.string().nullable(),
      shareLeft: computed('What is left of the tightest limit there, as a share of it; negative when passed.'),
    }),
    deckKnown: z.boolean().describe('False while nobody said where the deck lies.'),
  })
  .meta({ id: 'Parking', description: 'Where on the deck the machine is best parked.' });

/** Whether a trailer may take a load on some days. */
export const FIT = z
  .object({
    verdict: z.enum(['go', 'go-after', 'weigh-first', 'no-go', 'cannot-say']),
    loadCheck: LOAD_CHECK,
    reasons: z.array(REASON).describe('Each reason the answer is not plain go.'),
    remedies: z.array(REMEDY).describe('What would make it yes, in the order to try it.'),
    parking: PARKING.nullable(),
  })
  .meta({
    id: 'Fit',
    description:
      'Arithmetic on what was entered. The plate, the makers’ manuals, local law and a qualified person come first.',
  });

/** The same with how its sums were worked out. */
export const EXPLAINED_FIT = FIT.extend({ workings: z.array(WORKING) }).meta({ id: 'ExplainedFit' });
