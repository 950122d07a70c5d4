import { attitudeOf } from '../load/torsion.js';
import { bestParking } from '../trailer/cargo-envelope.js';
import type { FitCase, FitParking } from './fit-answer.js';

/** Where on the deck the machine of this haul is best parked, torsion axles held at the height at which it rides. */
export function parkingFor({ trailer, input, limits }: FitCase): FitParking | null {
  const build = trailer.buildOn(input.startsOn);
  if (build === null) return null;
  const raisedM = limits.torsion === null ? null : (attitudeOf(limits.torsion, input.load)?.raisedM ?? null);
  const best = bestParking({ build, limits, raisedM }, input.load, trailer.facts.machines);
  if (best === null) return null;
  const { machineId, balancePointM, frontM, inside, deckKnown, tightest } = best;
  const { kind, subject } = tightest.boundary;
  return {
    machineId,
    balancePointM,
    frontM,
    inside,
    tightest: { kind, subject, shareLeft: tightest.share },
    deckKnown,
  };
}
