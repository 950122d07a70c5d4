import { Injectable } from '@nestjs/common';
import { ApiTokenStore } from '../../store/api-token-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { hashOfSecret } from '../../store/secret.js';
import { YardStore } from '../../store/yard-store.js';
import type { Standing } from './standing.js';

/** Finds whose key a program shows. It may do what its holder may do today, not what they could when it was made. */
@Injectable()
export class FindKeyHolder {
  constructor(
    private readonly database: Database,
    private readonly keys: ApiTokenStore,
    private readonly members: MembershipStore,
    private readonly yards: YardStore,
  ) {}

  async run(key: string, now: Date): Promise<Standing | null> {
    const found = await this.database.apiTokenOf(hashOfSecret(key));
    if (found === null) return null;
    const { id, yardId, personId } = found;
    return this.database.inYard(yardId, async (tx) => {
      const member = await this.members.find(tx, personId);
      if (member === null || member.leftOn !== null) return null;
      await this.keys.noteUse(tx, id, now);
      const { timeZone } = await this.yards.get(tx);
      return { yardId, personId, name: member.name, role: member.role, timeZone };
    });
  }
}
