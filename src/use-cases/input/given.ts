import { type CivilDate, parseCivilDate } from '../../rules/calendar/civil-date.js';
import type { Plausible } from '../../rules/facts/plausible.js';
import type { FieldProblem } from '../outcome.js';
import { sayRange } from './say-range.js';

/** How long a text may be: a number painted on a drawbar, a name, a line, a page. */
export const TEXT = { mark: 24, name: 80, line: 200, page: 4_000 } as const;

/** No trailer on the road, and no record of one, is older. Our bound; it catches a slipped century. */
const FIRST_DAY = '1930-01-01' as CivilDate;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

interface DateBounds {
  readonly notBefore?: CivilDate | null;
  /** Shown in the message in place of the bare date. */
  readonly notBeforeIs?: string;
  readonly notAfter?: CivilDate | null;
  readonly notAfterIs?: string;
}

/**
 * What a door handed in, read field by field into facts.
 *
 * Doors cannot be trusted to have looked: JSON may hold anything. Every field is read by what it should be, each
 * problem is noted under the field's path with its fix, and reading goes on, so that one answer names them all.
 * What is read is only to be used when `problems` is empty. A field nobody reads is a problem too: a misspelt name
 * would otherwise be an unknown that somebody believes they gave.
 */
export class Given {
  private readonly read = new Set<string>();
  private readonly children: Given[] = [];
  private readonly noted: FieldProblem[] = [];
  private readonly fields: Readonly<Record<string, unknown>>;

  private constructor(
    from: unknown,
    private readonly path: string,
  ) {
    this.fields = isObject(from) ? from : {};
    if (from !== null && from !== undefined && !isObject(from)) {
      this.noted.push({ field: path || 'input', message: 'Give this as an object with named fields.' });
    }
  }

  static from(input: unknown): Given {
    return new Given(input, '');
  }

  /** Every problem met so far here and below, and every field that was never asked for. */
  get problems(): readonly FieldProblem[] {
    const stray = Object.keys(this.fields)
      .filter((key) => !this.read.has(key) && this.fields[key] !== undefined)
      .map((key) => ({
        field: this.at(key),
        message: `There is no field of this name. Leave it out, or use one of: ${[...this.read].join(', ')}.`,
      }));
    return [...this.noted, ...this.children.flatMap((child) => child.problems), ...stray];
  }

  /** True when something other than null stands there. */
  has(key: string): boolean {
    return this.value(key) !== null;
  }

  /** Whatever stands here was refused as a whole; its fields are not gone through. */
  ignore(): void {
    for (const key of Object.keys(this.fields)) this.read.add(key);
  }

  refuse(key: string, message: string): void {
    this.noted.push({ field: this.at(key), message });
  }

  text(key: string, what: string, longest: number): string | null {
    const value = this.value(key);
    if (value === null) return null;
    if (typeof value !== 'string') return this.refused(key, `Enter ${what} as text.`);
    const text = value.trim().normalize('NFC');
    if (text === '') return null;
    if (text.length > longest)
      return this.refused(key, `Shorten ${what} to ${longest} characters; it has ${text.length}.`);
    if (hasControl(text)) return this.refused(key, `Take the unprintable characters out of ${what}.`);
    return text;
  }

  needText(key: string, what: string, longest: number): string {
    return this.text(key, what, longest) ?? this.missing(key, `Enter ${what}.`, '');
  }

  number<Q extends number>(key: string, range: Plausible<Q>): Q | null {
    const value = this.value(key);
    if (value === null) return null;
    const fix = `Enter ${range.what} as a ${range.whole ? 'whole ' : ''}number, ${sayRange(range)}.`;
    if (typeof value !== 'number' || !Number.isFinite(value)) return this.refused(key, fix);
    if (range.whole && !Number.isInteger(value)) return this.refused(key, fix);
    // One part in a billion: 150 psi turned into kPa and back must not fall out at the end of its own range.
    const slack = Math.max(Math.abs(range.low), Math.abs(range.high)) * 1e-9;
    if (value < range.low - slack || value > range.high + slack) return this.refused(key, fix);
    return value as Q;
  }

  needNumber<Q extends number>(key: string, range: Plausible<Q>): Q {
    return this.number(key, range) ?? this.missing(key, `Enter ${range.what}, ${sayRange(range)}.`, range.low);
  }

  choice<T extends string>(key: string, what: string, choices: readonly T[]): T | null {
    const value = this.value(key);
    if (value === null || value === '') return null;
    const chosen = choices.find((choice) => choice === value);
    return chosen ?? this.refused(key, `Choose ${what} from: ${choices.join(', ')}.`);
  }

  needChoice<T extends string>(key: string, what: string, choices: readonly [T, ...T[]]): T {
    return this.choice(key, what, choices) ?? this.missing(key, `Choose ${what}: ${choices.join(', ')}.`, choices[0]);
  }

