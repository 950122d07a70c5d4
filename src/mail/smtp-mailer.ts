import { createTransport } from 'nodemailer';
import { type Delivery, type Mail, Mailer } from './mailer.js';
import { message } from './message.js';

/** Longest an attempt may take in all, ms. A notice's row stays locked for as long, so it is short; a retry follows. */
const LONGEST_SEND_MS = 45_000;

/** Longest wait for a connection and for the server's first word, ms. Our choice; RFC 5321 4.5.3.2 allows minutes. */
const GREETING_MS = 10_000;
/** Longest silence inside a conversation, ms. */
const SILENCE_MS = 20_000;
/** Few, because a yard's own mail server is small and a letter may wait a second. */
const CONNECTIONS = 3;

/** The commands whose refusal is about this mail. Any other (greeting, login, TLS) is about the server or our settings. */
const ABOUT_THE_MAIL = new Set(['MAIL FROM', 'RCPT TO', 'DATA']);

/**
 * Enhanced codes that say there is no such mailbox. Source: RFC 3463 section 3.2 (X.1.1 bad mailbox, X.1.2 bad system,
 * X.1.3 bad syntax, X.1.6 moved), RFC 7505 section 4.2 (5.1.10 the domain takes no mail), RFC 3463 3.3 (X.2.1 disabled).
 * Refusals for other reasons (relaying denied is 5.7.1) say nothing against the address: a wrong setting of ours must
 * not mark every person of the yard as unreachable.
 */
const NO_SUCH_MAILBOX = /\b5\.(?:1\.(?:1|2|3|6|10)|2\.1)\b/;

/** Sends over SMTP, to the server that SMTP_URL names. */
export class SmtpMailer extends Mailer {
  private readonly transport;

  constructor(
    smtpUrl: string,
    private readonly fromAddress: string,
  ) {
    super();
    this.transport = createTransport({
      url: smtpUrl,
      pool: true,
      maxConnections: CONNECTIONS,
      connectionTimeout: GREETING_MS,
      greetingTimeout: GREETING_MS,
      socketTimeout: SILENCE_MS,
    });
  }

  async send(mail: Mail): Promise<Delivery> {
    try {
      const sent = await this.transport.sendMail({
        ...message(mail, this.fromAddress),
        signal: AbortSignal.timeout(LONGEST_SEND_MS),
      });
      return { kind: 'sent', reply: sent.response };
    } catch (error) {
      return refusal(error);
    }
  }

  async close(): Promise<void> {
    this.transport.close();
  }
}

/** What nodemailer puts on its errors, as far as it is used here. */
interface SmtpError extends Error {
  readonly code?: string;
  readonly command?: string;
  readonly response?: string;
  readonly permanent?: boolean;
}

function refusal(thrown: unknown): Delivery {
  const error = thrown as SmtpError;
  const words = error.response ?? error.message;
  // EENVELOPE without an answer from the server: the address cannot even be written on an envelope.
  if (error.code === 'EENVELOPE' && error.response === undefined) {
    return { kind: 'permanent', error: words, badAddress: true };
  }
  // A connection that drops after the mail was handed over also ends here: it may have been taken, or not.
  // Sending it again under the same Message-ID is preferred to losing it.
  if (error.permanent !== true || !ABOUT_THE_MAIL.has(error.command ?? '')) return { kind: 'temporary', error: words };
  return { kind: 'permanent', error: words, badAddress: error.command === 'RCPT TO' && NO_SUCH_MAILBOX.test(words) };
}
