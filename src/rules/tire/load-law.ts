import type { TireMarks } from '../facts/part.js';
import { exceeds } from '../units/compare.js';
import { type Kilograms, kg } from '../units/mass.js';
import { type Kilopascals, kPa } from '../units/pressure.js';
import { type Mounting, tireRating } from './tire-capacity.js';

/**
 * How a kind of tire's load rises with its pressure: load = L0 (P / P0)^n, P cold gauge pressure, P0 and L0 as marked.
 * An estimate, not a rating: on published rows it reads up to 1 % low or high, so it never clears or breaks a limit.
 */
export interface LoadLaw {
  readonly exponent: number;
  /** `fitted`: to published rows. `published`: printed as such. `memory`: from memory, unverified. */
  readonly basis: 'fitted' | 'published' | 'memory';
  /** The kind of tire it is for. */
  readonly kind: 'ST' | 'LT' | 'P-metric' | 'metric-passenger' | 'truck';
}

/**
 * ST: mean of least squares fits, in logarithms, to the five published sizes with three rows or more (0.573 to 0.602), see
 * `tire-load-table.ts`; also the older exponent of tire yearbooks, from memory.
 * LT: the same exponent, from memory. P-metric since 1985: the square root, eng-tips.com FAQ 108-1148.
 * Metric passenger without a P: 0.65, from memory. Radial truck: 0.7, from memory.
 */
const LAWS: Readonly<Record<LoadLaw['kind'], LoadLaw>> = {
  ST: { exponent: 0.585, basis: 'fitted', kind: 'ST' },
  LT: { exponent: 0.585, basis: 'memory', kind: 'LT' },
  'P-metric': { exponent: 0.5, basis: 'published', kind: 'P-metric' },
  'metric-passenger': { exponent: 0.65, basis: 'memory', kind: 'metric-passenger' },
  truck: { exponent: 0.7, basis: 'memory', kind: 'truck' },
};

/** The law of a tire's kind, by its marked kind or else by the letters of its size; null when neither tells. */
export function loadLaw({ kind, size }: Pick<TireMarks, 'kind' | 'size'>): LoadLaw | null {
  const letters = /^\s*(ST|LT|P)\s?\d/i.exec(size ?? '')?.[1]?.toUpperCase() ?? null;
  const named = kind ?? (letters === 'P' ? 'passenger' : letters);
  switch (named) {
    case 'ST':
      return LAWS.ST;
    case 'LT':
      return LAWS.LT;
    case 'truck':
      return LAWS.truck;
    case 'passenger':
      return letters === 'P' ? LAWS['P-metric'] : LAWS['metric-passenger'];
    default:
      return null;
  }
}

/** What the law makes of a tire at a pressure. `estimate` says so: pages show it beside a rating, never as one. */
export type LoadEstimate =
  | { readonly kind: 'estimate'; readonly massKg: Kilograms; readonly law: LoadLaw }
  | { readonly kind: 'unknown'; readonly lacks: EstimateLack };

export type PressureEstimate =
  | { readonly kind: 'estimate'; readonly coldKpa: Kilopascals; readonly law: LoadLaw }
  /** More than the sidewall's own load: no pressure carries it. */
  | { readonly kind: 'too-heavy'; readonly mostKg: Kilograms }
  | { readonly kind: 'unknown'; readonly lacks: EstimateLack };

type EstimateLack = 'max-load' | 'max-pressure' | 'tire-kind';

/** The estimated load at a cold gauge pressure, kg; the sidewall's own load at its pressure and above, never more. */
export function estimateLoad(marks: TireMarks, mounting: Mounting, coldKpa: Kilopascals): LoadEstimate {
  const base = lawOf(marks, mounting);
  if ('lacks' in base) return { kind: 'unknown', lacks: base.lacks };
  const share = Math.min(1, Math.max(0, coldKpa) / base.atKpa);
  return { kind: 'estimate', massKg: kg(base.massKg * share ** base.law.exponent), law: base.law };
}

/** The estimated least cold gauge pressure for a load on one tire: P0 (load / L0)^(1/n). Throws RangeError for a load below 0. */
export function estimatePressure(marks: TireMarks, mounting: Mounting, loadKg: Kilograms): PressureEstimate {
  if (!(loadKg >= 0)) throw new RangeError(`a load of ${loadKg} kg on a tire: must be 0 or more`);
  const base = lawOf(marks, mounting);
  if ('lacks' in base) return { kind: 'unknown', lacks: base.lacks };
  if (exceeds(loadKg, base.massKg)) return { kind: 'too-heavy', mostKg: base.massKg };
  const share = Math.min(1, loadKg / base.massKg);
  return { kind: 'estimate', coldKpa: kPa(base.atKpa * share ** (1 / base.law.exponent)), law: base.law };
}

function lawOf(
  marks: TireMarks,
  mounting: Mounting,
):
  | { readonly massKg: Kilograms; readonly atKpa: Kilopascals; readonly law: LoadLaw }
  | { readonly lacks: EstimateLack } {
  const rated = tireRating(marks, mounting);
  if (rated === null) return { lacks: 'max-load' };
  const atKpa = marks.maxColdPressureKpa;
  if (atKpa === null || !(atKpa > 0)) return { lacks: 'max-pressure' };
  const law = loadLaw(marks);
  return law === null ? { lacks: 'tire-kind' } : { massKg: rated.massKg, atKpa, law };
}
