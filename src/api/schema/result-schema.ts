import { z } from 'zod';
import { MEASURED_QUANTITIES } from '../../rules/facts/check.js';
import { STRONGER_PARTS } from '../../rules/flags/clearance.js';
import { FLAG_RULES } from '../../rules/flags/flag.js';
import { TIRE_TRAITS } from '../../rules/tire/tire-mismatch.js';
import { TRIGGER } from './check-schema.js';
import { JACK_CHECK, TIE_DOWN_CHECK, TOO_LONG, TOO_WIDE, TRIPS_SEEN } from './loading-schema.js';
import { computed, DAY, ID, known } from './values.js';
import { WEAR_QUANTITY, WEAR_TREND, WEARING_PART } from './wear-schema.js';

/** A load held against a limit, and the limit. */
const LIMIT = z
  .object({
    kind: z.enum([
      'plate',
      'axle-group',
      'axle',
      'tire',
      'coupler',
      'coupler-tongue',
      'tow-hitch',
      'tow-hitch-tongue',
      'legal-axles',
    ]),
    subject: z.string().nullable().describe('Which one, where there are several: axle number or wheel position.'),
    limitN: computed('Kept as a force, N.'),
    origin: z.enum([
      'plate',
      'axle-maker',
      'tire-sidewall',
      'load-index',
      'tire-table',
      'coupler-maker',
      'tow-vehicle',
      'law',
    ]),
  })
  .meta({ id: 'Limit' });

export const STANDING = z
  .enum(['inside', 'near', 'over'])
  .describe('`near`: inside, but too close for a weight that was never weighed.');

export const COMPARISON = z
  .object({
    limit: LIMIT,
    loadN: computed('N'),
    marginN: computed('Limit less load, N; negative when over.'),
    measured: z.boolean().describe('Whether every weight in the sum was weighed.'),
    standing: STANDING,
  })
  .meta({ id: 'Comparison' });

export const TRAILER_CLASS = z.enum(['light', 'medium', 'heavy', 'gooseneck-deck-over', 'not-an-equipment-trailer']);

const RATINGS = z
  .object({
    limits: z.array(LIMIT),
    ...known({
      governing: LIMIT,
      grossKg: computed('The greatest gross mass that every known limit allows, kg.'),
      payloadKg: computed('That gross less the empty mass, kg.'),
      axleGroupKg: computed('What the axles may carry together, kg.'),
      axleSumKg: computed("Sum of the plate's axle ratings, kg."),
      trailerClass: TRAILER_CLASS,
    }),
    tongueShareAssumed: computed('Share of the gross taken to rest on the hitch, 0 to 1.'),
  })
  .meta({ id: 'Ratings' });

const MASS = computed('kg');
export const CONTRADICTION = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('plate-above-axles'), gvwrKg: MASS, carriesKg: MASS }),
    z.object({ kind: z.literal('tires-below-axle'), axle: z.int(), tiresKg: MASS, gawrKg: MASS }),
    z.object({ kind: z.literal('axle-rating-below-gawr'), axle: z.int(), ratingKg: MASS, gawrKg: MASS }),
    z.object({ kind: z.literal('coupler-below-plate'), couplerKg: MASS, gvwrKg: MASS }),
    z.object({ kind: z.literal('chains-below-plate'), chainBreakKg: MASS, neededKg: MASS, gvwrKg: MASS }),
    z.object({ kind: z.literal('unbraked-axles'), axles: z.array(z.int()), gvwrKg: MASS }),
    z.object({ kind: z.literal('brakes-without-breakaway') }),
    z.object({
      kind: z.literal('speed-restricted-tires'),
      positions: z.array(z.string()),
      speed: computed('Of the slowest, km/h.'),
    }),
    z.object({ kind: z.literal('wider-than-law'), widthM: computed('m'), limitM: computed('m') }),
    z.object({ kind: z.literal('jack-too-small'), supportKg: MASS, axleRatingKg: MASS }),
    z.object({ kind: z.literal('slide-ramps-without-stabilizers') }),
    z.object({ kind: z.literal('single-jack-on-gooseneck') }),
    z.object({ kind: z.literal('part-way-tongue-on-channel') }),
    z.object({ kind: z.literal('frame-too-shallow'), depthM: computed('m') }),
    z.object({ kind: z.literal('gravity-tilt-too-long'), deckM: computed('m') }),
    z.object({ kind: z.literal('empty-above-plate'), emptyKg: MASS, gvwrKg: MASS }),
  ])
  .meta({ id: 'Contradiction', description: 'What cannot be right in a build as entered. Said, not blocking.' });

