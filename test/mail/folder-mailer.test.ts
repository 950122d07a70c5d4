import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { FolderMailer } from '../../src/mail/folder-mailer.js';
import type { Mail } from '../../src/mail/mailer.js';

const MAIL: Mail = {
  messageId: '<019aa000-0000-7000-8000-000000000001@localhost>',
  fromName: 'Ostrow Fencing',
  to: { name: 'Marta Ostrow', address: 'marta@ostrow.example' },
  subject: 'T-07: hub repack by Mon 2 Jun',
  text: 'Repack 4 hubs.\n',
  html: '<p>Repack 4 hubs.</p>',
  date: new Date('2025-05-12T11:00:00Z'),
  listId: 'Ostrow Fencing <ostrow.axlebook.localhost>',
};

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'axlebook-mail-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

test('a mail becomes a file that any mail program opens', async () => {
  expect(await new FolderMailer(join(folder, 'mail'), 'axlebook@localhost').send(MAIL)).toMatchObject({ kind: 'sent' });
  const names = await readdir(join(folder, 'mail'));
  expect(names).toEqual(['019aa000-0000-7000-8000-000000000001@localhost.eml']);
  const parsed = await simpleParser(await readFile(join(folder, 'mail', names[0] ?? '')));
  expect(parsed).toMatchObject({ subject: MAIL.subject, text: MAIL.text, html: MAIL.html, messageId: MAIL.messageId });
});

test('the same mail again writes over the first, with the same bytes', async () => {
  const mailer = new FolderMailer(folder, 'axlebook@localhost');
  await mailer.send(MAIL);
  const [name = ''] = await readdir(folder);
  const before = await readFile(join(folder, name));
  await mailer.send(MAIL);
  expect(await readdir(folder)).toEqual([name]);
  expect(await readFile(join(folder, name))).toEqual(before);
});

test('a Message-ID with a path in it stays inside the folder', async () => {
  await new FolderMailer(join(folder, 'mail'), 'axlebook@localhost').send({ ...MAIL, messageId: '<../../etc/x@y>' });
  expect(await readdir(folder)).toEqual(['mail']);
  expect(await readdir(join(folder, 'mail'))).toEqual(['.._.._etc_x@y.eml']);
});

test('a folder that cannot be written is a reason to try again, not to lose the mail', async () => {
  const occupied = join(folder, 'mail');
  await writeFile(occupied, 'a file where the folder should be');
  await chmod(occupied, 0o400);
  expect(await new FolderMailer(occupied, 'axlebook@localhost').send(MAIL)).toMatchObject({ kind: 'temporary' });
});
