import type { TireMarks } from '../../rules/facts/part.js';
import type { PartInput } from '../../use-cases/input/part-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { FormReader } from './read-form.js';

/** Places of the form's table of tires: two a side on each axle, the second for duals; and the spare. */
export function tirePlaces(axles: number): readonly string[] {
  const places = Array.from({ length: axles }, (_, at) => [`${at + 1}L`, `${at + 1}LI`, `${at + 1}R`, `${at + 1}RI`]);
  return [...places.flat(), 'spare'];
}

interface TireRow {
  readonly part: PartInput;
  /** The place in the form it was typed at. */
  readonly place: string;
}

/**
 * One tire for each place of the axles that exist. Marks typed once stand for all of them; what a row gives of its own
 * counts instead. Rows are read when anything is known of the tire there.
 */
export function readTireForm(form: FormReader, duals: readonly boolean[]): readonly TireRow[] {
  const fittedOn = form.text('tires.all.fittedOn');
  return tirePlaces(duals.length)
    .filter((place) => !place.endsWith('I') || duals[Number(place[0]) - 1] === true)
    .filter((place) => (place === 'spare' ? saysOwn(form, place) : saysOwn(form, place) || saysAll(form)))
    .map((place) => ({
      place,
      part: {
        kind: 'tire',
        position: positionOf(place, duals),
        fittedOn: (form.text(`tires.${place}.fittedOn`) ?? fittedOn) as PartInput['fittedOn'],
        tire: readMarks(form, place),
      },
    }));
}

/**
 * From the part each problem names to the field it was typed in: the row's own, or the one for all. What was typed once
 * for all tires is wrong once, however many tires took it.
 */
export function tireProblems(
  form: FormReader,
  rows: readonly TireRow[],
  problems: readonly FieldProblem[],
): readonly FieldProblem[] {
  const typed = problems.map((problem) => tireProblem(form, rows, problem));
  return typed.filter(
    (one, at) => typed.findIndex(({ field, message }) => field === one.field && message === one.message) === at,
  );
}

function tireProblem(form: FormReader, rows: readonly TireRow[], problem: FieldProblem): FieldProblem {
  const match = /^parts\[(\d+)\]\.(?:tire\.)?(.+)$/.exec(problem.field);
  const row = match && rows[Number(match[1])];
  const name = match?.[2];
  if (!row || name === undefined) return problem;
  const bare = name.replace(/(Kg|Kpa)$/, '');
  const own = `tires.${row.place}.${bare}`;
  const all = form.text(own) === null && form.text(`tires.all.${bare}`) !== null;
  return { field: all ? `tires.all.${bare}` : own, message: problem.message };
}

const MARKS = [
  'size',
  'kind',
  'loadIndexSingle',
  'loadIndexDual',
  'maxLoadSingle',
  'maxLoadDual',
  'loadRange',
  'speedSymbol',
  'maxColdPressure',
];

/** Reads the marks of one tire, each from its own field or else from the one for all. */
export function readMarks(form: FormReader, place: string): NonNullable<PartInput['tire']> {
  const at = (name: string) =>
    form.text(`tires.${place}.${name}`) === null ? `tires.all.${name}` : `tires.${place}.${name}`;
  return {
    size: form.text(at('size')),
    kind: form.text(at('kind')) as TireMarks['kind'],
    loadIndexSingle: form.number(at('loadIndexSingle')),
    loadIndexDual: form.number(at('loadIndexDual')),
    maxLoadSingleKg: form.pounds(at('maxLoadSingle')),
    maxLoadDualKg: form.pounds(at('maxLoadDual')),
    loadRange: form.text(at('loadRange')),
    speedSymbol: form.text(at('speedSymbol')),
    maxColdPressureKpa: form.psi(at('maxColdPressure')),
    dateCode: form.text(at('dateCode')),
  };
}

function saysOwn(form: FormReader, place: string): boolean {
  return [...MARKS, 'dateCode', 'fittedOn'].some((name) => form.text(`tires.${place}.${name}`) !== null);
}

function saysAll(form: FormReader): boolean {
  return [...MARKS, 'dateCode'].some((name) => form.text(`tires.all.${name}`) !== null);
}

/** `1L` is the outer one where the axle has duals. */
function positionOf(place: string, duals: readonly boolean[]): string {
  if (place === 'spare' || place.endsWith('I')) return place;
  return duals[Number(place[0]) - 1] === true ? `${place}O` : place;
}
