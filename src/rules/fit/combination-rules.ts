import type { Combination } from '../trailer/combination.js';
import { CDL_KG, COMMERCIAL_KG, combination } from '../trailer/combination.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import type { Judgement } from './judgement.js';

/**
 * What trailer and tow vehicle come to together: licence, commercial rules, ball. The ball must be the size stamped on
 * the coupler. A driver known to lack the licence is a no; a driver nobody has named is told about it.
 */
export function judgeCombination(fitCase: FitCase): Judgement {
  const { input } = fitCase;
  if (input.towVehicle === null) return { verdict: 'go', reasons: [], remedies: [] };
  const weights = weightsTogether(fitCase);
  const reasons: FitReason[] = [];
  const remedies: FitRemedy[] = [];
  let verdict: Verdict = 'go';

  const ball = ballMismatch(fitCase);
  if (ball !== null) {
    reasons.push(ball);
    verdict = 'go-after';
  }
  const licence = licenceReason(fitCase, weights);
  if (licence !== null) {
    reasons.push(licence);
    if (licence.driverHolds !== null) {
      verdict = 'no-go';
      remedies.push({ kind: 'another-driver' });
    }
  }
  if (weights.commercial === true && weights.combinationKg !== null && input.commercial !== false) {
    reasons.push({ kind: 'commercial-rules', combinationKg: weights.combinationKg, thresholdKg: COMMERCIAL_KG });
  }
  if (weights.combinationKg === null) {
    reasons.push({ kind: 'unknown', lacks: 'tow-vehicle-rating', stops: 'licence-check' });
  }
  return { verdict, reasons, remedies };
}

export function weightsTogether({ trailer, input, check }: FitCase): Combination {
  return combination({
    towVehicle: input.towVehicle,
    trailerGvwrKg: trailer.buildOn(input.startsOn)?.plate.gvwrKg ?? null,
    trailerGrossKg: check.grossKg,
  });
}

/** A licence of a higher group serves for a lower one. */
function licenceReason(
  { input }: FitCase,
  { cdl, combinationKg }: Combination,
): Extract<FitReason, { kind: 'licence' }> | null {
  if (cdl === null || cdl === 'none' || combinationKg === null) return null;
  const holds = input.driver?.cdl ?? null;
  if (holds === 'A' || holds === cdl) return null;
  return {
    kind: 'licence',
    threshold: cdl === 'A' ? 'cdl-a' : 'cdl-b',
    combinationKg,
    thresholdKg: CDL_KG,
    driverHolds: holds,
  };
}

/** Balls come in steps of an eighth of an inch and more; entered sizes are rounded by less than this, m. */
const BALL_ROUNDING_M = 0.001;

function ballMismatch({ trailer, input }: FitCase): FitReason | null {
  const couplerM = trailer.buildOn(input.startsOn)?.hitch.ballSizeM ?? null;
  const ballM = input.towVehicle?.ballSizeM ?? null;
  if (couplerM === null || ballM === null || Math.abs(couplerM - ballM) <= BALL_ROUNDING_M) return null;
  return { kind: 'ball-size', couplerM, ballM };
}
