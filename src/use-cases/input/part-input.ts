import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import { type BearingNumbers, PART_KINDS, type Part, type TireMarks } from '../../rules/facts/part.js';
import { PLAUSIBLE_SETTING, PLAUSIBLE_TIRE } from '../../rules/facts/plausible.js';
import { type DateCodeRefusal, parseDateCode } from '../../rules/tire/date-code.js';
import { parseTireNumber, type TireNumberRefusal } from '../../rules/tire/tire-number.js';
import { parseWheelPosition, wheelPositions } from '../../rules/trailer/wheel-positions.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';

/** A part about to be fitted, with what only people read of it. */
export type FittedPart = Omit<Part, 'id' | 'removedOn' | 'removedFor'> & {
  readonly name: string | null;
  readonly costCents: number | null;
};

export type PartInput = Incoming<FittedPart>;

const R = PLAUSIBLE_TIRE;

const REASONS_OF_REMOVAL = ['worn-out', 'damaged', 'precaution', 'moved'] as const;

/** `build` is that of the trailer, to know its wheel positions; null while nobody has said how many axles it has. */
export function readPart(given: Given, build: BuildSheet | null, today: CivilDate): FittedPart {
  const kind = given.needChoice('kind', 'what was fitted', PART_KINDS);
  const fittedOn = given.date('fittedOn', 'the day it was fitted', { notAfter: today, notAfterIs: 'today' });
  if (kind !== 'tire' && given.has('tire')) given.refuse('tire', 'Only a tire has marks of a tire; leave them out.');
  const marks = given.object('tire');
  const tire = kind === 'tire' ? readTireMarks(marks, fittedOn ?? today) : null;
  if (kind !== 'tire') marks.ignore();
  if (kind !== 'hub-bearings' && given.has('bearings')) {
    given.refuse('bearings', 'Only hub bearings have bearing numbers; leave them out.');
  }
  const numbers = given.object('bearings');
  const bearings = kind === 'hub-bearings' ? readBearings(numbers) : null;
  if (kind !== 'hub-bearings') numbers.ignore();
  return {
    kind,
    position: readPosition(given, kind, build),
    fittedOn,
    tire,
    bearings,
    name: given.text('name', 'the name', TEXT.name),
    costCents: given.number('costCents', { ...PLAUSIBLE_SETTING.cents, what: 'what it cost, in cents' }),
  };
}

function readPosition(given: Given, kind: Part['kind'], build: BuildSheet | null): string | null {
  const text = given.text('position', 'the position', TEXT.mark);
  const position = text === null || text.toLowerCase() === 'spare' ? (text?.toLowerCase() ?? null) : text.toUpperCase();
  if (kind === 'tire') return readTirePosition(given, position, build);
  const byWheel = kind === 'hub-bearings' || kind === 'brake-set';
  if (!byWheel) {
    if (position !== null) given.refuse('position', `Leave the position out: a ${kind} has none.`);
    return null;
  }
  const place = position === null ? null : parseWheelPosition(position);
  const axles = build?.axles.length ?? 0;
  if (place?.kind !== 'axle' || place.dual !== null || (axles > 0 && place.axle > axles)) {
    given.refuse('position', `Write the position as axle from the front and side, 1L to ${axles || 9}R.`);
  }
  return position;
}

/** The position of a tire, one that the build has where that is known. */
export function readTirePosition(given: Given, position: string | null, build: BuildSheet | null): string | null {
  const known = build === null || build.axles.length === 0 ? null : wheelPositions(build);
  const fits = position !== null && (known === null ? parseWheelPosition(position) !== null : known.includes(position));
  if (!fits && (position !== null || !given.has('position'))) {
    given.refuse(
      'position',
      known === null
        ? 'Write the position as axle from the front and side, such as 1L or 2R (1LI, 1LO on duals), or spare.'
        : `Choose one of this trailer's positions: ${known.join(', ')}.`,
    );
  }
  return position;
}

/** Why a part came off; asked with the day that it did. */
export function readRemovedFor(given: Given, key: string): Part['removedFor'] {
  return given.choice(key, 'why it came off', REASONS_OF_REMOVAL);
}

