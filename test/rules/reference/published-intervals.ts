/**
 * Intervals as published, and which of our checks carries each. Sources: "manuals" are owner manuals found in public,
 * makers withheld; TM is a US Army technical manual; "practice" is common practice with no source.
 */
export interface PublishedInterval {
  readonly item: string;
  readonly code: string;
  readonly months?: number;
  readonly mi?: number;
  readonly event?: string;
  readonly atMi?: readonly number[];
  readonly source: string;
}

export const PUBLISHED_INTERVALS: readonly PublishedInterval[] = [
  { item: 'bearings', code: 'hub-repack', months: 12, mi: 12_000, event: 'submerged', source: 'manuals' },
  { item: 'bearings after six idle months', code: 'hub-repack', event: 'idle-half-year', source: 'manuals' },
  { item: 'wheel nuts', code: 'wheel-nut-torque', event: 'wheel-off', atMi: [10, 25, 50], source: 'manuals' },
  { item: 'new brakes', code: 'brake-adjust', event: 'brakes-new', atMi: [200], source: 'manuals' },
  { item: 'brakes, adjusted by hand', code: 'brake-adjust', mi: 3_000, source: 'manuals' },
  { item: 'brakes', code: 'brake-inspect', months: 6, source: 'TM 9-2330-324-14&P' },
  { item: 'nut torque', code: 'wheel-nut-torque', months: 6, source: 'TM 9-2330-324-14&P' },
  { item: 'springs, U-bolts', code: 'springs-u-bolts', months: 6, source: 'TM 9-2330-324-14&P' },
  { item: 'stands, supports', code: 'supports', months: 6, source: 'TM 9-2330-247-14&P' },
  { item: 'tread, sidewalls', code: 'tire-tread', months: 3, mi: 3_000, source: 'manuals' },
  { item: 'rims', code: 'tire-tread', months: 12, source: 'manuals' },
  { item: 'structure', code: 'structure', months: 3, mi: 3_000, source: 'manuals' },
  { item: 'deck boards, probed', code: 'deck-probe', months: 12, source: 'a trade list' },
  { item: 'jack grease', code: 'jack-grease', months: 12, source: 'manuals' },
  { item: 'periodic inspection', code: 'annual-inspection', months: 12, source: '49 CFR 396.17' },
  { item: 'shackles', code: 'shackles', months: 12, mi: 12_000, source: 'practice' },
  { item: 'coupler latch', code: 'coupler-latch', months: 12, source: 'practice' },
  { item: 'brakes on salt', code: 'brake-inspect', event: 'salt-half-time', source: 'practice' },
  { item: 'U-bolts on salt', code: 'springs-u-bolts', event: 'salt-half-time', source: 'practice' },
  { item: 'after 90 idle days', code: 'first-use', event: 'idle', source: 'practice' },
];

/** Asked for before each tow, or at each stop: on a sheet without a date. */
export const BEFORE_EACH_TOW: readonly { readonly item: string; readonly code: string; readonly line: string }[] = [
  { item: 'cold pressure', code: 'pre-trip', line: 'pressure' },
  { item: 'wheel nuts after the first fifty miles', code: 'pre-trip', line: 'nuts' },
  { item: 'breakaway', code: 'pre-trip', line: 'chains' },
  { item: 'lights', code: 'pre-trip', line: 'lamps' },
  { item: 'chains, coupler, ball', code: 'pre-trip', line: 'latch' },
  { item: 'hub temperature at each stop', code: 'road-stop', line: 'hub-temperature' },
];
