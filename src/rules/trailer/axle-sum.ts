import type { BuildSheet } from '../facts/build-sheet.js';
import { type Kilograms, kg } from '../units/mass.js';

/** The axle ratings of a build added up: the plate's, or the axle maker's where the plate is silent. Null while one is unknown. */
export function axleSum(build: BuildSheet): Kilograms | null {
  let sum = 0;
  for (const { gawrKg, ratingKg } of build.axles) {
    const rating = gawrKg ?? ratingKg;
    if (rating === null) return null;
    sum += rating;
  }
  return build.axles.length === 0 ? null : kg(sum);
}
