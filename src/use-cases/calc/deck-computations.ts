import { z } from 'zod';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { daysAfter } from '../../rules/calendar/day-number.js';
import { CLEAR_WOOD } from '../../rules/deck/clear-wood.js';
import { CLIMATE_RATE, decayDepthMm, WOOD_RATE } from '../../rules/deck/decay-depth.js';
import { decayHazard, decayIndex } from '../../rules/deck/decay-index.js';
import { deckLifePrior } from '../../rules/deck/deck-life-prior.js';
import { chanceOfNewDeck, deckDates, deckOutlook } from '../../rules/deck/deck-outlook.js';
import { LOAD_DURATION } from '../../rules/deck/design-factors.js';
import { allowableStress } from '../../rules/deck/design-values.js';
import { strengthAtMoisture } from '../../rules/deck/moisture.js';
import {
  bendingStress,
  momentAtMiddle,
  momentOffCentre,
  momentOverTwoSpans,
  sag,
  sectionModulus,
  shearStress,
} from '../../rules/deck/plank-bending.js';
import { checkPlank, DECK_LACKS } from '../../rules/deck/plank-check.js';
import { DECK_MATERIALS, WOOD_GRADES, WOODS } from '../../rules/facts/build-sheet.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, count, force, kilograms, length, plain, pressure } from './values.js';

const above = z.number().gt(0).max(100);
const boardWidthM = length('Width of one board', z.number().gt(0).max(1));
const thicknessM = length('Thickness as sawn', z.number().gt(0).max(0.5));
const lostM = length('Rotted off one face', z.number().min(0).max(0.5));
const spanM = length('Between crossmembers', above);
const wood = z.enum(WOODS).describe('The wood as it is sold.');
const grade = z.enum(WOOD_GRADES).describe('The grade stamped on the board.');
const material = z.enum(DECK_MATERIALS).describe('What the deck is made of.');
const treated = z.boolean().describe('Pressure treated against decay.');
const stored = z.enum(['open', 'cover']).describe('Where it stands when parked.');
const DURATIONS = Object.keys(LOAD_DURATION) as (keyof typeof LOAD_DURATION)[];
const SPECIES = Object.keys(CLEAR_WOOD) as (keyof typeof CLEAR_WOOD)[];
const WOOD_CLASSES = Object.keys(WOOD_RATE) as (keyof typeof WOOD_RATE)[];
const ZONES = Object.keys(CLIMATE_RATE) as (keyof typeof CLIMATE_RATE)[];
const decayIndexOf = plain('Decay hazard index of the place', z.number().min(0).max(400)).nullable();
const policy = {
  decayIndex: decayIndexOf,
  deckLifeYears: plain('The owner’s own years for a deck in the open', z.number().min(1).max(60)).nullable(),
};
const dateOrNull = (what: string) => z.string().nullable().describe(`${what}; null for steel.`);

