import { type Kilometres, km } from '../units/distance.js';
import type { Newtons } from '../units/force.js';
import { LIFE_EXPONENT, MILLION_REVOLUTIONS, type RollingBody } from './dynamic-rating.js';

/**
 * Revolutions that 90 % of such bearings reach or pass: L10 = (C1/P)^p million.
 *
 * `millionN` is the rating on the base of 1 million revolutions, `loadN` the equivalent load; both above 0, else
 * RangeError. Source: ISO 281, basic rating life. Valid for sound, clean, rightly set bearings: the hub of a trailer
 * mostly fails by water, old grease or preload long before, so this never sets a date for a repack.
 */
export function basicLife(millionN: Newtons, loadN: Newtons, body: RollingBody = 'roller'): number {
  if (!(millionN > 0) || !(loadN > 0)) {
    throw new RangeError(`a life needs a rating and a load above 0, not ${millionN} N and ${loadN} N`);
  }
  return MILLION_REVOLUTIONS * (millionN / loadN) ** LIFE_EXPONENT[body];
}

/** Road distance of a number of revolutions, at so many a kilometre. */
export function lifeDistance(revolutions: number, revolutionsPerKm: number): Kilometres {
  if (!(revolutionsPerKm > 0)) throw new RangeError(`a wheel turns more than ${revolutionsPerKm} times a kilometre`);
  return km(revolutions / revolutionsPerKm);
}

/**
 * Exponent by which the lives of bearings on one shaft add up. 9/8: slope of the life scatter of roller bearings in
 * ISO 281. From memory, unverified.
 */
const SET_EXPONENT = 9 / 8;

/**
 * Revolutions of which a set survives whole with the reliability that each bearing has alone: L = (Σ L_i^-w)^(-1/w).
 * Shorter than the shortest of them. All lives above 0 and at the same reliability; an empty list has no life to give.
 */
export function setLife(lives: readonly number[], exponent: number = SET_EXPONENT): number {
  if (lives.length === 0 || lives.some((life) => !(life > 0))) {
    throw new RangeError('a set has at least one bearing, and each a life above 0');
  }
  return lives.reduce((sum, life) => sum + life ** -exponent, 0) ** (-1 / exponent);
}
