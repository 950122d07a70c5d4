import type { Written } from './paper.js';
import { written } from './written.js';

export interface InvitationLetter {
  readonly yardName: string;
  /** Null when whoever invited did not know it. */
  readonly name: string | null;
  readonly invitedByName: string;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  readonly url: string;
  readonly validDays: number;
}

const MAY: Readonly<Record<InvitationLetter['role'], string>> = {
  owner: 'You will be an owner: you can do everything in it, settings and people too.',
  shop: 'You will be in the shop: you record checks and repairs, and open and lift holds.',
  hand: 'You will be a hand: you record checks, loads and trips.',
  viewer: 'You will be able to read everything in it.',
};

/** Asks somebody into a yard. */
export function invitationLetter({ yardName, name, invitedByName, role, url, validDays }: InvitationLetter): Written {
  const lasts = validDays === 1 ? 'one day' : `${validDays} days`;
  return written({
    yardName,
    subject: `${invitedByName} invites you to the trailer book of ${yardName}`,
    preview: MAY[role],
    greeting: name === null ? 'Hello,' : `${name},`,
    opening: [
      `${invitedByName} keeps the trailers of ${yardName} in Axlebook: what each is built for, what falls due and what comes before the next job.`,
      MAY[role],
      `The link works once, for ${lasts}.`,
    ],
    summary: [],
    sections: [],
    button: { text: 'Join the yard', url },
    closing: ['If this means nothing to you, do nothing and you will hear no more of it.'],
  });
}
