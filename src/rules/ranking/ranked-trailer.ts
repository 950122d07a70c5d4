import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { type Fit, type FitInput, fit } from '../fit/fit.js';
import type { Comparison } from '../load/limit.js';
import { portableLoad } from './portable-load.js';

/** A haul for which a trailer is looked for. */
export interface Haul extends FitInput {
  /** The job it is, so that its own booking is no clash; null while it is only thought of. */
  readonly jobId: string | null;
  /** The trailer for which the load's places and its ticket hold; null when they hold for none. */
  readonly plannedTrailerId: string | null;
}

/** One trailer's answer to a haul, with what sets it above or below the others. */
export interface RankedTrailer {
  readonly trailerId: string;
  readonly yardNumber: string;
  /** False once it is sold or scrapped. */
  readonly inService: boolean;
  /** Verdict, reasons and remedies: the reason for each no is in here, or below. */
  readonly fit: Fit;
  /** The limit this load takes the greatest share of; null when none could be held against it. */
  readonly tightest: Comparison | null;
  /** What it leaves of that limit: 0.2 is a fifth to spare, below 0 is over. Null as above. */
  readonly marginShare: number | null;
  /** Jobs booked on it for some of the same days. */
  readonly clashes: readonly Clash[];
  /** Hours of work on the checks that must be done first. */
  readonly hoursFirst: number;
}

export interface Clash {
  readonly jobId: string;
  readonly name: string;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
}

/** Whether this trailer should take a haul. `asOf` is the day of asking. */
export function rankedTrailer(facts: TrailerFacts, haul: Haul, asOf: CivilDate): RankedTrailer {
  const { trailer } = facts;
  const load = haul.plannedTrailerId === trailer.id ? haul.load : portableLoad(haul.load, null);
  const answer = fit(facts, { ...haul, load }, asOf);
  const tightest = tightestOf(answer.loadCheck.comparisons);
  return {
    trailerId: trailer.id,
    yardNumber: trailer.yardNumber,
    inService: trailer.status === 'in-service',
    fit: answer,
    tightest,
    marginShare: tightest === null ? null : marginShare(tightest),
    clashes: clashesWith(facts, haul),
    hoursFirst: hoursFirst(facts, answer),
  };
}

/** The comparison that leaves the least of its limit. */
export function tightestOf(comparisons: readonly Comparison[]): Comparison | null {
  let tightest: Comparison | null = null;
  for (const one of comparisons) {
    if (tightest === null || marginShare(one) < marginShare(tightest)) tightest = one;
  }
  return tightest;
}

export function marginShare({ marginN, limit }: Comparison): number {
  return marginN / limit.limitN;
}

/** Booked jobs that share a day with the haul, the first one first. */
function clashesWith({ jobs }: TrailerFacts, haul: Haul): readonly Clash[] {
  return jobs
    .filter(
      (job) =>
        job.state === 'booked' && job.id !== haul.jobId && job.startsOn <= haul.endsOn && job.endsOn >= haul.startsOn,
    )
    .map(({ id, name, startsOn, endsOn }) => ({ jobId: id, name, startsOn, endsOn }))
    .sort((a, b) => (a.startsOn === b.startsOn ? (a.jobId < b.jobId ? -1 : 1) : a.startsOn < b.startsOn ? -1 : 1));
}

function hoursFirst({ checkKinds }: TrailerFacts, { remedies }: Fit): number {
  const asked = new Set(remedies.flatMap((remedy) => (remedy.kind === 'do-check' ? [remedy.checkKindId] : [])));
  return checkKinds.reduce((sum, kind) => sum + (asked.has(kind.id) ? kind.work.hours : 0), 0);
}
