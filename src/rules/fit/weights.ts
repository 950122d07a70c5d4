import type { Comparison, LimitKind } from '../load/limit.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import { inflate } from './inflate.js';
import type { Judgement } from './judgement.js';
import { lighten } from './lighten.js';
import { moveLoad } from './move-load.js';

/**
 * The load against every limit, and the tongue against its band.
 *
 * Over a limit is `no-go`, but for what can be mended without taking weight off: tires that carry the load once pumped
 * up, a hitch rating that moving the load clears, and one torsion axle over while the group is inside (level the
 * trailer). Within the yard's share of a limit and unmeasured is `weigh-first`. A tongue share out of band is `go-after`.
 */
export function judgeWeights(fitCase: FitCase): Judgement {
  const { check, limits } = fitCase;
  const over = check.comparisons.filter((comparison) => comparison.standing === 'over').sort(byShare);
  const near = check.comparisons.filter((comparison) => comparison.standing === 'near').sort(byShare);
  const offBand = check.tongueBand.standing === 'low' || check.tongueBand.standing === 'high';
  const isOver = (...kinds: readonly LimitKind[]) => over.some(({ limit }) => kinds.includes(limit.kind));

  const pump = isOver('tire') ? inflate(fitCase) : null;
  const move = offBand || isOver('coupler-tongue', 'tow-hitch-tongue') ? moveLoad(fitCase) : null;
  const level = limits.sharing === 'separate' && isOver('axle') && !isOver('axle-group', 'plate');
  const mended = (comparison: Comparison): boolean => {
    switch (comparison.limit.kind) {
      case 'tire':
        return level
          ? tiresHoldWhenLevel(fitCase)
          : (pump?.positions.includes(comparison.limit.subject ?? '') ?? false);
      case 'coupler-tongue':
      case 'tow-hitch-tongue':
        return move !== null;
      case 'axle':
        return level;
      default:
        return false;
    }
  };
  const stuck = over.filter((comparison) => !mended(comparison));

  const lighter = stuck.length > 0 ? lighten(fitCase) : [];
  const remedies: FitRemedy[] = [];
  if (level) remedies.push({ kind: 'level' });
  if (pump !== null && !level) remedies.push(pump);
  if (move !== null) remedies.push(move);
  remedies.push(...lighter);
  if (near.length > 0 || level || lighter.at(-1)?.standing === 'near') remedies.push({ kind: 'weigh' });

  const verdict: Verdict =
    stuck.length > 0 ? 'no-go' : near.length > 0 ? 'weigh-first' : over.length > 0 || offBand ? 'go-after' : 'go';
  return { verdict, reasons: reasonsOf(over, near, offBand, fitCase), remedies };
}

function reasonsOf(
  over: readonly Comparison[],
  near: readonly Comparison[],
  offBand: boolean,
  { check }: FitCase,
): readonly FitReason[] {
  const { low, high } = check.tongueBand;
  return [
    ...over.map((comparison) => ({ kind: 'over' as const, comparison })),
    ...near.map((comparison) => ({ kind: 'near' as const, comparison })),
    ...(offBand && check.tongueShare !== null
      ? [{ kind: 'tongue-share' as const, share: check.tongueShare, low, high }]
      : []),
  ];
}

/** Level, every wheel presses alike, so each tire must hold its share of the group. */
function tiresHoldWhenLevel({ check, limits }: FitCase): boolean {
  if (check.axleGroupN === null) return false;
  const wheels = limits.axles.reduce((sum, axle) => sum + axle.wheels, 0);
  const eachN = check.axleGroupN / wheels;
  return limits.axles.every((axle) => axle.tires.every((tire) => tire.limitN >= eachN));
}

/** Furthest past its limit first; of equal ones the order of the check stays. */
function byShare(a: Comparison, b: Comparison): number {
  return b.loadN / b.limit.limitN - a.loadN / a.limit.limitN;
}
