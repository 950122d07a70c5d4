import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { InvitationStore } from '../../store/invitation-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { done, notAllowed, notFound, type Outcome } from '../outcome.js';

/** Takes an invitation back: its link opens nothing from now on. */
@Injectable()
export class RevokeInvitation {
  constructor(
    private readonly database: Database,
    private readonly invitations: InvitationStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, { invitationId }: { readonly invitationId: string }): Promise<Outcome<null>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    if (Given.from({ invitationId }).id('invitationId', 'the invitation') === null) return notFound('open invitation');
    return this.database.inYard(caller.yardId, async (tx) => {
      if (!(await this.invitations.revoke(tx, invitationId, caller.now))) return notFound('open invitation');
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'revoke-invitation', subject: 'invitation', subjectId: invitationId, trailerId: null, detail: {} },
      });
      return done(null);
    });
  }
}