export const UNKNOWN = z
  .object({ lacks: z.string(), stops: z.string() })
  .meta({ id: 'Unknown', description: 'A fact nobody has given, and what it keeps us from working out.' });

export const DUE = z
  .object({
    checkKindId: ID,
    code: z.string(),
    state: z.enum(['overdue', 'due-soon', 'later', 'never-done', 'unknown']),
    yardDays: z
      .array(z.object({ from: DAY, to: DAY }))
      .describe('Days on which the trailer is in the yard, up to the due date.'),
    failed: z.boolean().describe('Whether its latest record is a fail.'),
    ...known({
      dueOn: DAY.describe('Last good day: from the day after, it is overdue.'),
      trigger: TRIGGER,
      lastDoneOn: DAY,
      used: z.discriminatedUnion('kind', [
        z.object({
          kind: z.literal('distance'),
          usedKm: computed('As counted toward the limit, harsh service more than once, km.'),
          limitKm: computed('km'),
          harshKm: computed('How much of it was added for harsh service, km.'),
          loadKm: computed('How much more was added because an axle carried more than its rating, km.'),
        }),
        z.object({ kind: z.literal('trips'), used: computed('trips'), limit: computed('trips') }),
      ]),
      range: z
        .object(known({ p10: DAY, p50: DAY, p90: DAY }))
        .describe('By distance or trips: it has fallen due by these days with a chance of 10, 50 and 90 %.'),
      stops: z
        .object({
          missedKm: z.array(computed('Distance after the event that was driven past with no record of the look, km.')),
          aheadKm: z.array(computed('How far to drive until the next looks, km.')),
        })
        .describe('For looks at distances after an event, such as wheel nuts after a wheel was off.'),
      firstJobAtRisk: z.object({ jobId: ID, startsOn: DAY }),
      unknown: z.enum(['no-distance-known', 'no-last-done', 'no-date-set']),
    }),
  })
  .meta({ id: 'Due' });

export const SHARE_BOUND = z
  .enum(['at-most', 'at-least'])
  .nullable()
  .describe('Where only this much is known of the share: it may be less, or more.');

const TRIP_OVER = z.object({ tripId: ID, on: DAY, comparison: COMPARISON }).meta({ id: 'TripOver' });
const STRONGER_PART = z.enum(STRONGER_PARTS);
const CODED = { checkKindId: ID, code: z.string() };
export const PLANK_STRESS = z
  .object({
    stance: z.enum(['climbing', 'parked']),
    contactN: computed('What one wheel, track or pad presses with, N.'),
    boards: z.int().describe('Boards that carry it.'),
    bendingKpa: computed('kPa'),
    shearKpa: computed('kPa').nullable(),
    sagM: computed('m').nullable(),
    allowedKpa: computed('Bending it is held against, kPa.'),
    allowedShearKpa: computed('kPa').nullable(),
    allowedN: computed('The contact load that stresses it to just that, N.'),
    origin: z.enum(['design-value', 'clear-wood', 'plate-yield']),
    verified: z.boolean().describe('False: from memory or only a bound; it blocks nothing.'),
    lostM: computed('Counted as rotted off one face, m.'),
  })
  .meta({ id: 'PlankStress' });

export const FOUND_BOARD = z
  .object({
    board: z.string().nullable(),
    on: DAY,
    depthM: computed('How far it sank or took the probe, m.'),
    kind: z.enum(['sinks', 'probe']),
  })
  .meta({ id: 'FoundBoard' });

