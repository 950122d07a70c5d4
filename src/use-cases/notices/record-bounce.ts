import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { NoticeStore } from '../../store/notice-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { YardStore } from '../../store/yard-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { addressFailed } from './address-failed.js';

export interface Bounce {
  readonly personId: string;
  /** Which mail came back; null takes the newest that was sent. */
  readonly noticeId?: string | null;
  /** What the returned mail says, such as `mailbox does not exist`. */
  readonly note: string;
}

/** Records that mail to a person came back. */
@Injectable()
export class RecordBounce {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly yards: YardStore,
    private readonly audit: AuditStore,
    private readonly letterhead: Letterhead,
  ) {}

  async run(caller: Caller, bounce: Bounce): Promise<Outcome<{ readonly personId: string }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from({ note: bounce.note });
    const note = given.needText('note', 'what the returned mail says', TEXT.line);
    if (given.problems.length > 0) return invalid(given.problems);
    return this.database.inYard(caller.yardId, async (tx) => {
      const person = await this.members.find(tx, bounce.personId);
      if (person === null) return notFound('person');
      const noticeId = await this.notices.recordBounced(tx, person.personId, bounce.noticeId ?? null, note);
      await addressFailed(
        tx,
        {
          notices: this.notices,
          members: this.members,
          trailers: this.trailers,
          yards: this.yards,
          letterhead: this.letterhead,
        },
        caller,
        person,
        { note, items: noticeId === null ? [] : await this.notices.itemsOf(tx, noticeId) },
      );
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'record-bounce',
        subject: 'person',
        subjectId: person.personId,
        trailerId: null,
        detail: { noticeId, note },
      });
      return done({ personId: person.personId });
    });
  }
}
