import { createHash } from 'node:crypto';
import type { SendMailOptions } from 'nodemailer';
import type { Mail } from './mailer.js';

/**
 * The message as both mailers compose it. Everything in it comes from the mail, nothing from the moment of sending:
 * the date is the notice's, and the boundary is made from the Message-ID, so a repeat is the same to the byte.
 */
export function message(mail: Mail, fromAddress: string): SendMailOptions {
  return {
    from: { name: mail.fromName, address: fromAddress },
    to: { name: mail.to.name, address: mail.to.address },
    subject: mail.subject,
    text: mail.text,
    html: mail.html,
    messageId: mail.messageId,
    date: mail.date,
    baseBoundary: createHash('sha256').update(mail.messageId).digest('hex').slice(0, 24),
    xMailer: false,
    headers: {
      // RFC 3834, section 5: asks holiday notes and other programs not to answer.
      'Auto-Submitted': 'auto-generated',
      'List-Id': mail.listId,
    },
    // Letters are made here; nothing in one may make the composer read a file or an address.
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}
