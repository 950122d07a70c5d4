import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { heaviestLoad } from '../../rules/ranking/flagged-work.js';
import { bestFirst, couldTake, rankTrailers } from '../../rules/ranking/rank-trailers.js';
import type { Haul, RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import { type PassedOver, worthAsking } from '../../rules/ranking/worth-asking.js';
import type { YardTx } from '../../store/database.js';
import type { MachineStore } from '../../store/machine-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { TrailerBriefView } from '../../store/views/trailer-brief.view.js';
import { machinesOf, withMachines } from '../machines/with-machines.js';

/** The trailers passed over for what is kept of them: how many for each reason, and those nearest to a yes. */
export interface PassedOverSum {
  readonly counts: Readonly<Record<PassedOver['why']['kind'], number>>;
  /** Not those sold or scrapped; a list nobody reads to the end is cut short. */
  readonly nearest: readonly PassedOver[];
}

/** The trailers of a yard for a haul. */
export interface YardRanking {
  /** Best first, each with its whole answer. */
  readonly ranked: readonly RankedTrailer[];
  readonly passedOver: PassedOverSum;
  /** Worth asking, but enough likelier ones could take it. */
  readonly notAsked: number;
}

/** Trailers whose facts are read at a time. */
const BATCH = 25;
/** So many yeses are choice enough. */
const ENOUGH = 8;
/** Nobody waits for more facts than these. */
export const MOST_ASKED = 100;
const NEAREST_SHOWN = 20;
/** Two will do; the whole list is a click away. */
const SUBSTITUTES = 2;

/** Ranks the trailers of a yard: what is kept thins them out, and only likely ones are asked with all their facts. */
export class RankYard {
  constructor(
    private readonly briefs: TrailerBriefView,
    private readonly trailers: TrailerStore,
    private readonly machines: MachineStore,
  ) {}

  /** Asks on until `enough` could take it. */
  async rank(tx: YardTx, haul: Haul, today: CivilDate, enough: number = ENOUGH): Promise<YardRanking> {
    const days = { from: haul.startsOn, to: haul.endsOn, jobId: haul.jobId };
    const { ask, passedOver } = worthAsking(await this.briefs.ofYard(tx, days), heaviestLoad({ loads: [haul.load] }));
    const machines = await machinesOf(tx, this.machines, haul.load);
    let ranked: readonly RankedTrailer[] = [];
    let asked = 0;
    while (asked < Math.min(ask.length, MOST_ASKED) && ranked.filter(couldTake).length < enough) {
      const batch = ask.slice(asked, asked + BATCH).map(({ trailerId }) => trailerId);
      const facts = await factsOf(tx, this.trailers, batch);
      const withTheirs = facts.map((each) => withMachines(each, machines));
      ranked = bestFirst([...ranked, ...rankTrailers(withTheirs, haul, today)]);
      asked += batch.length;
    }
    return { ranked, passedOver: summed(passedOver), notAsked: ask.length - asked };
  }

  /** The first trailers that could take it in place of the one planned. */
  async substitutes(tx: YardTx, haul: Haul, today: CivilDate): Promise<readonly RankedTrailer[]> {
    const { ranked } = await this.rank(tx, haul, today, SUBSTITUTES + 1);
    return ranked.filter((one) => couldTake(one) && one.trailerId !== haul.plannedTrailerId).slice(0, SUBSTITUTES);
  }
}

/** The facts of a few trailers, all at once. */
export async function factsOf(tx: YardTx, trailers: TrailerStore, ids: readonly string[]): Promise<TrailerFacts[]> {
  const facts: TrailerFacts[] = [];
  if (ids.length > 0) for await (const each of trailers.findFactsOfAll(tx, ids)) facts.push(each);
  return facts;
}

export function summed(passedOver: readonly PassedOver[]): PassedOverSum {
  const counts = { gone: 0, down: 0, booked: 0, 'too-small': 0 };
  for (const { why } of passedOver) counts[why.kind] += 1;
  const near = passedOver.filter(({ why }) => why.kind !== 'gone');
  const nearest = near.toSorted((a, b) => distance(a) - distance(b) || (a.yardNumber < b.yardNumber ? -1 : 1));
  return { counts, nearest: nearest.slice(0, NEAREST_SHOWN) };
}

/** Large enough comes before too small, and less short before more. */
function distance({ why }: PassedOver): number {
  if (why.kind === 'too-small') return why.shortKg;
  return why.kind === 'booked' ? -2 : -1;
}
