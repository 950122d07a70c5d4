import { daysAfter } from '../calendar/day-number.js';
import type { CheckKind } from '../facts/check.js';
import type { Due } from '../inspection/due.js';
import { isForTheRoad } from '../inspection/for-the-road.js';
import { weightsTogether } from './combination-rules.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import type { Judgement } from './judgement.js';
import { worstVerdict } from './judgement.js';

/**
 * What falls due before or during the job.
 *
 * A check that stops this job is done first: `go-after` while there is a day before the job (or it is done in the yard
 * or on the road), else `no-go`. Stopped are jobs for which it is overdue, falls due on the way, has failed, or needs a
 * paper that was never recorded. A safety check nobody ever recorded, and no paper asked for, is said beside the answer
 * and stops nothing: no record is not a fault. Said too, and stopping nothing: checks that stop no job, and what is
 * done on the road when its miles come.
 */
export function judgeChecks(fitCase: FitCase, due: readonly Due[]): Judgement {
  const kinds = new Map(fitCase.trailer.facts.checkKinds.map((kind) => [kind.id, kind]));
  const found: { reason: FitReason; remedy: FitRemedy | null; verdict: Verdict; rank: number }[] = [];
  for (const item of due) {
    const kind = kinds.get(item.checkKindId);
    const when = kind === undefined ? null : whenDue(kind, item, fitCase);
    if (kind === undefined || when === null) continue;
    const stops = isStopping(kind, fitCase);
    const isUnproven = item.state === 'never-done' && kind.proof !== null;
    if (item.state === 'never-done' && !isUnproven && !kind.safety) continue;
    const reason: FitReason =
      isUnproven && kind.proof !== null
        ? { kind: 'never-proven', checkKindId: kind.id, what: kind.proof.what }
        : { kind: 'due', due: item, when };
    const onTheRoad = isForTheRoad(kind, item);
    const counts = stops && !onTheRoad && (item.state !== 'never-done' || isUnproven);
    const remedy: FitRemedy = {
      kind: 'do-check',
      checkKindId: kind.id,
      code: kind.code,
      by: onTheRoad ? item.dueOn : lastDayToDoIt(item, fitCase),
    };
    found.push({
      reason,
      remedy: item.state === 'never-done' && !isUnproven ? null : remedy,
      verdict: !counts ? 'go' : canStillBeDone(kind, fitCase) ? 'go-after' : 'no-go',
      rank: counts ? 0 : item.state === 'never-done' ? 2 : 1,
    });
  }
  found.sort((a, b) => a.rank - b.rank);
  return {
    verdict: worstVerdict(found.map((one) => one.verdict)),
    reasons: found.map((one) => one.reason),
    remedies: found.flatMap((one) => (one.remedy === null ? [] : [one.remedy])),
  };
}

/** Before the job when its last good day is already past on the day of leaving; on the job's own days when it is for the road. */
function whenDue(kind: CheckKind, item: Due, { input }: FitCase): 'before' | 'during' | null {
  if (isForTheRoad(kind, item)) {
    return item.dueOn !== null && item.dueOn >= input.startsOn && item.dueOn <= input.endsOn ? 'during' : null;
  }
  if (item.state === 'never-done' || (item.state === 'due-soon' && item.dueOn === null)) return 'before';
  if (item.dueOn === null || item.dueOn >= input.endsOn) return null;
  return item.dueOn < input.startsOn ? 'before' : 'during';
}

/**
 * Whether the check stops this job. Commercial rules reach a job only in commerce and with a combination heavy enough
 * (49 CFR 390.5); where either is unknown they may, so it is stopped.
 */
function isStopping(kind: CheckKind, fitCase: FitCase): boolean {
  if (kind.blocks !== 'commercial-jobs') return kind.blocks === 'all-jobs';
  if (fitCase.input.commercial === false) return false;
  return fitCase.input.towVehicle === null || weightsTogether(fitCase).commercial !== false;
}

function canStillBeDone(kind: CheckKind, { asOf, input }: FitCase): boolean {
  return kind.work.place !== 'shop' || asOf < input.startsOn;
}

/** The day before the job, or sooner when it falls due sooner and that day is still to come. */
function lastDayToDoIt(item: Due, { asOf, input }: FitCase) {
  const dayBefore = daysAfter(input.startsOn, -1);
  if (item.dueOn !== null && item.dueOn >= asOf && item.dueOn < dayBefore) return item.dueOn;
  return dayBefore >= asOf ? dayBefore : asOf;
}
