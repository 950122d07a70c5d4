import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { type Caller, may, ROLES, type Role, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface ChangeRoleInput {
  readonly personId: string;
  readonly role: Role;
}

/** Gives a member another role, from their next request on. The last owner stays owner: a yard must have one. */
@Injectable()
export class ChangeRole {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: ChangeRoleInput): Promise<Outcome<null>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const given = Given.from(input);
    const personId = given.needId('personId', 'the person');
    const role = given.needChoice('role', 'what they may do', ROLES);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const members = await this.members.listAndHold(tx);
      const member = members.find((one) => one.personId === personId && one.leftOn === null);
      if (member === undefined) return notFound('person');
      if (member.role === role) return done(null);
      const owners = members.filter((one) => one.role === 'owner' && one.leftOn === null);
      if (member.role === 'owner' && owners.length === 1) {
        return conflict(`${member.name} is the only owner. Make somebody else owner first.`);
      }
      await this.members.save(tx, personId, { role });
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'change-role', subject: 'person', subjectId: personId, trailerId: null },
        detail: { from: member.role, to: role },
      });
      return done(null);
    });
  }
}
