import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { type Fit, fit, type Verdict } from '../../rules/fit/fit.js';
import type { YardTx } from '../../store/database.js';
import type { HandoverStore } from '../../store/handover-store.js';
import type { RankYard } from '../assessments/rank-yard.js';

/** Another trailer that could do a job as it stands in the yard today. */
interface Substitute {
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

/**
 * The next job on this trailer, when its answer is anything but "go": with those of the yard that could take it, best
 * first, free on its days and not out with a customer now.
 */
export async function nextAtRisk(
  tx: YardTx,
  from: { readonly rankYard: RankYard; readonly handovers: HandoverStore },
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
  const out = new Set((await from.handovers.allOutNow(tx)).map(({ trailerId }) => trailerId));
  const haul = { ...job, jobId: job.id, plannedTrailerId: facts.trailer.id };
  const substitutes = (await from.rankYard.substitutes(tx, haul, today)).filter(({ trailerId }) => !out.has(trailerId));
  return {
    ...{ jobId: job.id, name: job.name, startsOn: job.startsOn, endsOn: job.endsOn, fit: answer },
    substitutes: substitutes.map(({ trailerId, yardNumber, fit: its, marginShare }) => ({
      ...{ trailerId, yardNumber, marginShare, verdict: its.verdict },
    })),
  };
}
