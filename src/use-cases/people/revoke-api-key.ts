import { Injectable } from '@nestjs/common';
import { ApiTokenStore } from '../../store/api-token-store.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { type Caller, may, signed } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** Takes a key back: one's own, or as an owner anybody's. */
@Injectable()
export class RevokeApiKey {
  constructor(
    private readonly database: Database,
    private readonly keys: ApiTokenStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, { keyId }: { readonly keyId: string }): Promise<Outcome<null>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const key = (await this.keys.list(tx)).find((one) => one.id === keyId && one.revokedAt === null);
      if (key === undefined || (key.personId !== caller.personId && !may(caller, 'owner'))) return notFound('key');
      await this.keys.revoke(tx, keyId, caller.now);
      await this.audit.append(tx, {
        ...signed(caller),
        ...{
          action: 'revoke-api-key',
          subject: 'api key',
          subjectId: keyId,
          trailerId: null,
          detail: { name: key.name },
        },
      });
      return done(null);
    });
  }
}
