import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { trailerOn } from '../history/trailer-on.js';
import { dueChecksOn } from '../inspection/due.js';
import { useSoFar } from '../inspection/use-so-far.js';
import { checkLoad } from '../load/load-check.js';
import { judgeChecks } from './checks-first.js';
import { judgeCombination } from './combination-rules.js';
import { judgeDeck } from './deck-under.js';
import type { Fit, FitCase, FitInput } from './fit-answer.js';
import { haulLimits } from './haul-limits.js';
import { judgeHolds } from './holds.js';
import { type Judgement, worstVerdict } from './judgement.js';
import { judgeLegalWidth } from './legal-width.js';
import { judgeOnDeck } from './on-deck.js';
import { parkingFor } from './parking.js';
import { judgeRamp } from './ramp.js';
import { judgeRoad } from './road.js';
import { judgeTiedDown } from './tied-down.js';
import { judgeTireAge } from './tires-past-age.js';
import { judgeUnknowns } from './unknown-facts.js';
import { weighedOnce } from './weighed-once.js';
import { judgeWeights } from './weights.js';

export type { Fit, FitInput, FitParking, FitReason, FitRemedy, Verdict } from './fit-answer.js';

/**
 * Whether this trailer may take this load on these days. `asOf` is the day of asking.
 *
 * Each part judges by itself and brings its reasons, remedies and the verdict it asks for; the worst verdict is the
 * answer. Arithmetic on what was entered: plate, makers' manuals, local law and a qualified person come first.
 */
export function fit(facts: TrailerFacts, input: FitInput, asOf: CivilDate): Fit {
  const trailer = trailerOn(facts, asOf);
  const limits = haulLimits(trailer, input);
  const check = checkLoad(limits, input.load, facts.policy);
  const fitCase: FitCase = { trailer, input, asOf, limits, check };
  const judgements: readonly Judgement[] = [
    judgeHolds(fitCase),
    judgeWeights(fitCase),
    judgeOnDeck(fitCase),
    judgeRamp(fitCase),
    judgeTiedDown(fitCase),
    judgeDeck(fitCase),
    judgeCombination(fitCase),
    judgeLegalWidth(fitCase),
    judgeChecks(fitCase, dueChecksOn(trailer, useSoFar(trailer))),
    judgeTireAge(fitCase),
    judgeUnknowns(fitCase),
    judgeRoad(fitCase),
  ];
  return {
    verdict: worstVerdict(judgements.map((judgement) => judgement.verdict)),
    loadCheck: check,
    reasons: judgements.flatMap((judgement) => judgement.reasons),
    remedies: weighedOnce(judgements.flatMap((judgement) => judgement.remedies)),
    parking: parkingFor(fitCase),
  };
}