const PLANKS = [
  computation({
    name: 'plank-bending',
    about: 'Moment, stress, shear and sag of one board under a load on it, as a simple beam between two crossmembers.',
    source: 'Statics of beams; small deflections. Two equal spans by the three-moment equation.',
    input: z.object({
      loadN: force('The load', z.number().gt(0).max(1e6)),
      patchM: length('Length of the load along the board, 0 for a point', z.number().min(0).max(20)),
      spanM,
      centreM: length('Middle of the load from the left crossmember', above).nullable(),
      widthM: boardWidthM,
      thicknessM,
      lostM,
      elasticityKpa: pressure('Modulus of elasticity', z.number().gt(0).max(1e9)),
    }),
    output: z.object({
      momentNm: answer('Greatest moment with the load in the middle, N·m'),
      momentThereNm: answerOrNull('Greatest moment with the load where it was said to be, N·m'),
      twoSpanNm: answer('Under the same load as a point where the board runs on over the next crossmember, N·m'),
      sectionM3: answer('Section modulus of what is left, m³'),
      bendingKpa: answer('Bending stress in the middle, kPa'),
      shearKpa: answer('Shear stress with the load beside a crossmember, kPa'),
      sagM: answer('Sag under a point load in the middle, m'),
    }),
    example: {
      loadN: 6672.3324,
      patchM: 0.2032,
      spanM: 0.4064,
      centreM: 0.2032,
      widthM: 0.18415,
      thicknessM: 0.0381,
      lostM: 0,
      elasticityKpa: 8.687e6,
    },
    compute: ({ centreM, widthM, thicknessM, lostM, elasticityKpa, ...load }) => {
      if (lostM >= thicknessM)
        throw new RangeError('lostM: give less than the thickness; nothing is left of this board.');
      const momentNm = momentAtMiddle(load);
      return {
        momentNm,
        momentThereNm: centreM === null ? null : momentOffCentre(load, centreM).momentNm,
        twoSpanNm: momentOverTwoSpans(load.loadN, load.spanM).spanNm,
        sectionM3: sectionModulus(widthM, thicknessM, lostM),
        bendingKpa: bendingStress(momentNm, widthM, thicknessM, lostM),
        shearKpa: shearStress(load.loadN, widthM, thicknessM, lostM),
        sagM: sag(load, elasticityKpa, widthM, thicknessM, lostM),
      };
    },
  }),
  computation({
    name: 'board-strength',
    about: 'Published design strength of a graded board laid flat, adjusted for moisture, duration, size and use.',
    source: 'NDS 2018 with its supplement, tables 4A and 4B; Southern Pine Use Guide. Null where none is at hand.',
    input: z.object({
      wood,
      grade,
      widthM: boardWidthM,
      thicknessM,
      duration: z.enum(DURATIONS).describe('How long the full load stands on it in all.'),
      wet: z.boolean().describe('Over 19 % moisture.'),
      treated,
    }),
    output: z.object({
      bendingKpa: answerOrNull('Bending, kPa'),
      shearKpa: answerOrNull('Shear, kPa'),
      elasticityKpa: answerOrNull('Modulus of elasticity, kPa'),
      verified: z.boolean().nullable().describe('False: a factor or value is from memory; null where there is none.'),
    }),
    example: {
      wood: 'southern-pine',
      grade: 'no-2',
      widthM: 0.18415,
      thicknessM: 0.0381,
      duration: 'seven-days',
      wet: true,
      treated: true,
    },
    compute: ({ wood, grade, ...use }) =>
      allowableStress(wood, grade, use) ?? { bendingKpa: null, shearKpa: null, elasticityKpa: null, verified: null },
  }),
  computation({
    name: 'clear-wood-strength',
    about: 'Average bending strength of faultless wood of a species at a moisture content.',
    source: 'USDA FPL, Wood Handbook, ch. 5. Not a design value: boards with knots stand about half.',
    input: z.object({
      species: z.enum(SPECIES).describe('The species.'),
      moisturePercent: plain('Moisture content, percent', z.number().min(8).max(200)),
    }),
    output: z.object({
      ruptureKpa: answer('Modulus of rupture, kPa'),
      verified: z.boolean().describe('False: green or dry value is from memory.'),
    }),
    example: { species: 'shortleafPine', moisturePercent: 20 },
    compute: ({ species, moisturePercent }) => {
      const { green, dry, intersectionPercent } = CLEAR_WOOD[species];
      return {
        ruptureKpa: strengthAtMoisture(dry.ruptureKpa, green.ruptureKpa, moisturePercent, intersectionPercent),
        verified: green.verified && dry.verified,
      };
    },
  }),
  computation({
    name: 'machine-on-planks',
    about: 'Whether the planks of a deck bear a machine on wheels, tracks or pads, climbing and parked.',
    source:
      'NDS 2018; Southern Pine Use Guide; Wood Handbook. How weight lies on the contacts is common practice, no source.',
    input: z.object({
      massKg: kilograms('The machine with what hangs on it', z.number().gt(0).max(200_000)),
      contact: z
        .enum(['tires', 'rubber-tracks', 'steel-tracks', 'small-wheels', 'pads'])
        .describe('What it stands on.'),
      contactCount: plain('Wheels, tracks or pads on the deck', z.int().min(1).max(16)),
      contactLengthM: length('One of them along the trailer', z.number().gt(0).max(10)).nullable(),
      contactWidthM: length('One of them across the trailer', z.number().gt(0).max(2)).nullable(),
      material,
      wood: wood.nullable(),
      woodGrade: grade.nullable(),
      treated: treated.nullable(),
      plankThicknessM: thicknessM,
      plankWidthM: boardWidthM.nullable(),
      crossmemberSpacingM: spanM,
      lostM,
    }),
    output: z.object({
      standing: z.enum(['inside', 'doubtful', 'over', 'breaks', 'unknown']),
      lacks: z.array(z.enum(DECK_LACKS)).describe('What is missing to say more.'),
      contactN: answerOrNull('What one wheel, track or pad presses with, N'),
      allowedN: answerOrNull('What it may press with, N'),
      boards: z.int().nullable().describe('Boards that carry it.'),
      bendingKpa: answerOrNull('Bending stress, kPa'),
      allowedKpa: answerOrNull('Strength it is held against, kPa'),
    }),
    example: {
      massKg: 2676.195,
      contact: 'small-wheels',
      contactCount: 4,
      contactLengthM: 0.0762,
      contactWidthM: 0.127,
      material: 'pine',
      wood: 'southern-pine',
      woodGrade: 'no-2',
      treated: true,
      plankThicknessM: 0.0381,
      plankWidthM: 0.18415,
      crossmemberSpacingM: 0.4064,
      lostM: 0,
    },
    compute: ({
      material,
      wood,
      woodGrade,
      treated,
      plankThicknessM,
      plankWidthM,
      crossmemberSpacingM,
      lostM,
      ...machine
    }) => {
      if (lostM >= plankThicknessM)
        throw new RangeError('lostM: give less than the thickness; nothing is left of this board.');
      const deck = { material, wood, woodGrade, treated, plankThicknessM, plankWidthM, crossmemberSpacingM };
      const { standing, lacks, worst } = checkPlank(deck, machine, lostM);
      return {
        standing,
        lacks: [...lacks],
        contactN: worst?.contactN ?? null,
        allowedN: worst?.allowedN ?? null,
        boards: worst?.boards ?? null,
        bendingKpa: worst?.bendingKpa ?? null,
        allowedKpa: worst?.allowedKpa ?? null,
      };
    },
  }),
];

