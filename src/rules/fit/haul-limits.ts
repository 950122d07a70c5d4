import { partsOn } from '../facts/parts-on.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { coldPressuresFound } from '../inspection/cold-pressures.js';
import type { LoadLimits } from '../load/load-limits.js';
import { loadLimits } from '../trailer/load-limits.js';
import type { FitInput } from './fit-answer.js';
import { NOTHING_KNOWN } from './nothing-known.js';

/** Every limit of a haul: the build, tires and pressures of its first day, and the tow vehicle. */
export function haulLimits(trailer: TrailerOn, { startsOn, towVehicle }: FitInput): LoadLimits {
  const build = trailer.buildOn(startsOn);
  if (build === null) return NOTHING_KNOWN;
  return loadLimits({
    build,
    tires: partsOn(trailer.facts.parts, 'tire', startsOn),
    coldPressures: new Map([...coldPressuresFound(trailer)].map(([at, found]) => [at, found.coldKpa])),
    towVehicle,
  });
}
