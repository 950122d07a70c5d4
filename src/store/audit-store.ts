import { Injectable } from '@nestjs/common';
import type { YardTx } from './database.js';
import type { Prisma } from './generated/client.js';
import { newId } from './new-id.js';

/** Who did what, when, through which door. Postgres lets nobody change or remove one. */
export interface NewAuditEntry {
  /** The moment of writing when left out. */
  readonly at?: Date | undefined;
  readonly personId: string | null;
  /** The name as it is now. */
  readonly who: string;
  readonly door: string;
  /** What was done, such as `record-trip`. */
  readonly action: string;
  /** What it was done to, such as `trip`. */
  readonly subject: string;
  readonly subjectId: string | null;
  readonly trailerId: string | null;
  readonly detail: Readonly<Record<string, unknown>>;
}

@Injectable()
export class AuditStore {
  async append(tx: YardTx, entry: NewAuditEntry): Promise<void> {
    await this.appendMany(tx, [entry]);
  }

  async appendMany(tx: YardTx, entries: readonly NewAuditEntry[]): Promise<void> {
    await tx.auditEntry.createMany({
      data: entries.map((entry) => ({
        id: newId(),
        yardId: tx.yardId,
        at: entry.at,
        personId: entry.personId,
        who: entry.who,
        door: entry.door,
        action: entry.action,
        subject: entry.subject,
        subjectId: entry.subjectId,
        trailerId: entry.trailerId,
        detail: entry.detail as Prisma.InputJsonObject,
      })),
    });
  }
}
