import { Injectable } from '@nestjs/common';
import type { YardTx } from './database.js';
import { newId } from './new-id.js';

/** A key for the JSON API: of one person in one yard. The key itself is kept only as a hash. */
export interface ApiToken {
  readonly id: string;
  readonly personId: string;
  readonly name: string;
  readonly createdAt: Date;
  readonly lastUsedAt: Date | null;
  readonly revokedAt: Date | null;
}

@Injectable()
export class ApiTokenStore {
  /** Newest first. */
  async list(tx: YardTx): Promise<readonly ApiToken[]> {
    return tx.apiToken.findMany({
      where: { yardId: tx.yardId },
      orderBy: { createdAt: 'desc' },
      select: { id: true, personId: true, name: true, createdAt: true, lastUsedAt: true, revokedAt: true },
    });
  }

  /** Returns the id. */
  async insert(tx: YardTx, token: { personId: string; name: string; tokenHash: string }): Promise<string> {
    const id = newId();
    await tx.apiToken.createMany({ data: [{ id, yardId: tx.yardId, ...token }] });
    return id;
  }

  /** Noted at most once a minute, so that a busy program does not turn every read into a write. */
  async noteUse(tx: YardTx, tokenId: string, at: Date): Promise<void> {
    const aMinuteBefore = new Date(at.getTime() - 60_000);
    await tx.apiToken.updateMany({
      where: {
        yardId: tx.yardId,
        id: tokenId,
        OR: [{ lastUsedAt: null }, { lastUsedAt: { lt: aMinuteBefore } }],
      },
      data: { lastUsedAt: at },
    });
  }

  /** False when there is no such key, or it was revoked before. */
  async revoke(tx: YardTx, tokenId: string, at: Date): Promise<boolean> {
    const { count } = await tx.apiToken.updateMany({
      where: { yardId: tx.yardId, id: tokenId, revokedAt: null },
      data: { revokedAt: at },
    });
    return count === 1;
  }
}
