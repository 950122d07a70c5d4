import { Injectable } from '@nestjs/common';
import { ApiTokenStore } from '../../store/api-token-store.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { hashOfSecret, newSecret } from '../../store/secret.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, type Outcome } from '../outcome.js';

/** More than anybody needs at once; a list nobody can look through hides the key that leaked. Our choice. */
const MOST_KEYS = 20;

/** Makes a key with which a program uses the JSON API as the caller, in this yard, with the caller's role of the day. */
@Injectable()
export class CreateApiKey {
  constructor(
    private readonly database: Database,
    private readonly keys: ApiTokenStore,
    private readonly audit: AuditStore,
  ) {}

  /** The key is given back this one time; afterwards only its hash is known. */
  async run(caller: Caller, input: { readonly name: string }): Promise<Outcome<{ readonly key: string }>> {
    if (!may(caller, 'viewer') || caller.personId === null) return notAllowed('viewer');
    const personId = caller.personId;
    const given = Given.from(input);
    const name = given.needText('name', 'what the key is for', TEXT.name);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const mine = (await this.keys.list(tx)).filter((key) => key.personId === personId && key.revokedAt === null);
      if (mine.length >= MOST_KEYS) return conflict(`You have ${mine.length} keys. Take one back first.`);
      const key = newSecret('axlebook');
      const id = await this.keys.insert(tx, { personId, name, tokenHash: hashOfSecret(key) });
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'create-api-key', subject: 'api key', subjectId: id, trailerId: null, detail: { name } },
      });
      return done({ key });
    });
  }
}
