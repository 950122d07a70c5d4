import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckedLine, CheckKind, CheckRecord, SheetLine } from '../../rules/facts/check.js';
import { PLAUSIBLE_MEASURED, PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';
import { type Photo, readPhotos, readSignature } from './photo-input.js';
import type { Sending } from './send-id.js';

export type CheckRecordInput = Incoming<
  Omit<CheckRecord, 'id' | 'checkKindId' | 'outcome' | 'byPersonId' | 'lines' | 'costCents'> & {
    /** Left out: it failed when a line is bad, and passed otherwise. */
    outcome: CheckRecord['outcome'] | null;
    lines: readonly CheckedLine[];
  }
>;

/** What a sheet showed when it was opened, so that what has changed since can be told. */
export interface SeenSheet {
  readonly yardNumber: string;
  readonly buildSheetId: string | null;
  /** Stands for the lines of the sheet; other lines have another mark. */
  readonly linesMark: string;
  readonly openHoldIds: readonly string[];
  /** The last day this check was done, and its records of that day. */
  readonly lastDoneOn: CivilDate | null;
  readonly lastRecordIds: readonly string[];
}

/** What belongs to one sending of a sheet and not to the check. */
interface SheetSending extends Sending {
  /** The number as read off the trailer before signing; it must be this trailer's. */
  readonly paintedNumber?: string | null;
  readonly seen?: SeenSheet | null;
}

/** A check as somebody records it. */
export type RecordCheckInput = CheckInput & SheetSending & { readonly checkKindId: string };

/** A check as somebody says it was. */
export type CheckInput = CheckRecordInput & {
  readonly trailerId: string;
  /** One of the yard's people; whoever records it when left out. */
  readonly byPersonId?: string | null;
  /** Somebody from outside, such as an axle shop. */
  readonly byName?: string | null;
  readonly note?: string | null;
  readonly costCents?: number | null;
  readonly photos?: readonly Photo[];
  /** The name typed under the sheet, or the signature drawn there. */
  readonly signedName?: string | null;
  readonly signature?: Photo | null;
};

/** A sheet of fifteen lines on six axles of dual wheels still fits. */
const MOST_LINES = 400;

const POSITION = /^(?:[1-9](?:[LR][IO]?)?|spare)$/;

/** One check done, read against the sheet of its kind. */
export function readCheckRecord(
  given: Given,
  kind: CheckKind,
  today: CivilDate,
): Omit<CheckRecord, 'id' | 'checkKindId' | 'byPersonId' | 'costCents'> {
  const doneOn = given.needDate('doneOn', 'the day it was done', { notAfter: today, notAfterIs: 'today' });
  const lines = given.list('lines', 'lines', MOST_LINES).map((line) => readLine(line, kind));
  refuseRepeats(given, lines);
  const bad = lines.filter((line) => line.result === 'bad');
  const said = given.choice('outcome', 'how it came out', ['pass', 'fail'] as const);
  const failed = badSafetyLines(kind, lines);
  if (said === 'pass' && failed.length > 0) {
    given.refuse(
      'outcome',
      `A line that keeps people safe is bad (${failed.map((line) => line.text).join('; ')}): mark the check as failed, or mend it and record the line as ok.`,
    );
  }
  return {
    doneOn,
    outcome: said ?? (bad.length > 0 ? 'fail' : 'pass'),
    lines,
    inspectedBy: given.choice('inspectedBy', 'who passed it', ['own', 'state'] as const),
    proofOnTrailer: given.flag('proofOnTrailer', 'was the proof seen on the trailer?'),
  };
}

/** What only people read of a check. */
export function readCheckNotes(given: Given): {
  readonly note: string | null;
  readonly costCents: number | null;
  readonly signedName: string | null;
  /** Photos, and the signature where one was drawn. */
  readonly pictures: readonly (Photo & { readonly isSignature: boolean })[];
} {
  const photos = readPhotos(given).map((photo) => ({ ...photo, isSignature: false }));
  const signature = readSignature(given);
  return {
    note: given.text('note', 'the note', TEXT.page),
    costCents: given.number('costCents', { ...PLAUSIBLE_SETTING.cents, what: 'what it cost, in cents' }),
    signedName: given.text('signedName', 'the name signed with', TEXT.name),
    pictures: signature === null ? photos : [...photos, { ...signature, isSignature: true }],
  };
}

/** The lines of the sheet that someone can be hurt by and that were found bad. */
export function badSafetyLines(kind: CheckKind, lines: readonly CheckedLine[]): readonly SheetLine[] {
  return kind.lines.filter(
    (line) => line.safety && lines.some((checked) => checked.code === line.code && checked.result === 'bad'),
  );
}

function readLine(line: Given, kind: CheckKind): CheckedLine {
  const code = line.needText('code', "the line's code", TEXT.name);
  const asked = kind.lines.find((one) => one.code === code);
  if (asked === undefined && code !== '') {
    const known = kind.lines.map((one) => one.code).join(', ');
    line.refuse(
      'code',
      known === '' ? 'This check has no lines; leave them out.' : `Use a line of this check: ${known}.`,
    );
  }
  const position = line.text('position', 'the wheel position', TEXT.mark);
  if (position !== null && !POSITION.test(position)) {
    line.refuse('position', 'Write the position as axle from the front and side, such as 1L, 2RI, or spare.');
  }
  const result = line.choice('result', 'what was found', ['ok', 'bad'] as const);
  const measured = line.has('measured') ? readMeasured(line.object('measured'), asked) : null;
  if (result === null && measured === null && asked?.kind !== 'photo' && !line.has('result') && !line.has('measured')) {
    line.refuse('result', 'Say ok or bad, or give what was measured.');
  }
  return { code, result, position, measured };
}

function readMeasured(measured: Given, asked: SheetLine | undefined): CheckedLine['measured'] {
  const quantity = asked?.quantity ?? null;
  if (quantity === null) {
    measured.refuse('quantity', 'This line is not measured; answer ok or bad.');
    measured.has('quantity');
    measured.has('value');
    return null;
  }
  measured.choice('quantity', 'what is measured', [quantity]);
  return { quantity, value: measured.needNumber('value', PLAUSIBLE_MEASURED[quantity]) };
}

function refuseRepeats(given: Given, lines: readonly CheckedLine[]): void {
  const seen = new Set<string>();
  lines.forEach((line, place) => {
    const which = `${line.code}@${line.position ?? ''}`;
    if (seen.has(which)) {
      given.refuse(`lines[${place}].code`, 'This line and position are there twice; keep the one that is right.');
    }
    seen.add(which);
  });
}
