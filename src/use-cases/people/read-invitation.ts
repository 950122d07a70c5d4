import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { InvitationStore } from '../../store/invitation-store.js';
import { MembershipStore } from '../../store/membership-store.js';
import { hashOfSecret } from '../../store/secret.js';
import { YardStore } from '../../store/yard-store.js';
import type { Role } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';
import { isOpen } from './is-open.js';

export interface OpenInvitation {
  readonly yardName: string;
  readonly email: string;
  readonly name: string | null;
  readonly role: Role;
  readonly invitedByName: string;
}

/** What an invitation says to whoever has its link. One that is used, taken back or too old reads like none at all. */
@Injectable()
export class ReadInvitation {
  constructor(
    private readonly database: Database,
    private readonly invitations: InvitationStore,
    private readonly members: MembershipStore,
    private readonly yards: YardStore,
  ) {}

  async run({ token, now }: { readonly token: string; readonly now: Date }): Promise<Outcome<OpenInvitation>> {
    const found = await this.database.invitationOf(hashOfSecret(token));
    if (found === null) return notFound('invitation');
    return this.database.inYard(found.yardId, async (tx) => {
      const invitation = await this.invitations.find(tx, found.id);
      if (invitation === null || !isOpen(invitation, now)) return notFound('invitation');
      const { email, name, role, invitedBy } = invitation;
      const inviter = await this.members.find(tx, invitedBy);
      const { name: yardName } = await this.yards.get(tx);
      return done({ yardName, email, name, role, invitedByName: inviter?.name ?? yardName });
    });
  }
}
