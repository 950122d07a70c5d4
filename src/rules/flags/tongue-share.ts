import { shareOutOfBand } from '../load/load-check.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';

/**
 * Recent trips with too little or too much of the weight on the hitch. Severity `watch`: the band is a target of the
 * trade, not a rating; see `load/tongue-band.ts` for its sources. The most recent trip out of band is shown.
 */
export function tongueShareFlags({ trailer, recentTrips }: FlagContext): readonly Flag[] {
  const out = recentTrips.filter((trip) => {
    const standing = trailer.judge(trip)?.tongueBand.standing;
    return standing === 'low' || standing === 'high';
  });
  const last = out.at(-1);
  const check = last === undefined ? null : trailer.judge(last);
  const held = check === null ? null : shareOutOfBand(check);
  if (check === null || held === null) return [];
  return [
    {
      key: 'tongue-share',
      rule: 'tongue-share',
      severity: 'watch',
      since: out[0]?.startedOn ?? null,
      evidence: {
        kind: 'tongue-share',
        ...held,
        low: check.tongueBand.low,
        high: check.tongueBand.high,
        tripIds: out.map((trip) => trip.id),
      },
      clears: clearedByTime(out),
    },
  ];
}
