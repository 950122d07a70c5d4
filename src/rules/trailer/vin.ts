/**
 * Value of each letter in the check sum; a digit counts as itself. I, O and Q are never used.
 * Source: 49 CFR 565.15(c)(1), Table III.
 */
const LETTER_VALUES: Readonly<Record<string, number>> = {
  A: 1,
  B: 2,
  C: 3,
  D: 4,
  E: 5,
  F: 6,
  G: 7,
  H: 8,
  J: 1,
  K: 2,
  L: 3,
  M: 4,
  N: 5,
  P: 7,
  R: 9,
  S: 2,
  T: 3,
  U: 4,
  V: 5,
  W: 6,
  X: 7,
  Y: 8,
  Z: 9,
};

/** Weight of each place; the ninth is the check digit itself. Source: 49 CFR 565.15(c)(2), Table IV. */
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** Tenth place, from 1980 on, 30 years a round. Source: 49 CFR 565.15(d)(1), Table VII. */
const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789';
const FIRST_YEAR = 1980;

const LENGTH = 17;
const CHECK_PLACE = 9;
const YEAR_PLACE = 10;

export type VinReading =
  /** `modelYears`: the one or two years the code can mean. On a trailer nothing in the number tells them apart. */
  | {
      readonly kind: 'right';
      readonly vin: string;
      readonly modelYears: readonly number[];
      /** The first three characters; a small maker's go on with the twelfth to fourteenth: `1X9+LM1`. */
      readonly maker: string;
    }
  /** A character that no number may hold, and where, from 1. A letter O is never taken for a zero. */
  | { readonly kind: 'bad-character'; readonly character: string; readonly place: number }
  /** Not of 17: a trailer from before model year 1981, a home-built one, or a slip. */
  | { readonly kind: 'bad-length'; readonly vin: string; readonly length: number }
  | { readonly kind: 'bad-check-digit'; readonly vin: string; readonly found: string; readonly expected: string };

/**
 * Reads a vehicle identification number. Small letters and blanks are allowed.
 * The check digit cannot catch a slip between characters of one value, such as A, J and 1.
 * Source: 49 CFR 565.13 and 565.15.
 */
export function readVin(text: string): VinReading {
  const vin = text.replace(/\s/g, '').toUpperCase();
  const values = [...vin].map((character) => (/\d/.test(character) ? Number(character) : LETTER_VALUES[character]));
  const bad = values.indexOf(undefined);
  if (bad !== -1) return { kind: 'bad-character', character: vin[bad] ?? '', place: bad + 1 };
  if (vin.length !== LENGTH) return { kind: 'bad-length', vin, length: vin.length };

  const sum = WEIGHTS.reduce<number>((total, weight, place) => total + weight * (values[place] ?? 0), 0);
  const expected = sum % 11 === 10 ? 'X' : String(sum % 11);
  const found = vin.charAt(CHECK_PLACE - 1);
  if (found !== expected) return { kind: 'bad-check-digit', vin, found, expected };

  const code = YEAR_CODES.indexOf(vin.charAt(YEAR_PLACE - 1));
  const modelYears = code === -1 ? [] : [FIRST_YEAR + code, FIRST_YEAR + YEAR_CODES.length + code];
  return { kind: 'right', vin, modelYears, maker: makerOf(vin) };
}

/** A third character of 9 marks a maker of under 1,000 a year, known only with places 12 to 14. Source: 49 CFR 565.15(a), (d)(3). */
function makerOf(vin: string): string {
  const maker = vin.slice(0, 3);
  return maker.endsWith('9') ? `${maker}+${vin.slice(11, 14)}` : maker;
}

/**
 * The model year a trailer's number most likely means on a day: the later one not beyond next calendar year, since a
 * maker may sell next year's models. Null when the code has no year. Our choice: the rule tells the two rounds of the
 * code apart for light vehicles only (565.15(b)), so the build month on the certification label comes first.
 */
export function likeliestModelYear(modelYears: readonly number[], calendarYear: number): number | null {
  return modelYears.findLast((year) => year <= calendarYear + 1) ?? null;
}
