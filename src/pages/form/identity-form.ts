import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerIdentity, TrailerInput } from '../../use-cases/input/trailer-input.js';

import { asText } from './fill-form.js';
import type { FormReader } from './read-form.js';

/** A day as typed; the use case says what is wrong with one that does not exist. */
export const typedDay = (text: string | null) => text as CivilDate | null;

export function readIdentityForm(form: FormReader): TrailerInput {
  return {
    yardNumber: form.need('yardNumber'),
    name: form.text('name'),
    vin: form.text('vin'),
    registrationPlate: form.text('registrationPlate'),
    registrationExpiresOn: typedDay(form.text('registrationExpiresOn')),
    insuranceExpiresOn: typedDay(form.text('insuranceExpiresOn')),
    boughtOn: typedDay(form.text('boughtOn')),
    boughtForCents: form.dollars('boughtFor'),
    stored: form.text('stored') as TrailerInput['stored'],
    note: form.text('note'),
  };
}

export function fillIdentityForm(trailer: TrailerIdentity): Record<string, string> {
  return {
    yardNumber: trailer.yardNumber,
    name: asText(trailer.name),
    vin: asText(trailer.vin),
    registrationPlate: asText(trailer.registrationPlate),
    registrationExpiresOn: asText(trailer.registrationExpiresOn),
    insuranceExpiresOn: asText(trailer.insuranceExpiresOn),
    boughtOn: asText(trailer.boughtOn),
    boughtFor: trailer.boughtForCents === null ? '' : String(trailer.boughtForCents / 100),
    stored: asText(trailer.stored),
    note: asText(trailer.note),
  };
}