const EVIDENCE = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('over-limit'),
      worst: TRIP_OVER,
      trips: z.array(TRIP_OVER),
      attitude: z
        .object({
          standing: z.enum(['nose-high', 'nose-low']),
          raisedM: computed('Coupler above the level height, m; null where only the axle loads tell.').nullable(),
        })
        .nullable()
        .describe('How torsion axles rode, where that and not the weight put one of them over.'),
    }),
    z.object({
      kind: z.literal('tongue-share'),
      share: computed('Tongue weight over gross weight, 0 to 1.'),
      bound: SHARE_BOUND,
      low: computed('0 to 1'),
      high: computed('0 to 1').nullable(),
      tripIds: z.array(ID),
    }),
    z.object({
      kind: z.literal('deck-plank'),
      machineId: ID,
      stress: PLANK_STRESS,
      breaks: z.boolean().describe('Past the average strength of faultless wood, shared evenly.'),
      trips: z.array(z.object({ tripId: ID, endedOn: DAY })),
      jobIds: z.array(ID),
    }),
    z.object({
      kind: z.literal('soft-deck'),
      boards: z.array(FOUND_BOARD),
      boardCount: z.int().nullable(),
      replaceM: computed('Deeper than this a board is replaced, m.'),
      jobIds: z.array(ID),
      machineIds: z.array(ID),
    }),
    z.object({
      kind: z.literal('tires-past-age'),
      limitYears: computed("The yard's limit, years."),
      tires: z.array(
        z.object({
          position: z.string(),
          dateCode: z.string(),
          madeFrom: DAY,
          years: computed('Whole years of age.'),
          months: computed('Months beyond them.'),
        }),
      ),
    }),
    z.object({
      kind: z.literal('tires-soft'),
      tires: z.array(
        z.object({
          position: z.string(),
          foundKpa: computed('kPa'),
          wantedKpa: computed('kPa'),
          carriesKg: MASS.nullable().describe('What it may carry at the pressure found, kg.'),
          carriedKg: MASS.nullable().describe('The most it has carried since, kg.'),
        }),
      ),
    }),
    z.object({
      kind: z.literal('tires-mismatched'),
      axle: z.int(),
      mismatches: z.array(
        z.object({
          trait: z.enum(TIRE_TRAITS),
          positions: z.array(z.string()),
          marked: z.array(z.string()).describe('As marked on each of them, in the same order.'),
        }),
      ),
    }),
    z.object({
      kind: z.literal('wearing'),
      quantity: WEAR_QUANTITY,
      parts: z.array(WEARING_PART),
    }),
    z.object({
      kind: z.literal('worn-past-limit'),
      quantity: z.enum(MEASURED_QUANTITIES),
      limit: computed('In the unit of the quantity.'),
      passesAtLimit: z.boolean().describe('Whether exactly the limit still passes.'),
      source: z.string(),
      parts: z.array(
        z.object({
          position: z.string().nullable(),
          value: computed('In the unit of the quantity.'),
          on: DAY.describe('When it was measured.'),
        }),
      ),
    }),
    z.object({
      kind: z.literal('licence-line'),
      towVehicle: z.string(),
      group: z.enum(['A', 'B']),
      combinationKg: MASS,
      thresholdKg: MASS,
      jobIds: z.array(ID),
    }),
    z.object({ kind: z.literal('check-overdue'), ...CODED, dueOn: DAY.nullable(), safety: z.boolean() }),
    z.object({ kind: z.literal('battery-flat'), volts: computed('At rest, V.'), limit: computed('Flat below, V.') }),
    z.object({ kind: z.literal('proof-missing'), ...CODED, what: z.string() }),
    z.object({
      kind: z.literal('class-drift'),
      from: DAY.describe('First load of the quarter looked back on.'),
      to: DAY,
      share90th: computed('Share of payload that nine loads in ten keep below.'),
      wantsMore: z.array(COMPARISON).describe('Limits the heaviest load went over, furthest first.'),
      trips: z.int().describe('Trips looked back on.'),
      over90: z.int().describe('Trips above 90 % of the payload.'),
      over100: z.int().describe('Trips above all of it.'),
      payloadKg: MASS,
      tripIds: z.array(ID),
      ...known({
        ownClass: TRAILER_CLASS,
        looksLike: TRAILER_CLASS,
        machineId: ID,
        weakest: COMPARISON.describe('Of which limit the heaviest load took the greatest share.'),
        trend: z.object({
          shareAMonth: computed('Change of the share of payload in 30 days.'),
          isClear: z.boolean().describe('More than two standard errors from level.'),
        }),
        damage: z
          .array(
            z.object({
              part: z.enum(['bearing', 'weld', 'spring']),
              onThis: computed('Damage over that of the same miles at 90 % of payload.'),
              onNext: computed('The same on a trailer of the class they look like.').nullable(),
            }),
          )
          .describe('How fast these loads use up its parts.'),
      }),
    }),
    z.object({
      kind: z.literal('outgrown'),
      machineId: ID,
      machineKg: MASS,
      payloadKg: MASS,
      overKg: MASS,
      replacedMachineId: ID.nullable(),
    }),
    z.object({
      kind: z.literal('jack-load'),
      when: z.enum(['empty', 'loaded']),
      check: JACK_CHECK,
      trips: TRIPS_SEEN,
    }),
    z.object({
      kind: z.literal('over-ramp'),
      machineId: ID,
      machineKg: MASS,
      ratingKg: computed('What the ramps carry together, kg.'),
      overKg: MASS,
      trips: TRIPS_SEEN,
    }),
    z.object({
      kind: z.literal('rear-lift'),
      machineId: ID,
      machineKg: MASS,
      liftN: computed('How hard the hitch is pulled up, N.'),
      trips: TRIPS_SEEN,
    }),
    z.object({ kind: z.literal('too-wide'), machineId: ID, ...TOO_WIDE, trips: TRIPS_SEEN }),
    z.object({ kind: z.literal('too-long'), machineId: ID, ...TOO_LONG, trips: TRIPS_SEEN }),
    z.object({ kind: z.literal('tie-downs-short'), on: DAY, tied: TIE_DOWN_CHECK, trips: TRIPS_SEEN }),
    z.object({
      kind: z.literal('lowered'),
      on: DAY,
      positions: z.array(z.string()),
      beforeKg: MASS.describe('Payload before these tires were fitted, kg.'),
      nowKg: MASS.describe('Payload since, kg.'),
    }),
    z.object({ kind: z.literal('hold'), holdId: ID, reason: z.string() }),
  ])
  .meta({ id: 'FlagEvidence' });