/** As stamped on the cones, in capitals. Numbers of which none is known are none. */
function readBearings(numbers: Given): BearingNumbers | null {
  const inner = readBearingNumber(numbers, 'inner');
  const outer = readBearingNumber(numbers, 'outer');
  return inner === null && outer === null ? null : { inner, outer };
}

function readBearingNumber(numbers: Given, key: keyof BearingNumbers): string | null {
  const number = numbers.text(key, `the number of the ${key} bearing`, TEXT.mark)?.toUpperCase() ?? null;
  if (number !== null && !/^(?=.*\d)[A-Z0-9][A-Z0-9/ -]*$/.test(number)) {
    numbers.refuse(key, `Enter the number stamped on the cone of the ${key} bearing, such as L44649 or 25580.`);
  }
  return number;
}

/** Letters of the speed table: A1 to A8, then single letters. */
function readSpeedSymbol(tire: Given): string | null {
  const symbol = tire.text('speedSymbol', 'the speed symbol', TEXT.mark)?.toUpperCase() ?? null;
  if (symbol !== null && !/^(?:[A-Z]|A[1-8])$/.test(symbol)) {
    tire.refuse('speedSymbol', 'Enter the speed symbol as the letter beside the load index, such as M.');
  }
  return symbol;
}

/** What is marked on a sidewall, as it was read on a day. */
export function readTireMarks(tire: Given, on: CivilDate): TireMarks {
  const loadRange = tire.text('loadRange', 'the load range', TEXT.mark)?.toUpperCase() ?? null;
  if (loadRange !== null && !/^[A-Z]{1,2}$/.test(loadRange)) {
    tire.refuse('loadRange', 'Enter the load range as the letter on the sidewall, such as E.');
  }
  return {
    size: tire.text('size', 'the tire size', TEXT.mark),
    kind: tire.choice('kind', 'the kind of tire', ['ST', 'LT', 'passenger', 'truck'] as const),
    loadIndexSingle: tire.number('loadIndexSingle', { ...R.loadIndex, what: 'the load index, single' }),
    loadIndexDual: tire.number('loadIndexDual', { ...R.loadIndex, what: 'the load index, dual' }),
    maxLoadSingleKg: tire.number('maxLoadSingleKg', R.maxLoad),
    maxLoadDualKg: tire.number('maxLoadDualKg', { ...R.maxLoad, what: "the tire's maximum load, dual" }),
    loadRange,
    speedSymbol: readSpeedSymbol(tire),
    maxColdPressureKpa: tire.number('maxColdPressureKpa', R.maxColdPressure),
    dateCode: readDateCode(tire, on),
  };
}

/** The four digits, or the whole tire identification number that ends with them. */
function readDateCode(tire: Given, on: CivilDate): string | null {
  const text = tire.text('dateCode', 'the date code', TEXT.mark);
  if (text === null) return null;
  if (/^\d*$/.test(text)) {
    const read = parseDateCode(text, on);
    if (read.kind === 'refused') tire.refuse('dateCode', sayRefusal(text, read.reason));
    return text;
  }
  const number = parseTireNumber(text, on);
  if (number.kind === 'before-2000') tire.refuse('dateCode', sayRefusal(number.dateDigits, { kind: 'before-2000' }));
  if (number.kind === 'refused') tire.refuse('dateCode', sayRefusal(text, number.reason));
  return number.kind === 'read' ? number.date.code : null;
}

function sayRefusal(code: string, reason: DateCodeRefusal | TireNumberRefusal): string {
  const again = 'Read the sidewall again, the inner side too, or leave it out while it is unknown.';
  switch (reason.kind) {
    case 'before-2000':
      return `"${code}" has three digits, so the tire was made before 2000. Replace it; if you misread, enter the four digits.`;
    case 'not-four-digits':
      return `"${code}" is no date code: it has four digits, week then year, such as 1519. ${again}`;
    case 'no-such-week':
      return `"${code}" would be week ${reason.week} of ${reason.year}, which had ${reason.weeksInYear}. ${again}`;
    case 'in-the-future':
      return `"${code}" would be made on or after ${reason.madeFrom}, later than today or the day it was fitted. ${again}`;
    case 'symbol-not-allowed':
      return `No tire number holds "${reason.symbol}". ${again}`;
    case 'no-such-form':
      return `No tire number has ${reason.symbols} symbols; enter it whole, or only its last four digits. ${again}`;
  }
}
