import { Injectable } from '@nestjs/common';
import { assess } from '../../rules/assess.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { Flag } from '../../rules/flags/flag.js';
import { betterTrailer, type WorkDoneBy } from '../../rules/ranking/better-trailer.js';
import { flaggedWork, heaviestLoad, type Work } from '../../rules/ranking/flagged-work.js';
import { type TrailerBrief, worthAsking } from '../../rules/ranking/worth-asking.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { TrailerBriefView } from '../../store/views/trailer-brief.view.js';
import { type Caller, may } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { factsOf, MOST_ASKED, type PassedOverSum, summed } from './rank-yard.js';

export interface FindBetterTrailerInput {
  readonly trailerId: string;
  /** The key of the flag; the first that is up and says so, when left out. */
  readonly flag?: string | null;
}

export interface BetterTrailerFound {
  readonly trailer: TrailerFacts['trailer'];
  /** Null when no such flag is up. */
  readonly flag: Flag | null;
  /** Null when none carries all of the work. */
  readonly best: WorkDoneBy | null;
  /** The others in service, best first, with how each stands today. */
  readonly all: readonly (WorkDoneBy & Pick<TrailerBrief, 'readiness'>)[];
  readonly passedOver: PassedOverSum;
  readonly notAsked: number;
}

/** Answers which other trailer of the yard should do the work for which one is flagged as drifting or outgrown. */
@Injectable()
export class FindBetterTrailer {
  constructor(
    private readonly database: Database,
    private readonly briefs: TrailerBriefView,
    private readonly trailers: TrailerStore,
  ) {}

  async run(caller: Caller, input: FindBetterTrailerInput): Promise<Outcome<BetterTrailerFound>> {
    if (!may(caller, 'viewer')) return notAllowed('viewer');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const key = given.text('flag', 'the flag', TEXT.name);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const own = await this.trailers.findFacts(tx, trailerId);
      if (own === null) return notFound('trailer');
      const { trailer } = own;
      const found = flaggedIn(own, key, caller);
      if (found === null) {
        return done({ trailer, flag: null, best: null, all: [], passedOver: summed([]), notAsked: 0 });
      }
      const yard = (await this.briefs.ofYard(tx, null)).filter((brief) => brief.trailerId !== trailerId);
      // Who should do this work from now on does not hang on who is down today.
      const { ask, passedOver } = worthAsking(yard.map(standing), heaviestLoad(found.work));
      const asked = ask.slice(0, MOST_ASKED).map((brief) => brief.trailerId);
      const others = await factsOf(tx, this.trailers, asked);
      const { best, all } = betterTrailer(own, found.work, others, caller.today);
      const readiness = new Map(yard.map((brief) => [brief.trailerId, brief.readiness]));
      return done({
        trailer,
        flag: found.flag,
        best,
        all: all.map((one) => ({ ...one, readiness: readiness.get(one.trailerId) ?? 'due' })),
        passedOver: summed(passedOver),
        notAsked: ask.length - asked.length,
      });
    });
  }
}

function flaggedIn(own: TrailerFacts, key: string | null, { today }: Caller): { flag: Flag; work: Work } | null {
  for (const flag of assess(own, today).flags) {
    const work = key === null || flag.key === key ? flaggedWork(own, flag, today) : null;
    if (work !== null) return { flag, work };
  }
  return null;
}

function standing(brief: TrailerBrief): TrailerBrief {
  return brief.readiness === 'down' ? { ...brief, readiness: 'due' } : brief;
}
