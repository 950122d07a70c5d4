import { type Kilometres, miles } from '../../rules/units/distance.js';
import { lbf, type Newtons } from '../../rules/units/force.js';
import { inch, type Metres } from '../../rules/units/length.js';
import { type Kilograms, lb } from '../../rules/units/mass.js';
import { type Kilopascals, psi } from '../../rules/units/pressure.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { Typed } from '../components/field.js';
import { readInches, readNumber } from './read-number.js';

type Values = Record<string, string | readonly string[]>;

/** Newton metres in one pound-foot, from the exact pound, foot and standard gravity: what torque wrenches here show. */
const NM_PER_LBFT = 0.45359237 * 9.80665 * 0.3048;

/** Newtons per metre in one pound-force per inch: how spring makers here give a rate. */
const N_PER_M_IN_LB_PER_IN = lbf(1) / inch(1);

/**
 * One form as it was sent, read field by field into what use cases speak: SI, and null where nothing was entered.
 * What cannot be read as a number becomes NaN: the use case then answers with the field's own fix and nothing is saved.
 */
export class FormReader {
  private readonly values: Values;

  constructor(body: unknown) {
    this.values = isRecord(body) ? cleaned(body) : {};
  }

  /** The form as typed, with what is wrong with it, to be shown again. */
  typed(problems: readonly FieldProblem[] = []): Typed {
    return { values: this.values, problems };
  }

  /** Empty is null. */
  text(name: string): string | null {
    const value = this.values[name];
    const text = (typeof value === 'string' ? value : (value?.[0] ?? '')).trim();
    return text === '' ? null : text;
  }

  /** The text, or an empty one, for fields that must be filled in: the use case asks for them. */
  need(name: string): string {
    return this.text(name) ?? '';
  }

  list(name: string): readonly string[] {
    const value = this.values[name];
    if (value === undefined) return [];
    return (typeof value === 'string' ? [value] : value).filter((text) => text !== '');
  }

  /** Yes, no, or null where nobody said. */
  flag(name: string): boolean | null {
    const text = this.text(name);
    return text === 'yes' ? true : text === 'no' ? false : null;
  }

  /** A box that was ticked. */
  ticked(name: string): boolean {
    return this.text(name) !== null;
  }

  number(name: string): number | null {
    return readNumber(this.text(name) ?? '', ['%', 'years', 'days', 'h']);
  }

  pounds(name: string): Kilograms | null {
    const value = readNumber(this.text(name) ?? '', ['lb', 'lbs', 'pounds']);
    return value === null ? null : lb(value);
  }

  poundsOfForce(name: string): Newtons | null {
    const value = readNumber(this.text(name) ?? '', ['lb', 'lbs', 'lbf', 'pounds']);
    return value === null ? null : lbf(value);
  }

  inches(name: string): Metres | null {
    const value = readInches(this.text(name) ?? '');
    return value === null ? null : inch(value);
  }

  psi(name: string): Kilopascals | null {
    const value = readNumber(this.text(name) ?? '', ['psi']);
    return value === null ? null : psi(value);
  }

  miles(name: string): Kilometres | null {
    const value = readNumber(this.text(name) ?? '', ['mi', 'miles']);
    return value === null ? null : miles(value);
  }

  poundFeet(name: string): number | null {
    const value = readNumber(this.text(name) ?? '', ['lb-ft', 'ft-lb', 'lb ft', 'ft lb']);
    return value === null ? null : value * NM_PER_LBFT;
  }

  /** Spring rate in newtons per metre. */
  poundsPerInch(name: string): number | null {
    const value = readNumber(this.text(name) ?? '', ['lb per in', 'lb/in', 'lb-in', 'lbs/in']);
    return value === null ? null : value * N_PER_M_IN_LB_PER_IN;
  }

  /** Cents from dollars. */
  dollars(name: string): number | null {
    const value = readNumber((this.text(name) ?? '').replace('$', ''));
    return value === null ? null : Math.round(value * 100);
  }

  /**
   * How many rows of a repeated group hold something. Rows left empty are closed up first, so that a row's number
   * is the same in the form, in the facts and in what is said about them.
   */
  rows(prefix: string, deciding: readonly string[]): number {
    const numbers = new Set<number>();
    for (const name of Object.keys(this.values)) {
      const match = name.startsWith(`${prefix}.`) ? /^(\d+)\./.exec(name.slice(prefix.length + 1)) : null;
      if (match) numbers.add(Number(match[1]));
    }
    const inOrder = [...numbers].sort((a, b) => a - b);
    const filled = inOrder.filter((row) => deciding.some((field) => this.text(`${prefix}.${row}.${field}`) !== null));
    this.close(prefix, filled);
    return filled.length;
  }

  private close(prefix: string, filled: readonly number[]): void {
    const moved: Values = {};
    for (const [name, value] of Object.entries(this.values)) {
      if (!name.startsWith(`${prefix}.`)) continue;
      delete this.values[name];
      const match = /^(\d+)\.(.+)$/.exec(name.slice(prefix.length + 1));
      const row = match ? filled.indexOf(Number(match[1])) : -1;
      if (match && row >= 0) moved[`${prefix}.${row}.${match[2]}`] = value;
    }
    Object.assign(this.values, moved);
  }
}

export function poundFeetToNm(value: number): number {
  return value * NM_PER_LBFT;
}

export function toPoundsPerInch(newtonsPerMetre: number): number {
  return newtonsPerMetre / N_PER_M_IN_LB_PER_IN;
}

export function nmToPoundFeet(value: number): number {
  return value / NM_PER_LBFT;
}

function isRecord(body: unknown): body is Readonly<Record<string, unknown>> {
  return typeof body === 'object' && body !== null;
}

/** Only texts come from a form; anything else was put there by hand and is dropped. */
function cleaned(body: Readonly<Record<string, unknown>>): Values {
  const values: Values = {};
  for (const [name, value] of Object.entries(body)) {
    if (typeof value === 'string') values[name] = value;
    else if (Array.isArray(value)) values[name] = value.filter((one) => typeof one === 'string');
  }
  return values;
}
