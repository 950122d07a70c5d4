/** One finished mail to one person. Sending it twice sends the same bytes under the same Message-ID. */
export interface Mail {
  /** With its angle brackets, as it stands in the header. Fixed when the notice was written, never when it is sent. */
  readonly messageId: string;
  /** Shown as the sender; the address behind it is the service's own. */
  readonly fromName: string;
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  /** When the notice was written: the same on every attempt. */
  readonly date: Date;
  /** Tells people's mail programs which yard it is from, so that one rule files them all. */
  readonly listId: string;
}

/**
 * What became of one attempt.
 * `temporary`: the same mail may be taken later. `permanent`: it would be refused again, so nobody tries again by themselves.
 */
export type Delivery =
  | { readonly kind: 'sent'; readonly reply: string }
  | { readonly kind: 'temporary'; readonly error: string }
  /** `badAddress`: the server said that there is no such mailbox, not merely that it did not like the mail. */
  | { readonly kind: 'permanent'; readonly error: string; readonly badAddress: boolean };

/**
 * Hands mail on. Two exist: one speaks SMTP, one writes files where no mail server is set.
 * Neither throws for what a server or a disk may say; that is in the answer.
 */
export abstract class Mailer {
  abstract send(mail: Mail): Promise<Delivery>;
  /** Ends open connections. */
  abstract close(): Promise<void>;
}
