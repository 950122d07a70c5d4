import { createHash, randomBytes } from 'node:crypto';

/**
 * A secret to hand to one person: 256 random bits, so that guessing is hopeless and a plain fast hash is enough to
 * keep (passwords need a slow one because people choose them).
 */
export function newSecret(prefix: string): string {
  return `${prefix}_${randomBytes(32).toString('base64url')}`;
}

/** What is kept of a secret, and found again by. */
export function hashOfSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