const CLEARANCE = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('no-more-until'), clearsOn: DAY }),
    z.object({ kind: z.literal('lighter-trips'), trips: z.int(), atMostKg: MASS }),
    z.object({
      kind: z.literal('correct'),
      fact: z.enum(['trip', 'build-sheet', 'machine', 'part', 'reading', 'job']),
    }),
    z.object({ kind: z.literal('replace-tires'), positions: z.array(z.string()) }),
    z.object({ kind: z.literal('inflate-tires'), positions: z.array(z.string()) }),
    z.object({ kind: z.literal('replace-boards'), boards: z.array(z.string().nullable()) }),
    z.object({ kind: z.literal('pass-check'), ...CODED }),
    z.object({ kind: z.literal('carry-proof'), ...CODED, what: z.string() }),
    z.object({ kind: z.literal('lift-hold'), holdId: ID }),
    z.object({ kind: z.literal('machine-at-most'), machineId: ID, massKg: MASS }),
    z.object({ kind: z.literal('other-trailer'), machineId: ID.nullable() }),
    z.object({ kind: z.literal('payload-of-at-least'), payloadKg: MASS }),
    z.object({ kind: z.literal('part-of-at-least'), part: STRONGER_PART, ratingN: computed('N') }),
    z.object({ kind: z.literal('rear-support') }),
    z.object({ kind: z.literal('measure-again'), quantity: z.enum(MEASURED_QUANTITIES) }),
    z.object({ kind: z.literal('replace-part'), part: STRONGER_PART, position: z.string().nullable() }),
  ])
  .meta({ id: 'Clearance', description: 'One way in which a flag is cleared.' });

const SEVERITY = z
  .enum(['stop', 'limit', 'watch'])
  .describe('stop: do not load. limit: over a rating or a law. watch: heading there.');

export const FLAG = z
  .object({
    key: z.string().describe('Stays the same while the same thing is wrong.'),
    rule: z.enum(FLAG_RULES),
    severity: SEVERITY,
    since: DAY.nullable(),
    evidence: EVIDENCE,
    clears: z.array(CLEARANCE).min(1).describe('What would clear it: any one of these is enough.'),
  })
  .meta({ id: 'Flag' });

