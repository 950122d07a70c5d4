import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import type { Trailer } from '../../rules/facts/trailer.js';
import { readVin, type VinReading } from '../../rules/trailer/vin.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';

/** A trailer as a thing owned, with what the yard keeps about it beside the rules' facts. */
export type TrailerIdentity = Omit<Trailer, 'id' | 'status'> & {
  readonly registrationPlate: string | null;
  readonly boughtForCents: number | null;
  readonly note: string | null;
};

export type TrailerInput = Incoming<TrailerIdentity>;

/** Said on entry, and never in the way: the number on the frame is what it is. */
export type VinDoubt = Extract<VinReading, { kind: 'bad-length' | 'bad-check-digit' }>;

export function readTrailer(
  given: Given,
  today: CivilDate,
): { readonly trailer: TrailerIdentity; readonly vinDoubt: VinDoubt | null } {
  const { vin, doubt } = readVinField(given);
  return {
    trailer: {
      yardNumber: given.needText('yardNumber', 'the yard number painted on it', TEXT.mark),
      name: given.text('name', 'the name', TEXT.name),
      vin,
      boughtOn: given.date('boughtOn', 'the day it was bought', { notAfter: today, notAfterIs: 'today' }),
      registrationExpiresOn: given.date('registrationExpiresOn', 'the day the registration expires'),
      insuranceExpiresOn: given.date('insuranceExpiresOn', 'the day the insurance expires'),
      stored: given.choice('stored', 'how it is stored', ['open', 'cover'] as const),
      registrationPlate: given.text('registrationPlate', 'the registration plate', TEXT.mark),
      boughtForCents: given.number('boughtForCents', { ...PLAUSIBLE_SETTING.cents, what: 'the price, in cents' }),
      note: given.text('note', 'the note', TEXT.page),
    },
    vinDoubt: doubt,
  };
}

function readVinField(given: Given): { readonly vin: string | null; readonly doubt: VinDoubt | null } {
  const text = given.text('vin', 'the VIN', 40);
  if (text === null) return { vin: null, doubt: null };
  const reading = readVin(text);
  switch (reading.kind) {
    case 'bad-character':
      given.refuse(
        'vin',
        `Read the VIN again: no VIN holds "${reading.character}" (place ${reading.place}). Leave it out if there is none.`,
      );
      return { vin: null, doubt: null };
    case 'right':
      return { vin: reading.vin, doubt: null };
    default:
      return { vin: reading.vin, doubt: reading };
  }
}
