import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { invitationLetter } from '../../mail/letters/invitation-letter.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { InvitationStore } from '../../store/invitation-store.js';
import { MembershipStore } from '../../store/membership-store.js';
import { newId } from '../../store/new-id.js';
import { NoticeStore } from '../../store/notice-store.js';
import { hashOfSecret, newSecret } from '../../store/secret.js';
import { YardStore } from '../../store/yard-store.js';
import { type Caller, may, ROLES, type Role, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { conflict, done, invalid, notAllowed, type Outcome } from '../outcome.js';
import { readEmail } from './read-email.js';

/** Long enough for somebody on leave, short enough that a forgotten mail opens nothing. Our choice. */
const VALID_DAYS = 14;

export interface InvitePersonInput {
  readonly email: string;
  readonly name: string | null;
  readonly role: Role;
}

/** Asks somebody to join the yard. An earlier invitation of the same address stops working. */
@Injectable()
export class InvitePerson {
  constructor(
    private readonly database: Database,
    private readonly invitations: InvitationStore,
    private readonly members: MembershipStore,
    private readonly yards: YardStore,
    private readonly notices: NoticeStore,
    private readonly audit: AuditStore,
    private readonly letterhead: Letterhead,
  ) {}

  /** The link is in the mail; it is given back once too, so that an owner can hand it over where no mail goes out. */
  async run(
    caller: Caller,
    input: InvitePersonInput,
  ): Promise<Outcome<{ readonly email: string; readonly url: string }>> {
    if (!may(caller, 'owner') || caller.personId === null) return notAllowed('owner');
    const invitedBy = caller.personId;
    const given = Given.from(input);
    const email = readEmail(given, 'email');
    const name = given.text('name', 'their name', TEXT.name);
    const role = given.needChoice('role', 'what they may do', ROLES);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const members = await this.members.list(tx);
      if (members.some((member) => member.leftOn === null && member.email.toLowerCase() === email)) {
        return conflict(`${email} belongs to this yard already. Change their role in the list instead.`);
      }
      const secret = newSecret('join');
      const url = `${this.letterhead.baseUrl}/invitation?token=${secret}`;
      const expiresAt = new Date(caller.now.getTime() + VALID_DAYS * 86_400_000);
      for (const earlier of await this.invitations.list(tx)) {
        if (earlier.email === email) await this.invitations.revoke(tx, earlier.id, caller.now);
      }
      const tokenHash = hashOfSecret(secret);
      const invited = { email, name, role, invitedBy, expiresAt, tokenHash, createdAt: caller.now };
      const invitationId = await this.invitations.insert(tx, invited);
      const { name: yardName } = await this.yards.get(tx);
      const noticeId = newId();
      await this.notices.insert(tx, {
        ...invitationLetter({ yardName, name, invitedByName: caller.name, role, url, validDays: VALID_DAYS }),
        id: noticeId,
        personId: null,
        kind: 'invitation',
        key: `invitation ${invitationId}`,
        to: { name: name ?? email, address: email },
        messageId: this.letterhead.messageId(noticeId),
        notBefore: caller.now,
        writtenAt: caller.now,
        toldOn: caller.today,
        items: [],
      });
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'invite-person', subject: 'invitation', subjectId: invitationId, trailerId: null },
        detail: { email, role },
      });
      return done({ email, url });
    });
  }
}
