import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { NoticeStore } from '../../store/notice-store.js';
import { type Caller, may, signed } from '../caller.js';
import { conflict, done, notAllowed, notFound, type Outcome } from '../outcome.js';

/** Puts a notice that was given up back into the queue, under the same Message-ID. */
@Injectable()
export class SendAgain {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: { readonly noticeId: string }): Promise<Outcome<{ readonly noticeId: string }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    return this.database.inYard(caller.yardId, async (tx) => {
      const notice = await this.notices.find(tx, input.noticeId);
      if (notice === null) return notFound('notice');
      if (notice.bodyForgotten) return conflict('Its link was for one reader only and is not kept. Invite them again.');
      if (!(await this.notices.sendAgain(tx, input.noticeId, caller.now))) {
        return conflict('Only a notice that was given up or came back can be sent again.');
      }
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'send-again',
        subject: 'notice',
        subjectId: input.noticeId,
        trailerId: null,
        detail: { before: notice.state },
      });
      return done({ noticeId: input.noticeId });
    });
  }
}
