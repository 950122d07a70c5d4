import { Given, TEXT } from '../input/given.js';
import type { FieldProblem } from '../outcome.js';
import { readEmail } from './read-email.js';
import { passwordProblem } from './read-password.js';

interface NewPersonInput {
  readonly yourName: string;
  readonly email: string;
  readonly password: string;
}

interface NewPerson {
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

/** Reads what somebody says of themselves to get an account. Usable only where `problems` is empty. */
export function readNewPerson(input: NewPersonInput): {
  readonly person: NewPerson;
  readonly problems: readonly FieldProblem[];
} {
  const given = Given.from({ yourName: input.yourName, email: input.email });
  const name = given.needText('yourName', 'your name', TEXT.name);
  const email = readEmail(given, 'email');
  const weak = passwordProblem('password', input.password);
  return {
    person: { name, email, password: input.password },
    problems: [...given.problems, ...(weak === null ? [] : [weak])],
  };
}
