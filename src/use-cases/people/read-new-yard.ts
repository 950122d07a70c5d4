import { Given, TEXT } from '../input/given.js';
import type { FieldProblem } from '../outcome.js';

export interface NewYardInput {
  readonly name: string;
  /** IANA name, such as `America/Chicago`. */
  readonly timeZone: string;
  readonly place: string | null;
}

/** Reads the first facts of a yard. Usable only where `problems` is empty. */
export function readNewYard(input: NewYardInput): {
  readonly yard: NewYardInput;
  readonly problems: readonly FieldProblem[];
} {
  const given = Given.from({ name: input.name, place: input.place, timeZone: input.timeZone });
  const name = given.needText('name', "the yard's name", TEXT.name);
  const place = given.text('place', 'where the yard is', TEXT.line);
  const timeZone = given.needText('timeZone', "the yard's time zone, such as America/Chicago", TEXT.name);
  if (timeZone !== '' && !isTimeZone(timeZone)) {
    given.refuse('timeZone', 'Choose a time zone of the list, such as America/Chicago.');
  }
  return { yard: { name, place, timeZone }, problems: given.problems };
}

function isTimeZone(name: string): boolean {
  return name === 'UTC' || Intl.supportedValuesOf('timeZone').includes(name);
}