  /** Several of the choices, each once; null when nobody said. */
  choices<T extends string>(key: string, what: string, choices: readonly T[]): readonly T[] | null {
    const value = this.value(key);
    if (value === null) return null;
    const fix = `Choose ${what} from: ${choices.join(', ')}; each once.`;
    if (!Array.isArray(value) || value.length > choices.length) return this.refused(key, fix);
    const chosen = choices.filter((choice) => value.includes(choice));
    if (value.some((one) => !choices.some((choice) => choice === one))) return this.refused(key, fix);
    return chosen;
  }

  flag(key: string, what: string): boolean | null {
    const value = this.value(key);
    if (value === null) return null;
    return typeof value === 'boolean' ? value : this.refused(key, `Answer yes or no (true or false): ${what}.`);
  }

  date(key: string, what: string, bounds: DateBounds = {}): CivilDate | null {
    const value = this.value(key);
    if (value === null || value === '') return null;
    const date = typeof value === 'string' ? parseCivilDate(value) : null;
    if (date === null) return this.refused(key, `Enter ${what} as a day that exists, written YYYY-MM-DD.`);
    const first = bounds.notBefore ?? FIRST_DAY;
    if (date < first) return this.refused(key, `Enter ${what} on or after ${bounds.notBeforeIs ?? first}.`);
    const last = bounds.notAfter ?? null;
    if (last !== null && date > last) {
      return this.refused(key, `Enter ${what} on or before ${bounds.notAfterIs ?? last}.`);
    }
    return date;
  }

  needDate(key: string, what: string, bounds: DateBounds = {}): CivilDate {
    return this.date(key, what, bounds) ?? this.missing(key, `Enter ${what} as YYYY-MM-DD.`, FIRST_DAY);
  }

  id(key: string, what: string): string | null {
    const value = this.value(key);
    if (value === null || value === '') return null;
    return typeof value === 'string' && UUID.test(value)
      ? value.toLowerCase()
      : this.refused(key, `Choose ${what} again; this is not one of the yard's ids.`);
  }

  needId(key: string, what: string): string {
    return this.id(key, what) ?? this.missing(key, `Choose ${what}.`, '');
  }

  /** The fields below. What is left out reads as an object with nothing in it. */
  object(key: string): Given {
    const child = new Given(this.value(key), this.at(key));
    this.children.push(child);
    return child;
  }

  /** One reader per entry; nothing there reads as an empty list. */
  list(key: string, what: string, most: number): readonly Given[] {
    const value = this.value(key);
    if (value === null) return [];
    if (!Array.isArray(value)) {
      this.refuse(key, `Give ${what} as a list.`);
      return [];
    }
    if (value.length > most) {
      this.refuse(key, `Give at most ${most} ${what}; there are ${value.length}.`);
      return [];
    }
    const entries = value.map((entry, place) => new Given(entry ?? {}, `${this.at(key)}[${place}]`));
    this.children.push(...entries);
    return entries;
  }

  /** A list of numbers, none left out; null when nothing is there. */
  numbers<Q extends number>(key: string, range: Plausible<Q>, most: number): readonly Q[] | null {
    const value = this.value(key);
    if (value === null) return null;
    if (!Array.isArray(value)) return this.refused(key, `Give a list of numbers, ${range.what} each.`);
    if (value.length > most) return this.refused(key, `Give at most ${most} numbers; there are ${value.length}.`);
    const each = new Given(Object.fromEntries(value.entries()), this.at(key));
    this.children.push(each);
    return value.map((_, place) => each.needNumber(String(place), range));
  }

  /** Short texts, empty ones dropped; an empty list when nothing is there. */
  texts(key: string, what: string, longest: number, most: number): readonly string[] {
    const value = this.value(key);
    if (value === null) return [];
    if (!Array.isArray(value) || value.length > most) {
      this.refuse(key, `Give ${what} as a list of at most ${most} texts.`);
      return [];
    }
    const each = new Given(Object.fromEntries(value.entries()), this.at(key));
    this.children.push(each);
    return value.map((_, place) => each.text(String(place), what, longest)).filter((text) => text !== null);
  }

  bytes(key: string): Uint8Array | null {
    const value = this.value(key);
    return value instanceof Uint8Array ? value : null;
  }

  private value(key: string): unknown {
    this.read.add(key);
    return this.fields[key] ?? null;
  }

  private at(key: string): string {
    return this.path === '' ? key : `${this.path}.${key}`;
  }

  private refused(key: string, message: string): null {
    this.refuse(key, message);
    return null;
  }

  /** Notes a field that must be there, unless reading it has already said what is wrong with it. */
  private missing<T>(key: string, message: string, stand: T): T {
    const field = this.at(key);
    if (!this.noted.some((problem) => problem.field === field)) this.noted.push({ field, message });
    return stand;
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Characters no page shows and Postgres may not store; line ends and tabs are fine in a note. */
function hasControl(text: string): boolean {
  return [...text].some((letter) => {
    const code = letter.codePointAt(0) ?? 0;
    return (
      (code < 32 && code !== 9 && code !== 10 && code !== 13) || code === 127 || (code >= 0xd800 && code <= 0xdfff)
    );
  });
}
