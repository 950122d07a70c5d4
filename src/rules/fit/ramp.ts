import type { BuildSheet } from '../facts/build-sheet.js';
import { type Aboard, machinesAboard } from '../load/aboard.js';
import { deckSpan } from '../trailer/deck-span.js';
import { type ClimbFound, type Loading, loadingOf } from '../trailer/loading.js';
import { isTilt } from '../trailer/tilt-body.js';
import { exceeds } from '../units/compare.js';
import { kg } from '../units/mass.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST, worstVerdict } from './judgement.js';

/**
 * Whether the heaviest machine aboard can be driven on: what the ramps carry, whether the hitch is pulled up while it
 * stands at the tail, whether it hangs up where ramp and deck meet, whether a deck it must lay flat comes down under it.
 *
 * Over the ramps' rating, or a tilt it cannot lay flat, is `no-go`; near that rating and unweighed `weigh-first`. A hitch
 * that would be pulled up with nothing to hold the tail, and a machine that hangs up, are `go-after`. With stabilizers or
 * a knee brace, on a tilt (which is built to take it for the moment in which the machine passes the pivot), and where
 * nobody said what there is, the pull is said beside the answer.
 */
export function judgeRamp({ trailer, input, limits }: FitCase): Judgement {
  const build = trailer.buildOn(input.startsOn);
  const [heaviest] = machinesAboard(input.load, trailer.facts.machines);
  if (build === null || heaviest === undefined) return NOTHING_AGAINST;
  const loading = loadingOf(build, limits, heaviest.machine, heaviest.massKg);
  const found = [
    onRamps(build, heaviest, trailer.facts.policy.weighFirstShare),
    loading.climb === null ? null : hitchPulled(loading.climb, heaviest),
    hangingUp(loading, heaviest),
    tiltStuck(loading, heaviest),
  ].filter((one) => one !== null);
  return {
    verdict: worstVerdict(found.map((one) => one.verdict)),
    reasons: [...found.map((one) => one.reason), ...entryUnknown(build)],
    remedies: found.flatMap((one) => one.remedy ?? []),
  };
}

interface Found {
  readonly verdict: Verdict;
  readonly reason: FitReason;
  readonly remedy: FitRemedy | null;
}

function onRamps({ rear }: BuildSheet, { machine, massKg, weighed }: Aboard, weighFirstShare: number): Found | null {
  const { rampRatingKg } = rear;
  if (rampRatingKg === null) return null;
  const marginKg = kg(rampRatingKg - massKg);
  const isOver = exceeds(massKg, rampRatingKg);
  const isNear = !isOver && !weighed && marginKg < weighFirstShare * rampRatingKg;
  if (!isOver && !isNear) return null;
  return {
    verdict: isOver ? 'no-go' : 'weigh-first',
    reason: {
      kind: 'ramp-rating',
      machineId: machine.id,
      machineKg: massKg,
      ratingKg: rampRatingKg,
      marginKg,
      standing: isOver ? 'over' : 'near',
    },
    remedy: isNear ? { kind: 'weigh' } : null,
  };
}

function hitchPulled({ loads, support }: ClimbFound, { machine, massKg }: Aboard): Found | null {
  if (!(loads.liftN > 0)) return null;
  const isUnheld = support === 'none';
  return {
    verdict: isUnheld ? 'go-after' : 'go',
    reason: {
      kind: 'rear-lift',
      machineId: machine.id,
      machineKg: massKg,
      liftN: loads.liftN,
      support,
      supportLeastN: loads.support?.leastN ?? null,
      supportMostN: loads.support?.mostN ?? null,
    },
    remedy: isUnheld ? { kind: 'prop-tail' } : null,
  };
}

function hangingUp({ crest }: Loading, { machine }: Aboard): Found | null {
  if (crest === null || !crest.hangsUp) return null;
  const { neededM, clearanceM, isMost } = crest;
  return {
    verdict: 'go-after',
    reason: { kind: 'hangs-up', machineId: machine.id, neededM, clearanceM, isMost },
    remedy: { kind: 'flatten-ramp' },
  };
}

function tiltStuck({ tilt }: Loading, { machine }: Aboard): Found | null {
  if (tilt === null || tilt.aheadM > 0) return null;
  return {
    verdict: 'no-go',
    reason: { kind: 'tilt-stays-up', machineId: machine.id, shortM: tilt.aheadM },
    remedy: null,
  };
}

/** Without the place at which a machine comes onto the trailer nobody can say what the hitch feels. What else that takes is asked for by the load check. */
function entryUnknown(build: BuildSheet): readonly FitReason[] {
  const tilts = isTilt(build.body);
  const isKnown = tilts ? build.deck.pivotFromCouplerM !== null : deckSpan(build) !== null;
  return isKnown ? [] : [{ kind: 'unknown', lacks: tilts ? 'tilt-pivot' : 'deck-place', stops: 'climb-check' }];
}
