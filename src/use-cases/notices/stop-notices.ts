import type { Letterhead } from '../../mail/letterhead.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { YardTx } from '../../store/database.js';
import type { MembershipStore } from '../../store/membership-store.js';
import type { NoticeStore } from '../../store/notice-store.js';
import type { YardStore } from '../../store/yard-store.js';
import type { StopWatch } from '../assessments/reassess.js';
import type { Caller } from '../caller.js';
import { draftLettersAbout } from './draft-letters.js';
import { writeDrafts } from './write-letters.js';

/**
 * Writes the notice of a trailer that must not be loaded and could be before, in the transaction that found it.
 * A seed or an import brings years of facts at once; what still stops a trailer then is told by the day's letters.
 */
export class StopNotices implements StopWatch {
  constructor(
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly yards: YardStore,
    private readonly letterhead: Letterhead,
  ) {}

  async stopsRaised(tx: YardTx, caller: Caller, facts: TrailerFacts): Promise<void> {
    if (caller.door === 'seed' || caller.door === 'import') return;
    const { notices, members, letterhead } = this;
    const needs = { notices, members, letterhead };
    const yard = await this.yards.get(tx);
    const drafts = await draftLettersAbout(tx, needs, yard, caller.today, [facts]);
    await writeDrafts(
      tx,
      needs,
      caller,
      yard,
      drafts.filter(({ letter }) => letter.kind === 'stop'),
    );
  }
}
