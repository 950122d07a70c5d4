import type { CivilDate } from '../calendar/civil-date.js';

/** A trailer as a thing owned: what does not change when parts do. `null` everywhere means unknown. */
export interface Trailer {
  readonly id: string;
  /** The short number painted on it, such as `T-07`. */
  readonly yardNumber: string;
  readonly name: string | null;
  readonly vin: string | null;
  readonly status: 'in-service' | 'sold' | 'scrapped';
  readonly boughtOn: CivilDate | null;
  readonly registrationExpiresOn: CivilDate | null;
  readonly insuranceExpiresOn: CivilDate | null;
  readonly stored: 'open' | 'cover' | null;
}
