import { type Metres, metres } from '../units/length.js';

/**
 * Turns of a wheel a kilometre of road, from the radius at which its loaded axle rides: 1000 / (2 π r).
 * Turns a mile are this times 1.609344. The radius must be above 0, else RangeError.
 */
export function turnsPerKm(loadedRadiusM: Metres): number {
  if (!(loadedRadiusM > 0)) throw new RangeError(`a wheel has a radius above 0, not ${loadedRadiusM} m`);
  return 1000 / (2 * Math.PI * loadedRadiusM);
}

/**
 * Loaded radius over half the tire's overall diameter. 0.97: a 27 in tire makes about 770 turns a mile. Common
 * practice, no source. A real tire turns a little less often than its standing radius says, so lives come out short.
 */
const LOADED_OVER_FREE = 0.97;

/** Loaded radius from a tire's overall diameter when new. */
export function loadedRadius(overallDiameterM: Metres): Metres {
  return metres((overallDiameterM / 2) * LOADED_OVER_FREE);
}