export const READINESS = z
  .enum(['ready', 'due', 'down', 'gone'])
  .describe('due: work wanted before or during its next job. down: held or stopped. gone: sold or scrapped.');

const DECK_OUTLOOK = z
  .object({
    laidOn: DAY,
    countedTo: DAY.describe('Decks still in use are counted as having lasted until this day.'),
    prior: z
      .object({
        medianYears: computed('Years that half of such decks are expected to outlast.'),
        basis: z.enum(['setting', 'reckoned']),
        woodYears: computed('Years untreated in the open at an index of 50.'),
        climateFactor: computed('50 over the decay index, between 0.5 and 2.5.'),
        treatmentFactor: computed('1 untreated.'),
        shelterFactor: computed('1 in the open.'),
        assumed: z.array(z.enum(['deck-wood', 'treated', 'stored', 'decay-index'])),
      })
      .describe('The owner’s estimate, no published life.'),
    wornOut: z.int(),
    survivors: z.int(),
    mixture: z
      .object({
        components: z.array(
          z.object({ shape: computed('Weibull shape.'), weight: computed('0 to 1'), rate: computed('See `count`.') }),
        ),
        count: computed('Share alive at x = sum of weight (rate / (rate + x^shape))^count.'),
      })
      .describe('Life as a share of the years expected, given that the deck lay on `countedTo`.'),
    past: z
      .object({
        decks: z.int(),
        medianYears: computed('years'),
        lowerYears: computed('Median of the lower half, years.').nullable(),
        upperYears: computed('Median of the upper half, years.').nullable(),
        stillInUse: z.int().describe('Decks like it that this leaves out.'),
      })
      .nullable()
      .describe('Decks like it that wore out, as they are.'),
    yardFit: z
      .object({
        shape: computed('Weibull shape.'),
        scaleYears: computed('years'),
        wornOut: z.int(),
        decks: z.int().describe('Survivors included.'),
      })
      .nullable()
      .describe('A Weibull law for decks like it alone.'),
  })
  .meta({ id: 'DeckOutlook' });

const DECK_LIFE = z
  .object({
    outlook: DECK_OUTLOOK.nullable(),
    probed: z.object({
      soft: z.array(FOUND_BOARD),
      marked: z.array(FOUND_BOARD),
      lostM: computed('Deepest the probe went, m.'),
    }),
  })
  .describe('Soft boards beat any outlook.');

const HUB_LIFE = z
  .object({
    partId: ID,
    countedKm: computed('Driven since it was fitted with a load that is known, km.'),
    uncountedKm: computed('Driven since it was fitted with a load that is not, km.'),
    isBound: z.boolean().describe('Some loads are only the most they can have been.'),
    ...known({
      position: z.string().describe('Axle and side.'),
      fittedOn: DAY,
      lifeUsed: computed('Share of the rating life L10 used up, at most; 0 and up.'),
      l10Km: computed('L10 at the mean of the loads so far, km.'),
      meanLoadN: computed('Steady hub load that does as much, N.'),
      rating: z.enum(['catalogue', 'series', 'memory']),
      lacks: z.enum(['position', 'bearing-numbers', 'bearing-rating', 'tire-size', 'loads']),
    }),
  })
  .meta({ id: 'HubLife', description: 'Never a due date: hubs fail by water, grease and preload long before.' });

/** What the facts of one trailer come to on one day. */
export const ASSESSMENT = z
  .object({
    asOf: DAY,
    readiness: READINESS,
    ratings: RATINGS.nullable(),
    contradictions: z.array(CONTRADICTION),
    due: z.array(DUE),
    flags: z.array(FLAG),
    hubLives: z.array(HUB_LIFE),
    deckLife: DECK_LIFE,
    wear: z.array(WEAR_TREND),
    use: z.object({
      trips: z.int(),
      ...known({
        totalKm: computed('Distance ever travelled, km.'),
        kmPerDay: computed('Usual use, km a day.'),
        lastTripOn: DAY,
      }),
    }),
    unknowns: z.array(UNKNOWN),
    wakeOn: DAY.nullable().describe('From this day on it may read differently with no new fact; null when never.'),
  })
  .meta({
    id: 'Assessment',
    description:
      'Arithmetic on what was entered. The plate, the makers’ manuals, local law and a qualified person come first.',
  });
