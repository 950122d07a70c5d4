import type { FieldProblem } from '../outcome.js';

/** NIST SP 800-63B-4, 3.1.1.2, asks for 15 where a password is all there is and no less than 8; ten is our own middle. */
export const PASSWORD_LEAST = 10;
/** The same section: at least 64 must be allowed. More only makes the slow hash slower. */
export const PASSWORD_MOST = 128;

/** What is wrong with a password somebody chose; null when it will do. Length alone counts, no rules on letters. */
export function passwordProblem(field: string, password: string): FieldProblem | null {
  if (password.length < PASSWORD_LEAST) {
    return {
      field,
      message: `Choose a password of at least ${PASSWORD_LEAST} characters; a few words in a row are good.`,
    };
  }
  if (password.length > PASSWORD_MOST) {
    return { field, message: `Choose a password of at most ${PASSWORD_MOST} characters.` };
  }
  return null;
}