const month = z.strictObject({
  meanC: plain('Mean temperature, °C', z.number().min(-60).max(60)),
  wetDays: plain('Mean number of days with 0.25 mm of rain or more', z.number().min(0).max(31)),
});

const LIVES = [
  computation({
    name: 'decay-index',
    about: 'Decay hazard of a place for wood above ground, from its monthly temperatures and rain days.',
    source: 'T. C. Scheffer 1971, metric form of FPL-GTR-179; bands of the Whole Building Design Guide.',
    input: z.object({ months: z.array(month).length(12).describe('January to December.') }),
    output: z.object({
      index: answer('The index; it ranks places and is no number of years'),
      hazard: z.enum(['low', 'moderate', 'high']).describe('Below 35, to 65, above.'),
    }),
    // Seattle, 2012 to 2015, from NOAA daily records.
    example: {
      months: [
        [5.463, 16.5],
        [6.958, 18.25],
        [8.623, 18.25],
        [10.691, 14.75],
        [14.455, 8.5],
        [17.322, 9.25],
        [20.098, 2.75],
        [20.441, 5.5],
        [17.141, 8.75],
        [12.87, 15.25],
        [7.862, 17.75],
        [5.76, 20.25],
      ].map(([meanC = 0, wetDays = 0]) => ({ meanC, wetDays })),
    },
    compute: ({ months }) => {
      const index = decayIndex(months);
      return { index, hazard: decayHazard(index) };
    },
  }),
  computation({
    name: 'decay-depth',
    about: 'How deep wood above ground has decayed after some years, for comparing woods and zones.',
    source: 'CSIRO / FWPA, Design for Durability, Manual 4 (2008); every number from memory, unverified.',
    input: z.object({
      wood: z.enum(WOOD_CLASSES).describe('Australian heartwood durability class, or sapwood.'),
      zone: z.enum(ZONES).describe('Australian hazard zone, A the least.'),
      years: plain('Years in the weather', z.number().min(0).max(200)),
    }),
    output: z.object({ rateMmPerYear: answer('Full rate, mm a year'), depthMm: answer('Depth of decay, mm') }),
    example: { wood: 'class-3', zone: 'C', years: 15 },
    compute: ({ wood, zone, years }) => {
      const rateMmPerYear = WOOD_RATE[wood] * CLIMATE_RATE[zone];
      return { rateMmPerYear, depthMm: decayDepthMm(rateMmPerYear, years) };
    },
  }),
  computation({
    name: 'deck-life',
    about: 'When a deck that lies today will be worn out, from the owner’s estimate and the lives of other decks.',
    source: 'Weibull lives with censoring and a stated prior; the estimate is a proposal, no published life.',
    input: z.object({
      laidOn: civilDay('Day it was laid'),
      asOf: civilDay('Day of asking, on which it lies'),
      by: civilDay('Day by which a new one may be needed'),
      material,
      wood: wood.nullable(),
      treated: treated.nullable(),
      stored: stored.nullable(),
      ...policy,
      others: z
        .array(
          z.strictObject({
            years: plain('Years it lasted, or has lasted so far', z.number().gt(0).max(60)),
            wornOut: z.boolean().describe('False: still in use, or taken off for another reason.'),
          }),
        )
        .max(1000)
        .describe('Decks like it.'),
    }),
    output: z.object({
      expectedYears: answerOrNull('Years half of such decks are expected to outlast, before any was seen'),
      tenPercentOn: dateOrNull('One chance in ten by then'),
      halfOn: dateOrNull('As likely as not by then'),
      ninetyPercentOn: dateOrNull('Nine chances in ten by then'),
      probabilityByThen: answerOrNull('Probability of being worn out by the day asked for, 0 to 1'),
      wornOut: count('Decks that wore out among those counted'),
      survivors: count('Decks counted as having lasted, this one among them'),
    }),
    example: {
      laidOn: '2020-09-01',
      asOf: '2025-09-01',
      by: '2026-09-01',
      material: 'pine',
      wood: 'southern-pine',
      treated: true,
      stored: 'open',
      decayIndex: 50,
      deckLifeYears: null,
      others: [
        ...[5.1, 5.8, 6, 6.2, 6.4, 6.9, 7.3, 8].map((years) => ({ years, wornOut: true })),
        { years: 3.5, wornOut: false },
      ],
    },
    compute: ({ laidOn, asOf, by, others, decayIndex, deckLifeYears, ...nature }) => {
      if (laidOn > asOf) throw new RangeError('laidOn: give a day on or before the day of asking.');
      const setting = { decayIndex, deckLifeYears };
      const decks = others.map((life, at) => ({ ...pastLife(asOf, life, at), ...nature }));
      const outlook = deckOutlook({ partId: 'own', laidOn, ...nature }, decks, setting, { asOf, countedTo: asOf });
      const dates = outlook === null ? null : deckDates(outlook, asOf);
      return {
        expectedYears: deckLifePrior(nature, setting)?.medianYears ?? null,
        tenPercentOn: dates?.tenPercentOn ?? null,
        halfOn: dates?.halfOn ?? null,
        ninetyPercentOn: dates?.ninetyPercentOn ?? null,
        probabilityByThen: outlook === null ? null : chanceOfNewDeck(outlook, asOf, by),
        wornOut: outlook?.wornOut ?? 0,
        survivors: outlook?.survivors ?? 0,
      };
    },
  }),
];

/** A deck that lasted so long, told as the rules take it: up to the day of asking. */
function pastLife(
  asOf: CivilDate,
  { years, wornOut }: { readonly years: number; readonly wornOut: boolean },
  at: number,
) {
  const laidOn = daysAfter(asOf, -Math.round(years * 365.25));
  return { partId: `other-${at}`, trailerId: `other-${at}`, laidOn, endedOn: wornOut ? asOf : null, wornOut };
}

export const DECK_COMPUTATIONS = [...PLANKS, ...LIVES];
