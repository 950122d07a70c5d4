import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { type NoticeDetail, NoticeListView } from '../../store/views/notice-list.view.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

export type NoticeScreen = NoticeDetail;

/** One notice with its mail. */
@Injectable()
export class ShowNotice {
  constructor(
    private readonly database: Database,
    private readonly list: NoticeListView,
  ) {}

  /** Invitations and password resets carry links that are keys: nobody but their reader sees their text. */
  async run(caller: Caller, input: { readonly noticeId: string }): Promise<Outcome<NoticeScreen>> {
    const notice = await this.database.inYard(caller.yardId, (tx) => this.list.find(tx, input.noticeId));
    if (notice === null) return notFound('notice');
    return done(SECRET.has(notice.kind) ? { ...notice, bodyText: '', bodyHtml: '' } : notice);
  }
}

const SECRET: ReadonlySet<string> = new Set(['invitation', 'reset']);
