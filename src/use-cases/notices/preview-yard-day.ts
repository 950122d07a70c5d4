import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { NoticeStore } from '../../store/notice-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { YardStore } from '../../store/yard-store.js';
import { type Caller, may } from '../caller.js';
import { done, notAllowed, type Outcome } from '../outcome.js';
import { draftLetters } from './draft-letters.js';

/** A letter as it would go out. */
export interface PreviewedLetter {
  readonly to: { readonly name: string; readonly address: string };
  readonly kind: 'day' | 'stop';
  readonly subject: string;
  readonly text: string;
}

/** The letters that the caller's day would bring, given what was told until now. Writes nothing. */
@Injectable()
export class PreviewYardDay {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly yards: YardStore,
    private readonly letterhead: Letterhead,
  ) {}

  async run(caller: Caller): Promise<Outcome<readonly PreviewedLetter[]>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    return this.database.inYard(caller.yardId, async (tx) => {
      const { notices, members, trailers, letterhead } = this;
      const needs = { notices, members, trailers, letterhead };
      const drafts = await draftLetters(tx, needs, await this.yards.get(tx), caller.today);
      return done(
        drafts.map(({ letter, to, written }) => ({
          to,
          kind: letter.kind,
          subject: written.subject,
          text: written.text,
        })),
      );
    });
  }
}
