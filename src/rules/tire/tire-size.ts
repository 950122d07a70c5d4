import { inch, type Metres, metres } from '../units/length.js';

/** A tire's size, read. Only what the marking itself says. */
export interface TireSize {
  readonly letters: 'P' | 'LT' | 'ST' | null;
  readonly widthM: Metres;
  /** Height of the sidewall over the width, such as 0.8. */
  readonly aspect: number;
  /** R radial, D diagonal (bias), B belted bias. */
  readonly construction: 'radial' | 'diagonal' | 'belted';
  readonly rimM: Metres;
}

const CONSTRUCTIONS = { R: 'radial', D: 'diagonal', '-': 'diagonal', B: 'belted' } as const;

/**
 * Reads a metric size such as `ST235/80R16`, `LT 235/85 R 16 E` or `215/75R17.5`; null for anything else.
 * Form: 49 CFR 571.139 S5.5 and 571.119 S6.5 leave the designation to the tire yearbooks; the reading of its letters
 * is common practice.
 */
export function readTireSize(text: string): TireSize | null {
  const match = /^\s*(P|LT|ST)?\s*(\d{3})\s*\/\s*(\d{2,3})\s*([RDB-])\s*(\d{2}(?:\.\d)?)(?!\d)/i.exec(text);
  if (match === null) return null;
  const [, letters, width, aspect, construction, rim] = match;
  return {
    letters: (letters?.toUpperCase() ?? null) as TireSize['letters'],
    widthM: metres(Number(width) / 1000),
    aspect: Number(aspect) / 100,
    construction: CONSTRUCTIONS[construction?.toUpperCase() as keyof typeof CONSTRUCTIONS],
    rimM: inch(Number(rim)),
  };
}

/** How far a new tire of this size stands across, not loaded: rim and twice the sidewall. */
export function nominalDiameter({ widthM, aspect, rimM }: TireSize): Metres {
  return metres(rimM + 2 * widthM * aspect);
}
