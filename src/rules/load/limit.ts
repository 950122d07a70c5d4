import type { Newtons } from '../units/force.js';

/** One rated number, where it comes from and what it rates. Kept as a force, so that it compares with a load. */
export interface Limit {
  readonly kind: LimitKind;
  /** Which one, where there are several: an axle number, axles from and to (`1-2`), a wheel position. */
  readonly subject: string | null;
  readonly limitN: Newtons;
  readonly origin: LimitOrigin;
}

export type LimitKind =
  | 'plate'
  | 'axle-group'
  | 'axle'
  | 'tire'
  | 'coupler'
  | 'coupler-tongue'
  | 'tow-hitch'
  | 'tow-hitch-tongue'
  /** What the law lets consecutive axles carry. */
  | 'legal-axles';

export type LimitOrigin =
  | 'plate'
  | 'axle-maker'
  | 'tire-sidewall'
  | 'load-index'
  | 'tire-table'
  | 'coupler-maker'
  | 'tow-vehicle'
  | 'law';

/** A load held against a limit. */
export interface Comparison {
  readonly limit: Limit;
  readonly loadN: Newtons;
  /** Limit less load; negative when over. */
  readonly marginN: Newtons;
  /** True when every weight in the sum was weighed. */
  readonly measured: boolean;
  /** `near`: inside, but by less than the yard's weigh-first share, and some weight in it was never weighed. */
  readonly standing: 'inside' | 'near' | 'over';
}
