import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { Letterhead } from '../../mail/letterhead.js';
import { resetLetter } from '../../mail/letters/reset-letter.js';
import { Mailer } from '../../mail/mailer.js';

interface ResetLetterInput {
  readonly name: string;
  readonly email: string;
  readonly url: string;
  readonly validHours: number;
  readonly now: Date;
}

/**
 * Mails a link to set a new password. Unlike the yard's notices it is not kept: the link would open every yard of
 * that person to whoever reads the row. If it is lost, the person asks again.
 */
@Injectable()
export class SendResetLetter {
  constructor(
    private readonly mailer: Mailer,
    private readonly letterhead: Letterhead,
  ) {}

  /** Throws when the mail could not be handed on; nobody but the log is told. */
  async run({ name, email, url, validHours, now }: ResetLetterInput): Promise<void> {
    const letter = resetLetter({ name, url, validHours });
    const delivery = await this.mailer.send({
      ...letter,
      messageId: this.letterhead.messageId(randomUUID()),
      fromName: 'Axlebook',
      to: { name, address: email },
      date: now,
      listId: this.letterhead.listId('Axlebook sign-in', 'sign-in'),
    });
    if (delivery.kind !== 'sent') throw new Error(`A reset letter was not taken: ${delivery.error}`);
  }
}
