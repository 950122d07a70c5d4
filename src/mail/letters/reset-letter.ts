import type { Written } from './paper.js';
import { written } from './written.js';

export interface ResetLetter {
  readonly name: string;
  /** Opens the page that asks for a new password. */
  readonly url: string;
  readonly validHours: number;
}

/** The link to set a new password. */
export function resetLetter({ name, url, validHours }: ResetLetter): Written {
  const lasts = validHours === 1 ? 'one hour' : `${validHours} hours`;
  return written({
    yardName: 'Axlebook',
    subject: 'Set a new Axlebook password',
    preview: `The link works once, for ${lasts}.`,
    greeting: `${name},`,
    opening: [
      'Somebody asked for a new password for your Axlebook sign-in.',
      `If it was you, open the link and choose one. It works once, for ${lasts}.`,
    ],
    summary: [],
    sections: [],
    button: { text: 'Set a new password', url },
    closing: ['If it was not you, do nothing: your password stays as it is.'],
  });
}
