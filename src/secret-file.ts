import { randomBytes } from 'node:crypto';
import { link, mkdir, readFile, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * The secret that signs cookies and links, made on the first start and kept in the data folder, readable by its owner
 * alone. Losing it signs everybody out, nothing worse. Copies of the service on different machines do not share a
 * folder: give them all one AXLEBOOK_SECRET.
 */
export async function keptSecret(dataDir: string): Promise<string> {
  const path = join(dataDir, 'secret');
  const kept = await readFile(path, 'utf8').catch(() => null);
  if (kept !== null) return checked(kept, path);
  await mkdir(dataDir, { recursive: true });
  const fresh = `${path}.${process.pid}`;
  await writeFile(fresh, randomBytes(48).toString('base64url'), { mode: 0o600 });
  // A link is made whole or not at all: of two first starts at once, the second finds the first one's and uses it.
  await link(fresh, path).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw error;
  });
  await unlink(fresh);
  return checked(await readFile(path, 'utf8'), path);
}

function checked(text: string, path: string): string {
  const secret = text.trim();
  if (secret.length < 32) throw new Error(`${path} holds no secret. Delete it, and the next start makes a new one.`);
  return secret;
}
