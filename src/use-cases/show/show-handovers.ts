import { Injectable } from '@nestjs/common';
import type { Handover } from '../../rules/facts/handover.js';
import { Database } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import type { HistoryOf } from '../../store/recorded.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface HandoversScreen {
  readonly trailer: KeptTrailer;
  /** Set while the trailer is with a customer. */
  readonly outNow: Handover | null;
  /** Every time it went out or came back, latest first; those taken back are there too. */
  readonly handovers: readonly HistoryOf<Handover>[];
}

/** When a trailer was out, and with whom. */
@Injectable()
export class ShowHandovers {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly handovers: HandoverStore,
  ) {}

  async run(caller: Caller, input: { readonly trailerId: string }): Promise<Outcome<HandoversScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, input.trailerId);
      if (trailer === null) return notFound('trailer');
      const history = await this.handovers.history(tx, input.trailerId);
      return done({
        trailer,
        outNow: await this.handovers.outNow(tx, input.trailerId),
        handovers: history.filter(({ withdrawn }) => !withdrawn).toReversed(),
      });
    });
  }
}
