import { z } from 'zod';
import { DECK_MATERIALS, WOODS } from '../../rules/facts/build-sheet.js';
import { PART_KINDS } from '../../rules/facts/part.js';
import { PLAUSIBLE_SETTING, PLAUSIBLE_TIRE } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { BUILD_BODY } from './build-schema.js';
import { DAY, ID, known, maybe, quantity, text } from './values.js';

const CENTS = z.int().min(PLAUSIBLE_SETTING.cents.low).max(PLAUSIBLE_SETTING.cents.high);

const IDENTITY = {
  name: text(TEXT.name, 'A name beside the number.'),
  vin: text(40, 'Vehicle identification number; a home-built trailer has none.'),
  boughtOn: DAY,
  registrationExpiresOn: DAY,
  insuranceExpiresOn: DAY,
  stored: z.enum(['open', 'cover']).describe('How it is stored.'),
  registrationPlate: text(TEXT.mark, 'Registration plate.'),
  boughtForCents: CENTS.describe('Price, in cents.'),
  note: text(TEXT.page, 'A note.'),
};
const NUMBER = { yardNumber: text(TEXT.mark, 'The short number painted on it, such as T-07.') };
export const STATUS = z.enum(['in-service', 'sold', 'scrapped']);

const { registrationPlate, boughtForCents, note, ...RULED } = IDENTITY;
/** The trailer as the rules know it. */
export const TRAILER_FACT = z
  .object({ id: ID, ...NUMBER, status: STATUS, ...known(RULED) })
  .meta({ id: 'TrailerFact' });

export const TRAILER = TRAILER_FACT.extend(known({ registrationPlate, boughtForCents, note })).meta({ id: 'Trailer' });

export const TIRE = {
  size: text(TEXT.mark, 'As on the sidewall, such as ST235/80R16.'),
  kind: z.enum(['ST', 'LT', 'passenger', 'truck']),
  loadIndexSingle: quantity(PLAUSIBLE_TIRE.loadIndex),
  loadIndexDual: quantity(PLAUSIBLE_TIRE.loadIndex),
  maxLoadSingleKg: quantity(PLAUSIBLE_TIRE.maxLoad),
  maxLoadDualKg: quantity(PLAUSIBLE_TIRE.maxLoad),
  loadRange: text(TEXT.mark, 'Letter on the sidewall, such as E.'),
  speedSymbol: text(TEXT.mark, 'Letter beside the load index, such as M.'),
  maxColdPressureKpa: quantity(PLAUSIBLE_TIRE.maxColdPressure),
  dateCode: text(TEXT.mark, 'Week and year, four digits (49 CFR 574.5), or the whole tire identification number.'),
};
const PART_KIND = z.enum(PART_KINDS);
const POSITION = text(TEXT.mark, 'Axle from the front and side: 1L, 2R; duals 1LI, 1LO; or spare.');

const BEARINGS = {
  inner: text(TEXT.mark, 'Industry number stamped on the cone of the inner bearing, such as 25580.'),
  outer: text(TEXT.mark, 'The same of the outer bearing, such as L44649.'),
};
const REMOVED_FOR = z
  .enum(['worn-out', 'damaged', 'precaution', 'moved'])
  .describe('Why it came off. Only what was worn out or broke tells how long such a part lasts.');

export const PART = z
  .object({
    id: ID,
    kind: PART_KIND,
    ...known({
      position: POSITION,
      fittedOn: DAY,
      removedOn: DAY,
      removedFor: REMOVED_FOR,
      tire: z.object(known(TIRE)),
      bearings: z.object(known(BEARINGS)),
      costCents: CENTS.describe('What it cost, in cents.'),
    }),
  })
  .meta({ id: 'Part' });

export const DECK_LIFE = z
  .object({
    partId: ID,
    trailerId: ID,
    laidOn: DAY,
    endedOn: DAY.nullable().describe('Null while it still lies.'),
    wornOut: z.boolean().describe('Whether it was worn out or broke; otherwise its life went on unseen.'),
    ...known({
      material: z.enum(DECK_MATERIALS),
      wood: z.enum(WOODS),
      treated: z.boolean(),
      stored: z.enum(['open', 'cover']),
    }),
  })
  .meta({ id: 'DeckLife', description: 'How long one deck of the yard has lasted.' });

const PART_FIELDS = {
  kind: PART_KIND,
  ...maybe({
    position: POSITION,
    fittedOn: DAY,
    tire: z.strictObject(maybe(TIRE)).describe("A tire's marks; left out for anything else."),
    bearings: z.strictObject(maybe(BEARINGS)).describe("A hub's bearing numbers; left out for anything else."),
    name: text(TEXT.name, 'What people call it.'),
    costCents: CENTS.describe('What it cost, in cents.'),
  }),
};
const PART_BODY = z.strictObject(PART_FIELDS).meta({ id: 'PartBody' });
export const CORRECT_PART_BODY = z
  .strictObject({ ...PART_FIELDS, removedOn: DAY.nullish(), removedFor: REMOVED_FOR.nullish() })
  .meta({ id: 'CorrectPartBody' });
export const REMOVE_PART_BODY = z.strictObject({ removedOn: DAY, removedFor: REMOVED_FOR.nullish() });
/** What was in its place comes off on the same day. */
export const FIT_PART_BODY = z
  .strictObject({ ...PART_FIELDS, replacedFor: REMOVED_FOR.nullish() })
  .meta({ id: 'FitPartBody' });

export const ADD_TRAILER_BODY = z
  .strictObject({
    ...NUMBER,
    ...maybe({
      ...IDENTITY,
      build: BUILD_BODY,
      builtSince: DAY.describe('The day from which it was built so; the day it was bought, or today, when left out.'),
      parts: z.array(PART_BODY).max(60),
    }),
  })
  .meta({ id: 'AddTrailerBody' });

export const UPDATE_TRAILER_BODY = z
  .strictObject({ yardNumber: NUMBER.yardNumber.optional(), status: STATUS.nullish(), ...maybe(IDENTITY) })
  .meta({ id: 'UpdateTrailerBody', description: 'Fields left out stay as they are; null makes a field unknown.' });
