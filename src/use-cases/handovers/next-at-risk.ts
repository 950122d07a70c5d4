import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { type Fit, fit, type Verdict } from '../../rules/fit/fit.js';
import { listedMass } from '../../rules/history/axle-load.js';
import { rankTrailers } from '../../rules/ranking/rank-trailers.js';
import { worthAsking } from '../../rules/ranking/worth-asking.js';
import type { YardTx } from '../../store/database.js';
import type { HandoverStore } from '../../store/handover-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { TrailerBriefView } from '../../store/views/trailer-brief.view.js';

/** Another trailer that could do a job as it stands in the yard today. */
export interface Substitute {
  readonly trailerId: string;
  readonly yardNumber: string;
  readonly verdict: Verdict;
  /** What it leaves of its tightest limit; null where none could be held against the load. */
  readonly marginShare: number | null;
}

/** The next job booked on a trailer that cannot just go, and what could go instead. */
export interface JobAtRisk {
  readonly jobId: string;
  readonly name: string;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
  readonly fit: Fit;
  readonly substitutes: readonly Substitute[];
}

/** More would be a list to read; whoever wants the whole yard asks for it. */
const MOST_SUBSTITUTES = 3;
/** Trailers asked in full, the likeliest first: in a large yard the rest would only cost time. */
const MOST_ASKED = 12;

/**
 * The next job on this trailer, when its answer is anything but "go": with those of the yard that could take it, best
 * first, in service, in the yard, free on its days and not on hold.
 */
export async function nextAtRisk(
  tx: YardTx,
  from: { readonly trailers: TrailerStore; readonly briefs: TrailerBriefView; readonly handovers: HandoverStore },
  facts: TrailerFacts,
  today: CivilDate,
  doneJobId: string | null,
): Promise<JobAtRisk | null> {
  const [job] = facts.jobs
    .filter(({ id, state, endsOn }) => state === 'booked' && endsOn >= today && id !== doneJobId)
    .sort((a, b) => (a.startsOn === b.startsOn ? (a.id < b.id ? -1 : 1) : a.startsOn < b.startsOn ? -1 : 1));
  if (job === undefined) return null;
  const answer = fit(facts, job, today);
  if (answer.verdict === 'go') return null;

  const days = { from: job.startsOn, to: job.endsOn, exceptJobId: job.id };
  const out = new Set((await from.handovers.allOutNow(tx)).map(({ trailerId }) => trailerId));
  const yard = (await from.briefs.forDays(tx, days)).filter(
    ({ trailerId }) => trailerId !== facts.trailer.id && !out.has(trailerId),
  );
  const ids = worthAsking(yard, listedMass(job.load))
    .ask.slice(0, MOST_ASKED)
    .map(({ trailerId }) => trailerId);
  const asked: TrailerFacts[] = [];
  for await (const other of from.trailers.findFactsOfAll(tx, ids)) asked.push(other);
  const haul = { ...job, jobId: job.id, plannedTrailerId: facts.trailer.id };
  const ranked = rankTrailers(asked, haul, today).filter(
    (one) =>
      one.inService && one.clashes.length === 0 && one.fit.verdict !== 'no-go' && one.fit.verdict !== 'cannot-say',
  );
  return {
    ...{ jobId: job.id, name: job.name, startsOn: job.startsOn, endsOn: job.endsOn, fit: answer },
    substitutes: ranked.slice(0, MOST_SUBSTITUTES).map(({ trailerId, yardNumber, fit: its, marginShare }) => ({
      ...{ trailerId, yardNumber, marginShare, verdict: its.verdict },
    })),
  };
}
