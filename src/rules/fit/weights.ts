import { rodeOffLevelBy } from '../load/attitude.js';
import type { Comparison, LimitKind } from '../load/limit.js';
import { shareOutOfBand } from '../load/load-check.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import { inflate } from './inflate.js';
import type { Judgement } from './judgement.js';
import { levelHitch, unload } from './level-hitch.js';
import { lighten } from './lighten.js';
import { moveLoad } from './move-load.js';
import { isSettledByScale } from './open-axles.js';

/**
 * The load against every limit, and the tongue against its band.
 *
 * Over a limit is `no-go`, but for what can be mended without taking weight off: tires that carry the load once pumped
 * up, a hitch rating that moving the load clears, and one torsion axle over while together they are inside (level the
 * trailer). Within the yard's share of a limit and unmeasured is `weigh-first`; so is an axle or tire that could not be
 * held against its rating for want of a weight that a scale would tell. A tongue share out of band is `go-after`.
 */
export function judgeWeights(fitCase: FitCase): Judgement {
  const { check } = fitCase;
  const over = check.comparisons.filter((comparison) => comparison.standing === 'over').sort(byShare);
  const near = check.comparisons.filter((comparison) => comparison.standing === 'near').sort(byShare);
  const offBand = check.tongueBand.standing === 'low' || check.tongueBand.standing === 'high';
  const isOver = (...kinds: readonly LimitKind[]) => over.some(({ limit }) => kinds.includes(limit.kind));

  const level = levelHitch(fitCase);
  const pump = isOver('tire') ? inflate(fitCase) : null;
  const move = offBand || isOver('coupler-tongue', 'tow-hitch-tongue') ? moveLoad(fitCase) : null;
  const mended = ({ limit: { kind, subject } }: Comparison): boolean => {
    if (kind === 'axle') return level !== null;
    if (kind === 'tire') return level !== null || (pump?.positions.includes(subject ?? '') ?? false);
    return (kind === 'coupler-tongue' || kind === 'tow-hitch-tongue') && move !== null;
  };
  const stuck = over.filter((comparison) => !mended(comparison));
  const unweighed = near.length > 0 || check.unknowns.some(isSettledByScale);

  const lighter = stuck.length > 0 ? lighten(fitCase) : [];
  const remedies: FitRemedy[] = [];
  if (level !== null) remedies.push(level, { kind: 'weigh' }, ...(over.length > 0 ? [unload(fitCase)] : []));
  else if (pump !== null) remedies.push(pump);
  if (move !== null) remedies.push(move);
  remedies.push(...lighter);
  const again = move !== null || unweighed || lighter.at(-1)?.standing === 'near';
  if (level === null && again) remedies.push({ kind: 'weigh' });

  const verdict: Verdict =
    stuck.length > 0 ? 'no-go' : unweighed ? 'weigh-first' : over.length > 0 || offBand ? 'go-after' : 'go';
  return { verdict, reasons: reasonsOf(over, near, level !== null, fitCase), remedies };
}

function reasonsOf(
  over: readonly Comparison[],
  near: readonly Comparison[],
  offLevel: boolean,
  { check }: FitCase,
): readonly FitReason[] {
  const { low, high } = check.tongueBand;
  const held = shareOutOfBand(check);
  const rode = offLevel ? rodeOffLevelBy(check) : null;
  return [
    ...over.map((comparison) => ({ kind: 'over' as const, comparison })),
    ...near.map((comparison) => ({ kind: 'near' as const, comparison })),
    ...(rode === null ? [] : [{ kind: 'attitude' as const, ...rode }]),
    ...(held === null ? [] : [{ kind: 'tongue-share' as const, ...held, low, high }]),
  ];
}

/** Furthest past its limit first; of equal ones the order of the check stays. */
function byShare(a: Comparison, b: Comparison): number {
  return b.loadN / b.limit.limitN - a.loadN / a.limit.limitN;
}
