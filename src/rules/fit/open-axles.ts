import type { LoadCheck } from '../load/load-check.js';

type LoadUnknown = LoadCheck['unknowns'][number];

/** What leaves an axle or tire open that a scale would settle: under each axle, or under each side of it. */
const SETTLED_BY_SCALE: ReadonlySet<LoadUnknown['lacks']> = new Set([
  'cargo-mass',
  'balance-point',
  'empty-tongue',
  'axle-places',
  'suspension',
  'torsion-level',
  'spring-rate',
  'axle-track',
]);

/** Whether an axle or tire could not be held against its rating for want of something that a scale would tell. */
export function isSettledByScale(unknown: LoadUnknown): boolean {
  return isOpen(unknown) && SETTLED_BY_SCALE.has(unknown.lacks);
}

/** Whether it stands open only because torsion axles do not ride level, or not known to. */
export function isSettledByLevel(unknown: LoadUnknown): boolean {
  return isOpen(unknown) && (unknown.lacks === 'torsion-level' || unknown.lacks === 'spring-rate');
}

function isOpen({ stops }: LoadUnknown): boolean {
  return stops === 'axle-check' || stops === 'tire-check';
}
