import { mkdir, open, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { createTransport } from 'nodemailer';
import { type Delivery, type Mail, Mailer } from './mailer.js';
import { message } from './message.js';

/**
 * Writes each mail to a folder as an .eml file, which any mail program opens. Used where no mail server is set.
 * The file is named after the Message-ID, so a repeat writes over the first; it appears whole or not at all.
 */
export class FolderMailer extends Mailer {
  private readonly composer = createTransport({ streamTransport: true, buffer: true, newline: 'windows' });

  constructor(
    private readonly folder: string,
    private readonly fromAddress: string,
  ) {
    super();
  }

  async send(mail: Mail): Promise<Delivery> {
    try {
      const composed = await this.composer.sendMail(message(mail, this.fromAddress));
      const name = emlName(mail.messageId);
      await mkdir(this.folder, { recursive: true, mode: 0o700 });
      await writeWhole(this.folder, name, composed.message as Buffer);
      return { kind: 'sent', reply: `written to ${name}` };
    } catch (error) {
      // A full disk or a missing right is mended by people; the notice waits for it.
      return { kind: 'temporary', error: error instanceof Error ? error.message : String(error) };
    }
  }

  async close(): Promise<void> {
    this.composer.close();
  }
}

/** `<0192…@yard.example>` → `0192…@yard.example.eml`, with anything a file system could stumble over taken out. */
function emlName(messageId: string): string {
  return `${messageId.replace(/^<|>$/g, '').replace(/[^A-Za-z0-9._@-]/g, '_')}.eml`;
}

/** Written beside and renamed, both forced to disk: after a power cut the file is there in full or not there. */
async function writeWhole(folder: string, name: string, bytes: Buffer): Promise<void> {
  const beside = join(folder, `.${name}.${process.pid}`);
  const file = await open(beside, 'w', 0o600);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(beside, join(folder, name));
  const directory = await open(folder, 'r');
  try {
    await directory.sync();
  } finally {
    await directory.close();
  }
}
