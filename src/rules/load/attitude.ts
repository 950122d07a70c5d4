import type { Newtons } from '../units/force.js';
import type { Metres } from '../units/length.js';
import type { Attitude } from './torsion.js';

/** That torsion axles were not level, and how we know: by how much where heights were measured, else by the axles' loads. */
export interface RodeOffLevel {
  readonly standing: 'nose-high' | 'nose-low';
  /** Coupler above the height at which the trailer is level; null where only the axles' loads tell. */
  readonly raisedM: Metres | null;
}

/** Null where neither heights nor the axles' loads tell. */
export function rodeOffLevelBy(check: {
  readonly attitude: Attitude | null;
  readonly axleN: readonly Newtons[] | null;
}): RodeOffLevel | null {
  const { attitude, axleN } = check;
  if (attitude !== null && attitude.standing !== 'level') {
    return { standing: attitude.standing, raisedM: attitude.raisedM };
  }
  const [first, last] = [axleN?.[0], axleN?.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  return { standing: last > first ? 'nose-high' : 'nose-low', raisedM: null };
}
