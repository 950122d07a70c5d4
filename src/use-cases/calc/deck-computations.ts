import { z } from 'zod';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { daysAfter, MEAN_YEAR_DAYS } from '../../rules/calendar/day-number.js';
import { CLIMATE_RATE, decayDepthMm, WOOD_RATE } from '../../rules/deck/decay-depth.js';
import { decayHazard, decayIndex } from '../../rules/deck/decay-index.js';
import { deckLifePrior } from '../../rules/deck/deck-life-prior.js';
import { chanceOfNewDeck, deckDates, deckOutlook } from '../../rules/deck/deck-outlook.js';
import { DECK_MATERIALS, WOODS } from '../../rules/facts/build-sheet.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, count, plain } from './values.js';

const wood = z.enum(WOODS).describe('The wood as it is sold.');
const material = z.enum(DECK_MATERIALS).describe('What the deck is made of.');
const treated = z.boolean().describe('Pressure treated against decay.');
const stored = z.enum(['open', 'cover']).describe('Where it stands when parked.');
const WOOD_CLASSES = Object.keys(WOOD_RATE) as (keyof typeof WOOD_RATE)[];
const ZONES = Object.keys(CLIMATE_RATE) as (keyof typeof CLIMATE_RATE)[];
const decayIndexOf = plain('Decay hazard index of the place', z.number().min(0).max(400)).nullable();
const policy = {
  decayIndex: decayIndexOf,
  deckLifeYears: plain('The owner’s own years for a deck in the open', z.number().min(1).max(60)).nullable(),
};
const dateOrNull = (what: string) => z.string().nullable().describe(`${what}; null for steel.`);

const month = z.strictObject({
  meanC: plain('Mean temperature, °C', z.number().min(-60).max(60)),
  wetDays: plain('Mean number of days with 0.25 mm of rain or more', z.number().min(0).max(31)),
});

export const DECK_COMPUTATIONS = [
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
  const laidOn = daysAfter(asOf, -Math.round(years * MEAN_YEAR_DAYS));
  return { partId: `other-${at}`, trailerId: `other-${at}`, laidOn, endedOn: wornOut ? asOf : null, wornOut };
}
