import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { Mailer } from '../../mail/mailer.js';
import { Database, type YardTx } from '../../store/database.js';
import { type Membership, MembershipStore } from '../../store/membership-store.js';
import { type NoticeKind, NoticeStore, type NoticeToSend } from '../../store/notice-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type Yard, YardStore } from '../../store/yard-store.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';
import { addressFailed } from './address-failed.js';
import { nextAttempt } from './next-attempt.js';
import { afterQuietHours } from './quiet-hours.js';

/** `nothing`: no notice of the yard may go out now. */
export type Delivered = 'nothing' | 'sent' | 'retry-later' | 'dead' | 'cancelled';

/** Kinds that somebody waits for, or that must not wait: quiet hours do not hold them back. */
const AT_ONCE: ReadonlySet<NoticeKind> = new Set(['stop', 'invitation', 'reset']);
/** Kinds with a link that lets its reader in: the body is forgotten when it has gone out. */
const SECRET: ReadonlySet<NoticeKind> = new Set(['invitation', 'reset']);

/**
 * Sends the next notice of a yard that may go out, and records what became of it.
 *
 * The row stays locked while the mail is handed over. So two copies of the service never send the same notice, and
 * when one is killed its lock ends with its connection: the next sweep, of whichever copy, sees the row at once.
 * Killed after the server took the mail and before our record, the notice is sent again, under the same Message-ID,
 * which lets mail programs show it once. That is preferred to losing it.
 */
@Injectable()
export class DeliverNotice {
  constructor(
    private readonly database: Database,
    private readonly notices: NoticeStore,
    private readonly members: MembershipStore,
    private readonly trailers: TrailerStore,
    private readonly yards: YardStore,
    private readonly mailer: Mailer,
    private readonly letterhead: Letterhead,
  ) {}

  async run(caller: Caller): Promise<Outcome<Delivered>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const notice = await this.notices.claimNext(tx, caller.now);
      if (notice === null) return done('nothing' as const);
      const person = notice.personId === null ? null : await this.members.find(tx, notice.personId);
      const unwanted = await this.unwanted(tx, notice, person);
      if (unwanted !== null) {
        await this.notices.cancel(tx, notice.id, unwanted);
        return done('cancelled' as const);
      }
      return done(await this.send(tx, caller, notice, person));
    });
  }

  /** Why nobody should send it any more; null when it should go. */
  private async unwanted(tx: YardTx, notice: NoticeToSend, person: Membership | null): Promise<string | null> {
    if (notice.personId === null) return null;
    if (person === null || person.leftOn !== null) return `${notice.to.name} has left the yard`;
    if (person.bouncedAt !== null) return `mail to ${person.name} comes back`;
    if (await this.notices.allSettled(tx, notice.id)) return 'all it tells was dealt with before it went out';
    return null;
  }

  private async send(
    tx: YardTx,
    caller: Caller,
    notice: NoticeToSend,
    person: Membership | null,
  ): Promise<Exclude<Delivered, 'nothing' | 'cancelled'>> {
    const yard = await this.yards.get(tx);
    // An address may have been mended since the notice was written.
    const to = person === null ? notice.to : { name: person.name, address: person.email };
    const delivery = await this.mailer.send({
      messageId: notice.messageId,
      fromName: yard.name,
      to,
      subject: notice.subject,
      text: notice.text,
      html: notice.html,
      date: notice.writtenAt,
      listId: this.letterhead.listId(yard.name, yard.slug),
    });
    switch (delivery.kind) {
      case 'sent':
        await this.notices.recordSent(tx, notice.id, caller.now, to);
        if (SECRET.has(notice.kind)) await this.notices.forgetBody(tx, notice.id);
        return 'sent';
      case 'permanent':
        await this.notices.recordDead(tx, notice.id, caller.now, delivery.error);
        if (delivery.badAddress && person !== null) await this.tellOwners(tx, caller, notice, person, delivery.error);
        return 'dead';
      case 'temporary':
        return this.retry(tx, caller, yard, notice, delivery.error);
    }
  }

  private async tellOwners(
    tx: YardTx,
    caller: Caller,
    notice: NoticeToSend,
    person: Membership,
    note: string,
  ): Promise<void> {
    const { notices, members, trailers, yards, letterhead } = this;
    const items = await notices.itemsOf(tx, notice.id);
    await addressFailed(tx, { notices, members, trailers, yards, letterhead }, caller, person, { note, items });
  }

  private async retry(
    tx: YardTx,
    caller: Caller,
    yard: Yard,
    notice: NoticeToSend,
    error: string,
  ): Promise<'retry-later' | 'dead'> {
    const next = nextAttempt(caller.now, notice.attempts + 1);
    if (next === null) {
      await this.notices.recordDead(tx, notice.id, caller.now, `given up: ${error}`);
      return 'dead';
    }
    const at = AT_ONCE.has(notice.kind) ? next : afterQuietHours(next, yard);
    await this.notices.recordRetry(tx, notice.id, caller.now, error, at);
    return 'retry-later';
  }
}
