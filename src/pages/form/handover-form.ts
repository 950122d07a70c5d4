import type { Signature } from '../../rules/facts/handover.js';
import type { ThingToSee } from '../../rules/handover/things-to-see.js';
import type { HandOutInput } from '../../use-cases/handovers/hand-out.js';
import type { HandoverInput } from '../../use-cases/input/handover-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { FormReader } from './read-form.js';
import type { SentForm } from './read-multipart.js';

type SeenInput = HandoverInput['seen'][number];
type PhotoInput = NonNullable<HandoverInput['photos']>[number];

/** What was answered of the sheet, with the line of the form each answer stood on. */
export interface LookedOver {
  readonly seen: readonly SeenInput[];
  readonly photos: readonly PhotoInput[];
  readonly lines: readonly number[];
  readonly photoLines: readonly number[];
}

/** Marks of a sidewall that the sheet asks for; the first two stand in sight. */
export const TIRE_FIELDS = ['loadRange', 'dateCode', 'size', 'maxLoad', 'maxColdPressure'] as const;

/** Lines on which a condition is chosen; one left at "not looked at" is left out whole. */
export function readLookedOver(form: FormReader, things: readonly ThingToSee[], sent: SentForm): LookedOver {
  const lines = things.flatMap((_, line) => (form.text(`seen.${line}.condition`) === null ? [] : [line]));
  const photos = sent.photos.flatMap((photo, at) => {
    const line = Number(/^photo\.(\d+)$/.exec(sent.photoFields[at] ?? '')?.[1] ?? Number.NaN);
    const shown = things[line];
    return shown === undefined ? [] : [{ line, photo: { ...photo, ...shown } as PhotoInput }];
  });
  return {
    seen: lines.map((line) => readLine(form, line, things[line] as ThingToSee)),
    photos: photos.map(({ photo }) => photo),
    lines,
    photoLines: photos.map(({ line }) => line),
  };
}

function readLine(form: FormReader, line: number, { thing, position }: ThingToSee): SeenInput {
  const at = `seen.${line}`;
  const isRead = TIRE_FIELDS.some((name) => form.text(`${at}.tire.${name}`) !== null);
  const tire = isRead
    ? {
        size: form.text(`${at}.tire.size`),
        loadRange: form.text(`${at}.tire.loadRange`),
        dateCode: form.text(`${at}.tire.dateCode`),
        maxLoadSingleKg: form.pounds(`${at}.tire.maxLoad`),
        maxColdPressureKpa: form.psi(`${at}.tire.maxColdPressure`),
      }
    : null;
  const condition = form.need(`${at}.condition`) as SeenInput['condition'];
  return { thing, position, condition, note: form.text(`${at}.note`), ...(tire === null ? {} : { tire }) };
}

export function readHitchForm(form: FormReader): HandOutInput['hitch'] {
  const ball = (which: 'ball' | 'swappedTo') => ({
    sizeM: form.inches(`hitch.${which}.size`),
    ratingKg: form.pounds(`hitch.${which}.rating`),
  });
  const isSwapped = ['size', 'rating'].some((name) => form.text(`hitch.swappedTo.${name}`) !== null);
  return {
    ball: ball('ball'),
    swappedTo: isSwapped ? ball('swappedTo') : null,
    plug: form.text('hitch.plug') as HandOutInput['hitch']['plug'],
  } as HandOutInput['hitch'];
}

/** A name typed, or strokes that the pad left behind as JSON; null where there is neither. */
export function readSignatureForm(form: FormReader): Signature | null {
  const name = form.text('signature.name');
  const drawn = form.text('signature.strokes');
  if (name === null && drawn === null) return null;
  return { name, strokes: drawn === null ? [] : strokesIn(drawn) };
}

/** What is no list of strokes goes on as it is: the use case then says what to give. */
function strokesIn(drawn: string): Signature['strokes'] {
  try {
    return JSON.parse(drawn) as Signature['strokes'];
  } catch {
    return drawn as unknown as Signature['strokes'];
  }
}

/** From the thing a problem names to the line it was answered on. */
export function lookedOverProblem({ lines, photoLines }: LookedOver, problem: FieldProblem): FieldProblem {
  const photo = /^photos\[(\d+)\]/.exec(problem.field);
  if (photo) return { field: `photo.${photoLines[Number(photo[1])] ?? 0}`, message: problem.message };
  if (problem.field.startsWith('signature')) return { field: 'signature.name', message: problem.message };
  const seen = /^seen\[(\d+)\]\.?(.*)$/.exec(problem.field);
  if (!seen) return problem;
  const line = lines[Number(seen[1])] ?? 0;
  const name = (seen[2] ?? '').replace('maxLoadSingleKg', 'maxLoad').replace('maxColdPressureKpa', 'maxColdPressure');
  const shown = name === '' || name === 'thing' || name === 'position' ? 'condition' : name;
  return { field: `seen.${line}.${shown === 'tire' ? 'tire.dateCode' : shown}`, message: problem.message };
}
