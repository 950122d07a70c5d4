import { z } from 'zod';
import { PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { quantity, text } from './values.js';

const R = PLAUSIBLE_SETTING;

export const YARD_BODY = z
  .strictObject({
    name: text(TEXT.name, "The yard's name.").optional(),
    timeZone: text(TEXT.name, 'Name of the IANA list, such as America/Chicago.').optional(),
    place: text(TEXT.line, 'Where the yard is.').nullish(),
    quietFromHour: quantity(R.hour).optional().describe('Hour at which quiet begins: no mail but a stop.'),
    quietToHour: quantity(R.hour).optional().describe('Hour at which quiet ends.'),
    planHour: quantity(R.hour).optional().describe('Hour at which the day is planned.'),
    policy: z
      .strictObject({
        tireAgeLimitYears: quantity(R.tireAgeLimit),
        weighFirstShare: quantity(R.weighFirst),
        useWindowDays: quantity(R.useWindow),
        driftTrips: quantity(R.driftTrips),
        decayIndex: quantity(R.decayIndex)
          .nullable()
          .describe('Decay hazard index of the place (Scheffer); null while nobody gave it.'),
        deckLifeYears: quantity(R.deckLifeYears)
          .nullable()
          .describe('Years the owner expects a deck to last here in the open; null: reckoned.'),
      })
      .partial()
      .nullish(),
  })
  .meta({ id: 'YardBody', description: 'Settings left out stay as they are.' });
