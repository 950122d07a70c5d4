import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Mail } from '../../src/mail/mailer.js';
import { SmtpMailer } from '../../src/mail/smtp-mailer.js';
import { type Inbox, startInbox } from '../support/inbox.js';

const MAIL: Mail = {
  messageId: '<019aa000-0000-7000-8000-000000000001@ostrow.example>',
  fromName: 'Ostrow Fencing',
  to: { name: 'Marta Ostrow', address: 'marta@ostrow.example' },
  subject: 'T-07: hub repack by Mon 2 Jun',
  text: 'T-07, the long black one: hub repack.\n',
  html: '<p>T-07, the long black one: hub repack.</p>',
  date: new Date('2025-05-12T11:00:00Z'),
  listId: 'Ostrow Fencing <ostrow.axlebook.ostrow.example>',
};

let inbox: Inbox;
let mailer: SmtpMailer;

beforeEach(async () => {
  inbox = await startInbox();
  mailer = new SmtpMailer(inbox.url, 'trailers@ostrow.example');
});

afterEach(async () => {
  await mailer.close();
  await inbox.close();
});

test('a mail arrives as text and HTML, from the yard, under its own Message-ID and date', async () => {
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'sent' });
  const [received] = inbox.mails;
  expect(received?.messageId).toBe(MAIL.messageId);
  expect(received?.from?.value).toEqual([{ name: 'Ostrow Fencing', address: 'trailers@ostrow.example' }]);
  expect(received?.to).toMatchObject({ value: [{ name: 'Marta Ostrow', address: 'marta@ostrow.example' }] });
  expect(received?.subject).toBe(MAIL.subject);
  expect(received?.date).toEqual(MAIL.date);
  expect(received?.text).toBe(MAIL.text);
  expect(received?.html).toBe(MAIL.html);
  expect(received?.headers.get('auto-submitted')).toBe('auto-generated');
  expect(received?.headers.get('list')).toMatchObject({
    id: { name: 'Ostrow Fencing', id: 'ostrow.axlebook.ostrow.example' },
  });
});

test('a server that asks to come back is not the end of the mail', async () => {
  inbox.answer = () => ({ at: 'rcpt', code: 450, text: '4.2.0 Greylisted, come back' });
  expect(await mailer.send(MAIL)).toEqual({ kind: 'temporary', error: expect.stringContaining('Greylisted') });
  inbox.answer = () => 'accept';
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'sent' });
});

test('a mailbox that does not exist is the address that is wrong', async () => {
  inbox.answer = () => ({ at: 'rcpt', code: 550, text: '5.1.1 No such user here' });
  expect(await mailer.send(MAIL)).toEqual({
    kind: 'permanent',
    error: expect.stringContaining('No such user'),
    badAddress: true,
  });
});

test('a refused relay or content is final, but says nothing against the address', async () => {
  inbox.answer = () => ({ at: 'rcpt', code: 550, text: '5.7.1 Relaying denied' });
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'permanent', badAddress: false });
  inbox.answer = () => ({ at: 'data', code: 554, text: '5.6.0 I do not like this mail' });
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'permanent', badAddress: false });
});

test('a server that hangs up after the mail was handed over gets it again, the same to the byte', async () => {
  inbox.answer = () => 'hang-up-after-data';
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'temporary' });
  inbox.answer = () => 'accept';
  expect(await mailer.send(MAIL)).toMatchObject({ kind: 'sent' });
  const [first, second] = inbox.mails.map(({ headerLines, html, text }) => ({
    lines: headerLines.filter(({ key }) => key !== 'received').map(({ line }) => line),
    html,
    text,
  }));
  expect(first).toEqual(second);
});

test('no server at all is worth another try', async () => {
  const unheard = new SmtpMailer('smtp://127.0.0.1:1', 'trailers@ostrow.example');
  expect(await unheard.send(MAIL)).toMatchObject({ kind: 'temporary' });
  await unheard.close();
});

test('a wrong password is about our settings: the mail is kept, not given up', async () => {
  const { hostname, port } = new URL(inbox.url);
  const stranger = new SmtpMailer(`smtp://yard:wrong@${hostname}:${port}`, 'trailers@ostrow.example');
  expect(await stranger.send(MAIL)).toMatchObject({ kind: 'temporary' });
  await stranger.close();
});

test('an address that cannot be written on an envelope is wrong for good', async () => {
  const delivery = await mailer.send({ ...MAIL, to: { name: 'Nobody', address: '' } });
  expect(delivery).toMatchObject({ kind: 'permanent', badAddress: true });
});
