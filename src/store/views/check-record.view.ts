import { Injectable } from '@nestjs/common';
import type { YardTx } from '../database.js';

/** What only people read of a check that was done. */
export interface CheckNotes {
  readonly byName: string;
  readonly note: string | null;
  readonly costCents: number | null;
  /** The name typed under the sheet. */
  readonly signedName: string | null;
}

@Injectable()
export class CheckRecordView {
  find(tx: YardTx, checkRecordId: string): Promise<CheckNotes | null> {
    return tx.checkRecord.findFirst({
      where: { yardId: tx.yardId, id: checkRecordId },
      select: { byName: true, note: true, costCents: true, signedName: true },
    });
  }
}
