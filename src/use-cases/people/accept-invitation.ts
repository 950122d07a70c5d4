import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { InvitationStore } from '../../store/invitation-store.js';
import { MembershipStore } from '../../store/membership-store.js';
import { hashOfSecret } from '../../store/secret.js';
import { conflict, done, notFound, type Outcome } from '../outcome.js';
import { isOpen } from './is-open.js';

export interface AcceptInvitationInput {
  readonly token: string;
  readonly person: { readonly id: string; readonly name: string; readonly email: string };
  readonly now: Date;
}

/**
 * Makes the person a member of the yard that invited them. There is no caller yet: the link, and having signed in
 * with the invited address, is what lets them. Somebody who left and is asked back takes up their old place.
 */
@Injectable()
export class AcceptInvitation {
  constructor(
    private readonly database: Database,
    private readonly invitations: InvitationStore,
    private readonly members: MembershipStore,
    private readonly audit: AuditStore,
  ) {}

  async run({ token, person, now }: AcceptInvitationInput): Promise<Outcome<{ readonly yardId: string }>> {
    const found = await this.database.invitationOf(hashOfSecret(token));
    if (found === null) return notFound('invitation');
    return this.database.inYard(found.yardId, async (tx) => {
      const invitation = await this.invitations.find(tx, found.id);
      if (invitation === null || !isOpen(invitation, now)) return notFound('invitation');
      if (invitation.email !== person.email.toLowerCase()) {
        return conflict(`This invitation is for ${invitation.email}. Sign out, then open the link again.`);
      }
      // Two who open the same link at once both come here; only one of them gets past this line.
      if (!(await this.invitations.accept(tx, invitation.id, now))) return notFound('invitation');
      const { role } = invitation;
      const before = await this.members.find(tx, person.id);
      if (before === null) {
        await this.members.insert(tx, { personId: person.id, role, name: person.name, email: person.email, cdl: null });
      } else {
        await this.members.save(tx, person.id, { role, leftOn: null });
      }
      await this.audit.append(tx, {
        ...{ personId: person.id, who: person.name, door: 'page', action: 'accept-invitation', subject: 'person' },
        ...{ subjectId: person.id, trailerId: null, detail: { role, invitationId: invitation.id } },
      });
      return done({ yardId: found.yardId });
    });
  }
}
