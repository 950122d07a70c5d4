import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { CheckedLine, CheckKind } from '../../rules/facts/check.js';
import type { CheckRecordInput, SeenSheet } from '../../use-cases/input/check-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { measuredFix, measuredPlaces, measuredUnit } from '../words/measured-words.js';
import type { FormReader } from './read-form.js';
import { readNumber } from './read-number.js';

/** The name of a line's field: `lines.end-play.1L.value`. */
export function lineField(code: string, position: string | null, what: 'value' | 'result'): string {
  return `lines.${code}.${position ?? 'once'}.${what}`;
}

export interface ReadLine {
  readonly line: CheckedLine;
  readonly field: string;
  readonly quantity: CheckKind['lines'][number]['quantity'];
}

/** The lines that were answered, each with the field it was answered in. */
export function readCheckLines(form: FormReader, kind: CheckKind, build: BuildSheet | null): readonly ReadLine[] {
  return kind.lines.flatMap(({ code, kind: how, quantity }): readonly ReadLine[] => {
    if (how === 'photo') return [];
    const places = how === 'measure' && quantity !== null ? measuredPlaces(quantity, build) : [null];
    return places.flatMap((position): readonly ReadLine[] => {
      const field = lineField(code, position, quantity === null ? 'result' : 'value');
      const result = form.text(lineField(code, position, 'result')) as CheckedLine['result'];
      const shown = quantity === null ? null : readNumber(form.text(field) ?? '');
      if (result === null && shown === null) return [];
      const measured =
        quantity === null || shown === null ? null : { quantity, value: measuredUnit(quantity).toSi(shown) };
      return [{ line: { code, position, result, measured }, field, quantity }];
    });
  });
}

export function readCheckForm(
  form: FormReader,
  lines: readonly ReadLine[],
): CheckRecordInput & {
  readonly note: string | null;
  readonly byName: string | null;
  readonly costCents: number | null;
  readonly signedName: string | null;
  readonly paintedNumber: string | null;
  readonly sendId: string | null;
  readonly seen: SeenSheet | null;
} {
  return {
    doneOn: form.need('doneOn') as CheckRecordInput['doneOn'],
    outcome: form.text('outcome') as NonNullable<CheckRecordInput['outcome']> | null,
    lines: lines.map(({ line }) => line),
    inspectedBy: form.text('inspectedBy') as 'own' | 'state' | null,
    proofOnTrailer: form.flag('proofOnTrailer'),
    note: form.text('note'),
    byName: form.text('byName'),
    costCents: form.dollars('cost'),
    signedName: form.text('signedName'),
    paintedNumber: form.text('paintedNumber'),
    sendId: form.text('sendId'),
    seen: seenOf(form.text('seen')),
  };
}

/** What the sheet showed, carried along as JSON. Spoiled on the way, it is handed on as it is and refused there. */
function seenOf(text: string | null): SeenSheet | null {
  if (text === null) return null;
  try {
    return JSON.parse(text) as SeenSheet;
  } catch {
    return text as unknown as SeenSheet;
  }
}

/** Nothing answered and nothing said is no pass: silence must not look like work. */
export function silenceProblem(form: FormReader, lines: readonly ReadLine[]): FieldProblem | null {
  if (lines.length > 0 || form.text('outcome') !== null) return null;
  return { field: 'outcome', message: 'Answer the lines of the sheet, or say how the check came out.' };
}

/** From the line a problem names to the field it was answered in, with the fix in the unit of the page. */
export function lineProblem(lines: readonly ReadLine[], problem: FieldProblem): FieldProblem {
  const match = /^lines\[(\d+)\]/.exec(problem.field);
  const read = match && lines[Number(match[1])];
  if (!read) return problem;
  const measured = problem.field.includes('.measured') && read.quantity !== null;
  return {
    field: read.field,
    message: measured && read.quantity !== null ? measuredFix(read.quantity) : problem.message,
  };
}
