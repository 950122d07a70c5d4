import { type CivilDate, day } from '../calendar/civil-date.js';
import { type DateCode, type DateCodeRefusal, parseDateCode } from './date-code.js';

/**
 * A tire identification number, as molded into the sidewall after the letters "DOT".
 * Forms, by 49 CFR 574.5: `present` 13 symbols, plant 3 + maker 6 + date 4 (b); `retread` 7, plant 3 + date 4 (c);
 * `old` up to 12, plant 2 + size up to 2 + up to 4 more + date 4 (g), lawful for new tires until 13 April 2025.
 */
export type TireNumber =
  | {
      readonly kind: 'read';
      readonly form: 'present' | 'retread' | 'old';
      readonly plantCode: string;
      /** The six symbols of the maker; only the present form has them. */
      readonly manufacturerCode: string | null;
      readonly date: Extract<DateCode, { kind: 'week' }>;
      /** Off the rule, but not refused: sidewalls are misread and makers err. */
      readonly warnings: readonly 'old-form-lapsed'[];
    }
  /** Three digits end it: over 25 years old whatever the decade. Replace. */
  | {
      readonly kind: 'before-2000';
      readonly plantCode: string;
      readonly dateDigits: string;
      readonly week: number;
      /** One digit tells the year only within its decade. Oldest first. */
      readonly yearCandidates: readonly number[];
    }
  | { readonly kind: 'refused'; readonly reason: TireNumberRefusal };

export type TireNumberRefusal =
  /** A symbol that no tire number holds: G, I, O, Q, S, Z, or no letter or digit at all. Source: 49 CFR 574.5(f). */
  | { readonly kind: 'symbol-not-allowed'; readonly symbol: string }
  | { readonly kind: 'no-such-form'; readonly symbols: number }
  | DateCodeRefusal;

/** Source: 49 CFR 574.5(f). */
const NOT_ALLOWED = /[^A-HJ-NPRT-Y0-9]|G/;

/** From this day new tires bear the present form. Source: 49 CFR 574.5(g); 80 FR 19553. */
const OLD_FORM_LAPSED = day('2025-04-13');

/** Symbols before the date, by form. Old: 2 plant, then up to 6 more. */
const PRESENT_LEAD = 9;
const RETREAD_LEAD = 3;
const OLD_LEAD_MOST = 8;
const OLD_LEAD_LEAST = 2;

/** Decades in which three-digit dates could have been molded; tire numbers began in the 1970s. */
const THREE_DIGIT_DECADES = [1970, 1980, 1990];

/**
 * Reads a tire number as typed from a sidewall. The mark "DOT", a retread's "R" set apart from the number, blanks and
 * hyphens are no part of it (49 CFR 574.5(e)). `asOf`: a tire made after that day is a misreading.
 */
export function parseTireNumber(text: string, asOf: CivilDate): TireNumber {
  const symbols = text
    .trim()
    .toUpperCase()
    .replace(/^DOT[\s-]*/, '')
    .replace(/^R[\s-]+/, '')
    .replaceAll(/[\s-]/g, '');
  const stranger = NOT_ALLOWED.exec(symbols);
  if (stranger !== null) return { kind: 'refused', reason: { kind: 'symbol-not-allowed', symbol: stranger[0] } };
  if (/[A-Z]\d{3}$/.test(symbols)) return beforeTwoThousand(symbols);

  const lead = symbols.slice(0, -4);
  const form = formOf(lead.length);
  if (form === null) return { kind: 'refused', reason: { kind: 'no-such-form', symbols: symbols.length } };
  const date = parseDateCode(symbols.slice(-4), asOf);
  if (date.kind === 'refused') return { kind: 'refused', reason: date.reason };
  return {
    kind: 'read',
    form,
    plantCode: lead.slice(0, form === 'old' ? 2 : 3),
    manufacturerCode: form === 'present' ? lead.slice(3) : null,
    date,
    warnings: form === 'old' && date.madeFrom >= OLD_FORM_LAPSED ? ['old-form-lapsed'] : [],
  };
}

/** Seven symbols read as a retread in the present form, the commoner of the two that have seven. */
function formOf(leadLength: number): 'present' | 'retread' | 'old' | null {
  if (leadLength === PRESENT_LEAD) return 'present';
  if (leadLength === RETREAD_LEAD) return 'retread';
  return leadLength >= OLD_LEAD_LEAST && leadLength <= OLD_LEAD_MOST ? 'old' : null;
}

/** A letter before the last three digits shows that there are only three: week, and last digit of the year. */
function beforeTwoThousand(symbols: string): TireNumber {
  const lead = symbols.slice(0, -3);
  if (lead.length < OLD_LEAD_LEAST || lead.length > OLD_LEAD_MOST) {
    return { kind: 'refused', reason: { kind: 'no-such-form', symbols: symbols.length } };
  }
  const dateDigits = symbols.slice(-3);
  return {
    kind: 'before-2000',
    plantCode: lead.slice(0, 2),
    dateDigits,
    week: Number(dateDigits.slice(0, 2)),
    yearCandidates: THREE_DIGIT_DECADES.map((decade) => decade + Number(dateDigits.slice(2))),
  };
}
