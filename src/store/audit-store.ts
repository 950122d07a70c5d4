import { Injectable } from '@nestjs/common';
import type { YardTx } from './database.js';
import type { Prisma } from './generated/client.js';
import { newId } from './new-id.js';

/** Who did what, when, through which door. Postgres lets nobody change or remove one. */
export interface AuditEntry {
  readonly id: string;
  readonly at: Date;
  readonly personId: string | null;
  /** The name as it was then. */
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

export type NewAuditEntry = Omit<AuditEntry, 'id' | 'at'> & { readonly at?: Date | undefined };

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

  /** What happened to one trailer, newest first. */
  async history(tx: YardTx, trailerId: string, most: number = 200): Promise<readonly AuditEntry[]> {
    return this.read(tx, { trailerId }, most);
  }

  /** What happened in the yard, newest first. */
  async latest(tx: YardTx, most: number = 200): Promise<readonly AuditEntry[]> {
    return this.read(tx, {}, most);
  }

  private async read(tx: YardTx, where: Prisma.AuditEntryWhereInput, most: number): Promise<readonly AuditEntry[]> {
    const rows = await tx.auditEntry.findMany({
      where: { yardId: tx.yardId, ...where },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: most,
      omit: { yardId: true },
    });
    return rows.map((row) => ({ ...row, detail: row.detail as AuditEntry['detail'] }));
  }
}
