import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { NoticeStore } from '../../store/notice-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { YardStore } from '../../store/yard-store.js';
import { type Caller, may } from '../caller.js';
import { done, notAllowed, type Outcome } from '../outcome.js';
import { writeLettersOfToday } from './write-letters.js';

/** `planned` is false when somebody planned this day, or a later one, before. */
export interface PlannedDay {
  readonly planned: boolean;
  readonly written: number;
}

/**
 * Plans the letters of one day of one yard and writes them down as notices, all in one transaction with the mark that
 * the day is planned: a plan that is killed half way was never begun, and two at once plan once.
 */
@Injectable()
export class PlanYardDay {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly yards: YardStore,
    private readonly letterhead: Letterhead,
  ) {}

  async run(caller: Caller): Promise<Outcome<PlannedDay>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    return this.database.inYard(caller.yardId, async (tx) => {
      if (!(await this.notices.startPlanning(tx, caller.today))) return done({ planned: false, written: 0 });
      const { notices, members, trailers, letterhead } = this;
      const needs = { notices, members, trailers, letterhead };
      const written = await writeLettersOfToday(tx, needs, caller, await this.yards.get(tx));
      return done({ planned: true, written });
    });
  }
}
