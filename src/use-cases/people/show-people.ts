import { Injectable } from '@nestjs/common';
import { type ApiToken, ApiTokenStore } from '../../store/api-token-store.js';
import { Database } from '../../store/database.js';
import { type Invitation, InvitationStore } from '../../store/invitation-store.js';
import { type Membership, MembershipStore } from '../../store/membership-store.js';
import { type Caller, may } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface PeopleScreen {
  readonly members: readonly Membership[];
  /** Open ones; empty for everybody but owners. */
  readonly invitations: readonly (Invitation & { readonly tooOld: boolean })[];
  /** One's own; for owners everybody's. */
  readonly keys: readonly (ApiToken & { readonly holder: string })[];
  /** Other yards the caller may work in. */
  readonly otherYards: readonly { readonly yardId: string; readonly name: string; readonly role: string }[];
}

/** Who belongs to the yard, who is asked to, and which programs act for whom. */
@Injectable()
export class ShowPeople {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly invitations: InvitationStore,
    private readonly keys: ApiTokenStore,
  ) {}

  async run(caller: Caller): Promise<Outcome<PeopleScreen>> {
    const isOwner = may(caller, 'owner');
    const yards = caller.personId === null ? [] : await this.database.yardsOfPerson(caller.personId);
    const otherYards = yards
      .filter((yard) => yard.leftOn === null && yard.yardId !== caller.yardId)
      .map((yard) => ({ yardId: yard.yardId, name: yard.yardName, role: yard.role }));
    return this.database.inYard(caller.yardId, async (tx) => {
      const members = await this.members.list(tx);
      const nameOf = new Map(members.map((member) => [member.personId, member.name]));
      const invited = isOwner ? await this.invitations.list(tx) : [];
      const open = invited.filter((one) => one.acceptedAt === null && one.revokedAt === null);
      const keys = (await this.keys.list(tx)).filter(
        (key) => key.revokedAt === null && (isOwner || key.personId === caller.personId),
      );
      return done({
        members,
        invitations: open.map((one) => ({ ...one, tooOld: one.expiresAt <= caller.now })),
        keys: keys.map((key) => ({ ...key, holder: nameOf.get(key.personId) ?? '' })),
        otherYards,
      });
    });
  }
}
