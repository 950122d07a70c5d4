import { Injectable } from '@nestjs/common';
import { ApiTokenStore } from '../../store/api-token-store.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { type Caller, may, signed } from '../caller.js';
import { conflict, done, notAllowed, notFound, type Outcome } from '../outcome.js';

/**
 * Records that somebody left the yard. From then on they cannot get in, their API keys are dead and nothing is sent to
 * them; what they recorded stays under their name. What was theirs to do shows as unowned and goes to its backup.
 */
@Injectable()
export class PersonLeft {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly keys: ApiTokenStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, { personId }: { readonly personId: string }): Promise<Outcome<null>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    return this.database.inYard(caller.yardId, async (tx) => {
      const members = await this.members.listAndHold(tx);
      const member = members.find((one) => one.personId === personId && one.leftOn === null);
      if (member === undefined) return notFound('person');
      const owners = members.filter((one) => one.role === 'owner' && one.leftOn === null);
      if (member.role === 'owner' && owners.length === 1) {
        return conflict(`${member.name} is the only owner. Make somebody else owner first, then let them go.`);
      }
      await this.members.save(tx, personId, { leftOn: caller.today });
      for (const key of await this.keys.list(tx)) {
        if (key.personId === personId) await this.keys.revoke(tx, key.id, caller.now);
      }
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'person-left', subject: 'person', subjectId: personId, trailerId: null },
        detail: { role: member.role, on: caller.today },
      });
      return done(null);
    });
  }
}
