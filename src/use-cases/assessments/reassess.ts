import { type Assessment, assess } from '../../rules/assess.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { Flag } from '../../rules/flags/flag.js';
import type { YardTx } from '../../store/database.js';
import type { DeckLifeStore } from '../../store/deck-life-store.js';
import type { ResultStore } from '../../store/result-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';

/** What a trailer's facts come to now, and which flags were not up before. */
export interface Reassessed {
  readonly facts: TrailerFacts;
  readonly assessment: Assessment;
  readonly raised: readonly Flag[];
}

/** Told of trailers that must not be loaded and could be before, inside the transaction that found it. */
export interface StopWatch {
  stopsRaised(tx: YardTx, caller: Caller, facts: TrailerFacts, flags: readonly Flag[]): Promise<void>;
}

/**
 * Works out again what a trailer's facts come to, in the transaction that changed them: kept facts and kept results
 * never disagree. The trailer must be locked first (`TrailerStore.lock`), or two writers would each miss the other's fact.
 */
export class Reassess {
  constructor(
    private readonly trailers: TrailerStore,
    private readonly results: ResultStore,
    private readonly decks: DeckLifeStore,
    private readonly watch: StopWatch,
  ) {}

  /** One trailer, of which a fact has just changed. Throws when the yard has no such trailer. */
  async trailer(tx: YardTx, caller: Caller, trailerId: string): Promise<Reassessed> {
    const news = await this.decks.news(tx, [trailerId], true);
    const facts = await this.trailers.findFacts(tx, trailerId);
    if (facts === null) throw new Error(`no trailer ${trailerId} to assess`);
    const before = await this.results.find(tx, trailerId);
    const assessment = assess(facts, caller.today);
    await this.results.save(tx, trailerId, assessment);
    await this.decks.tell(tx, news, caller.today);
    const raised = flagsRaised(before, assessment);
    await this.onNewStopFlags(tx, caller, facts, raised);
    return { facts, assessment, raised };
  }

  /** Several trailers, in a few queries. Locks them itself; ids of no trailer are passed over. Returns how many. */
  async each(tx: YardTx, caller: Caller, trailerIds: readonly string[]): Promise<number> {
    const locked = await this.trailers.lockMany(tx, trailerIds);
    if (locked.length === 0) return 0;
    const news = await this.decks.news(tx, locked, false);
    const before = await this.results.findMany(tx, locked);
    const results: { trailerId: string; assessment: Assessment }[] = [];
    for await (const facts of this.trailers.findFactsOfAll(tx, locked)) {
      const trailerId = facts.trailer.id;
      const assessment = assess(facts, caller.today);
      results.push({ trailerId, assessment });
      await this.onNewStopFlags(tx, caller, facts, flagsRaised(before.get(trailerId) ?? null, assessment));
    }
    await this.results.saveMany(tx, results);
    await this.decks.tell(tx, news, caller.today);
    return results.length;
  }

  private async onNewStopFlags(
    tx: YardTx,
    caller: Caller,
    facts: TrailerFacts,
    raised: readonly Flag[],
  ): Promise<void> {
    const stops = raised.filter((flag) => flag.severity === 'stop');
    if (stops.length > 0) await this.watch.stopsRaised(tx, caller, facts, stops);
  }
}

/** A flag keeps its key while the same thing is wrong; a new key, or a `watch` that became worse, was raised. */
function flagsRaised(before: Assessment | null, after: Assessment): readonly Flag[] {
  const up = new Set((before?.flags ?? []).map((flag) => `${flag.severity} ${flag.key}`));
  return after.flags.filter((flag) => !up.has(`${flag.severity} ${flag.key}`));
}
