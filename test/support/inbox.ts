import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';

/** How the server answers one mail: takes it, refuses it at a command, or takes it and hangs up before saying so. */
type Answer =
  | 'accept'
  | 'hang-up-after-data'
  | { readonly at: 'rcpt' | 'data'; readonly code: number; readonly text: string };

/** A real SMTP server that keeps what it takes. */
export interface Inbox {
  readonly url: string;
  /** In the order they came; a mail taken twice is here twice. */
  readonly mails: ParsedMail[];
  /** Asked for each mail, with the address it is for. */
  answer: (to: string) => Answer;
  /** How long the server thinks before it takes a mail, ms. */
  thinkMs: number;
  /** Settles when `enough` mails have come. */
  until(enough: (mails: readonly ParsedMail[]) => boolean): Promise<void>;
  close(): Promise<void>;
}

export async function startInbox(): Promise<Inbox> {
  const waiting = new Set<() => void>();
  const inbox = {
    mails: [] as ParsedMail[],
    answer: (): Answer => 'accept',
    thinkMs: 0,
  } as { mails: ParsedMail[]; answer: (to: string) => Answer; thinkMs: number };

  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    allowInsecureAuth: true,
    onAuth: (_auth, _session, done) => done(smtpError(535, '5.7.8 Wrong user or password')),
    disableReverseLookup: true,
    logger: false,
    onRcptTo: ({ address }, _session, done) => {
      const answer = inbox.answer(address);
      if (typeof answer === 'object' && answer.at === 'rcpt') done(smtpError(answer.code, answer.text));
      else done();
    },
    onData: (stream, session, done) => {
      const to = session.envelope.rcptTo[0]?.address ?? '';
      simpleParser(stream).then(
        (mail) => {
          const answer = inbox.answer(to);
          if (typeof answer === 'object') return done(smtpError(answer.code, answer.text));
          setTimeout(() => {
            inbox.mails.push(mail);
            for (const look of waiting) look();
            if (answer === 'accept') return done();
            for (const connection of server.connections) {
              (connection as unknown as { _socket: { destroy(): void } })._socket.destroy();
            }
          }, inbox.thinkMs);
        },
        (error: Error) => done(error),
      );
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.server.address() as AddressInfo;

  return Object.assign(inbox, {
    url: `smtp://127.0.0.1:${port}`,
    until: (enough: (mails: readonly ParsedMail[]) => boolean) =>
      new Promise<void>((settle) => {
        const look = () => {
          if (!enough(inbox.mails)) return;
          waiting.delete(look);
          settle();
        };
        waiting.add(look);
        look();
      }),
    close: () => new Promise<void>((closed) => server.close(closed)),
  });
}

function smtpError(code: number, text: string): Error {
  return Object.assign(new Error(text), { responseCode: code });
}
