import { z } from 'zod';
import type { Given } from '../input/given.js';

const EMAIL = z.email().max(254);

/** A mail address in lower case, because people do not type capitals the same way twice. Notes a problem if it is none. */
export function readEmail(given: Given, key: string): string {
  const text = given.needText(key, 'a mail address', 254).toLowerCase();
  if (text !== '' && !EMAIL.safeParse(text).success) {
    given.refuse(key, 'Enter a mail address such as pat@example.com, without a name or brackets around it.');
  }
  return text;
}
