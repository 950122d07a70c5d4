import { Injectable } from '@nestjs/common';
import type { CheckKind, CheckRecord } from '../../rules/facts/check.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { CheckStore } from '../../store/check-store.js';
import { Database } from '../../store/database.js';
import type { HistoryOf } from '../../store/recorded.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { CheckRecordView } from '../../store/views/check-record.view.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export interface CheckRecordScreen {
  readonly trailer: KeptTrailer;
  readonly record: HistoryOf<CheckRecord>;
  readonly kind: CheckKind | null;
  readonly byName: string;
  readonly note: string | null;
  readonly costCents: number | null;
  readonly signedName: string | null;
  readonly photoIds: readonly string[];
  /** The picture of a drawn signature. */
  readonly signatureId: string | null;
}

/** One check as it was recorded, mended and taken-back ones too. */
@Injectable()
export class ShowCheckRecord {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly checks: CheckStore,
    private readonly checkKinds: CheckKindStore,
    private readonly notes: CheckRecordView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string; readonly checkRecordId: string },
  ): Promise<Outcome<CheckRecordScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, input.trailerId);
      if (trailer === null) return notFound('trailer');
      const history = await this.checks.history(tx, input.trailerId);
      const record = history.find((row) => row.fact.id === input.checkRecordId && !row.withdrawn);
      const notes = await this.notes.find(tx, input.checkRecordId);
      if (record === undefined || notes === null) return notFound('check');
      return done({
        trailer,
        record,
        kind: await this.checkKinds.find(tx, record.fact.checkKindId),
        ...notes,
        photoIds: await this.checks.photoIds(tx, input.checkRecordId),
        signatureId: await this.checks.signatureId(tx, input.checkRecordId),
      });
    });
  }
}
