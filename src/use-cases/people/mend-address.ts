import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { readEmail } from './read-email.js';

export interface MendAddressInput {
  readonly personId: string;
  readonly email: string;
}

/**
 * Sets where the yard's mail to a person goes, and lets it flow again after it came back. The address they sign in
 * with is not touched: an owner who could change that could take over somebody's other yards.
 */
@Injectable()
export class MendAddress {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly audit: AuditStore,
  ) {}

  /** Owners for everybody, and everybody for themselves. */
  async run(caller: Caller, input: MendAddressInput): Promise<Outcome<null>> {
    if (!may(caller, 'owner') && caller.personId !== input.personId) return notAllowed('owner');
    const given = Given.from(input);
    const personId = given.needId('personId', 'the person');
    const email = readEmail(given, 'email');
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const member = await this.members.find(tx, personId);
      if (member === null || member.leftOn !== null) return notFound('person');
      await this.members.save(tx, personId, { email, bouncedAt: null, bounceNote: null });
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'mend-address', subject: 'person', subjectId: personId, trailerId: null },
        detail: { from: member.email, to: email },
      });
      return done(null);
    });
  }
}
