import { Prisma } from './generated/client.js';

const TRAILER_FIELDS = Prisma.sql`
  'id', trailer.id,
  'yardNumber', trailer.yard_number,
  'name', trailer.name,
  'vin', trailer.vin,
  'status', trailer.status,
  'boughtOn', trailer.bought_on,
  'registrationExpiresOn', trailer.registration_expires_on,
  'insuranceExpiresOn', trailer.insurance_expires_on,
  'stored', trailer.stored`;

/** A trailer as the rules know it. */
export const TRAILER = Prisma.sql`json_build_object(${TRAILER_FIELDS})`;

/** The same with what the yard keeps beside. */
export const KEPT_TRAILER = Prisma.sql`json_build_object(${TRAILER_FIELDS},
  'registrationPlate', trailer.registration_plate,
  'boughtForCents', trailer.bought_for_cents,
  'note', trailer.note)`;
