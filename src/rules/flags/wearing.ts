import { type CivilDate, earliest } from '../calendar/civil-date.js';
import { daysAfter } from '../calendar/day-number.js';
import type { Job } from '../facts/use.js';
import type { WearTrend } from '../inspection/wear-trends.js';
import type { WearQuantity } from '../wear/wear-quantity.js';
import type { Clearance } from './clearance.js';
import type { Flag, WearingPart } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** Days ahead within which a part that comes to its limit is told of: time to order it and to book the shop. Our choice. */
const AHEAD_DAYS = 90;

/** Past their limit these have a flag of their own. */
const TOLD_WHEN_PAST: ReadonlySet<WearQuantity> = new Set(['tread-depth-mm', 'lining-mm', 'battery-v']);

/**
 * Parts whose trend comes to its limit within 90 days (as likely as not), or before the end of the next job (one chance
 * in ten: on the road there is no shop), or that were measured past a limit that is only practice. One flag a quantity,
 * severity `watch`. With few readings usual wear stands in, and the evidence says so. Each limit is there with its source.
 */
export function wearingFlags({ trailer, wear }: FlagContext): readonly Flag[] {
  const job = trailer.jobs[0] ?? null;
  const near = wear.flatMap((trend) => nearLimit(trend, trailer.asOf, job) ?? []);
  return [...Map.groupBy(near, ({ trend }) => trend.quantity)].flatMap(([quantity, parts]) => {
    const evidence = parts.map(({ part }) => part);
    const since = earliest(evidence.map(({ on }) => on));
    const positions = evidence.flatMap(({ position }) => position ?? []);
    return [
      {
        key: `wearing:${quantity}`,
        rule: 'wearing' as const,
        severity: 'watch' as const,
        since,
        evidence: { kind: 'wearing' as const, quantity, parts: evidence },
        clears: clearedBy(quantity, positions),
      },
    ];
  });
}

function nearLimit(
  trend: WearTrend,
  asOf: CivilDate,
  job: Job | null,
): { readonly trend: WearTrend; readonly part: WearingPart } | null {
  const { limit, toLimit, quantity, position, latest } = trend;
  if (limit === null || toLimit.kind === 'refused') return null;
  const told = { position, value: latest.value, on: latest.on, limit };
  if (toLimit.kind === 'past') {
    if (TOLD_WHEN_PAST.has(quantity)) return null;
    return { trend, part: { ...told, reachedOn: null, leansOnUsualWear: false, jobId: null } };
  }
  const { early, middle } = toLimit.on;
  const onJob = job !== null && early !== null && early <= job.endsOn;
  if (!onJob && (middle === null || daysAfter(middle, -AHEAD_DAYS) > asOf)) return null;
  const { leansOnUsualWear } = toLimit;
  return { trend, part: { ...told, reachedOn: toLimit.on, leansOnUsualWear, jobId: onJob ? job.id : null } };
}

/** New parts on record, or a better reading: some parts are charged or adjusted, and a reading may have been wrong. */
function clearedBy(quantity: WearQuantity, positions: readonly string[]): readonly [Clearance, ...Clearance[]] {
  const again = { kind: 'measure-again', quantity } as const;
  if (quantity === 'tread-depth-mm' && positions.length > 0) return [{ kind: 'replace-tires', positions }, again];
  if (quantity === 'lining-mm') {
    const position = positions.length === 1 ? (positions[0] ?? null) : null;
    return [{ kind: 'replace-part', part: 'brake-lining', position }, again];
  }
  return [again];
}

/** Days on which a part comes within 90 days of its limit with nothing new on record. */
export function wearTurnsOn(wear: readonly WearTrend[]): readonly CivilDate[] {
  return wear.flatMap(({ toLimit }) =>
    toLimit.kind === 'reached-by' && toLimit.on.middle !== null ? [daysAfter(toLimit.on.middle, -AHEAD_DAYS)] : [],
  );
}
