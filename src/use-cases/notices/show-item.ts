import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { Due } from '../../rules/inspection/due.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { NoticeStore } from '../../store/notice-store.js';
import { ResultStore } from '../../store/result-store.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** A check that a letter asked for, as it stands now. */
export interface ItemScreen {
  readonly itemKey: string;
  readonly toldOn: CivilDate;
  /** Who was told; null when they are of the yard no more. */
  readonly toldTo: string | null;
  readonly trailer: KeptTrailer;
  readonly kind: CheckKind;
  /** When it is due now; null when it applies to this trailer no longer. */
  readonly due: Due | null;
  /** False when it was done since, or is far off again: then there is nothing left to answer. */
  readonly open: boolean;
}

/** What somebody sees who wants to answer a letter. */
@Injectable()
export class ShowItem {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly results: ResultStore,
  ) {}

  async run(caller: Caller, input: { readonly itemKey: string }): Promise<Outcome<ItemScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const told = (await this.notices.findItems(tx, input.itemKey))[0];
      if (told === undefined || (told.item.kind !== 'due-soon' && told.item.kind !== 'overdue')) {
        return notFound('check that a letter asked for');
      }
      const { trailerId, due: asTold } = told.item;
      const trailer = await this.trailers.find(tx, trailerId);
      const facts = trailer && (await this.trailers.findFacts(tx, trailerId));
      const kind = facts?.checkKinds.find(({ id }) => id === asTold.checkKindId);
      if (trailer === null || kind === undefined) return notFound('check of this trailer');
      const assessment = await this.results.find(tx, trailerId);
      const due = assessment?.due.find(({ checkKindId }) => checkKindId === kind.id) ?? null;
      const reader = told.personId === null ? null : await this.members.find(tx, told.personId);
      return done({
        itemKey: input.itemKey,
        toldOn: told.toldOn,
        toldTo: reader?.name ?? null,
        trailer,
        kind,
        due,
        open: due !== null && due.state !== 'later' && due.lastDoneOn === asTold.lastDoneOn,
      });
    });
  }
}
