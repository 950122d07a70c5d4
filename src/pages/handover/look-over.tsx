import type { Seen } from '../../rules/facts/handover.js';
import type { TireMarks } from '../../rules/facts/part.js';
import type { ThingToSee } from '../../rules/handover/things-to-see.js';
import { Choice, Field, type Typed, typedText } from '../components/field.js';
import { TIRE_FIELDS } from '../form/handover-form.js';
import { optionsOf } from '../words/build-words.js';
import { CONDITION_WORDS, marksWords, seenWords, thingWords } from '../words/handover-words.js';
import { Pictures } from './pictures.js';

/** Of a line: how it went out, or what is on file of it. */
export interface LineBefore {
  readonly seen: Seen | null;
  readonly onFile: TireMarks | null;
}

interface LookOverProps {
  readonly typed: Typed;
  readonly things: readonly ThingToSee[];
  readonly before: readonly LineBefore[];
}

/** Once round the trailer, in one order both ways: how each thing is, with how it was beside it. */
export function LookOver({ typed, things, before }: LookOverProps) {
  return (
    <ol class="look-over">
      {things.map((thing, line) => (
        <li class="look-line" key={`${thing.thing} ${thing.position}`}>
          <Line typed={typed} thing={thing} line={line} before={before[line] ?? NOTHING_BEFORE} />
        </li>
      ))}
    </ol>
  );
}

const NOTHING_BEFORE: LineBefore = { seen: null, onFile: null };

interface LineProps {
  readonly typed: Typed;
  readonly thing: ThingToSee;
  readonly line: number;
  readonly before: LineBefore;
}

function Line({ typed, thing, line, before }: LineProps) {
  const at = `seen.${line}`;
  const hasMarks = thing.thing === 'tire' || thing.thing === 'spare';
  const marks = before.seen?.tire ?? before.onFile;
  return (
    <fieldset class="look-fields">
      <legend class="label">{thingWords(thing)}</legend>
      {before.seen !== null && <p class="soft small">Went out: {seenWords(before.seen)}.</p>}
      {before.seen === null && hasMarks && <p class="soft small">On file: {marksWords(before.onFile)}.</p>}
      {before.seen !== null && before.seen.photoIds.length > 0 && (
        <Pictures ids={before.seen.photoIds} of={`${thingWords(thing)}, as it went out`} />
      )}
      <Choice
        typed={typed}
        name={`${at}.condition`}
        label="How it is"
        none="Not looked at"
        options={optionsOf(CONDITION_WORDS)}
      />
      {hasMarks && <SeenMarks typed={typed} at={at} marks={marks} />}
      <More typed={typed} at={at} line={line} hasMarks={hasMarks} thing={thing} />
    </fieldset>
  );
}

/** What tells one tire from another at a glance. Left empty, it is the tire shown above. */
function SeenMarks({
  typed,
  at,
  marks,
}: {
  readonly typed: Typed;
  readonly at: string;
  readonly marks: TireMarks | null;
}) {
  return (
    <div class="measures">
      <Field
        typed={typed}
        name={`${at}.tire.loadRange`}
        label="Load range read"
        maxLength={3}
        hint={marks?.loadRange ? `${marks.loadRange} so far` : undefined}
      />
      <Field
        typed={typed}
        name={`${at}.tire.dateCode`}
        label="Date code read"
        maxLength={20}
        inputMode="numeric"
        hint={marks?.dateCode ? `${marks.dateCode} so far` : undefined}
      />
    </div>
  );
}

function More({ typed, at, line, hasMarks, thing }: Omit<LineProps, 'before'> & { at: string; hasMarks: boolean }) {
  const names = [`${at}.note`, ...(hasMarks ? TIRE_FIELDS.slice(2).map((name) => `${at}.tire.${name}`) : [])];
  const isOpen =
    names.some((name) => typedText(typed, name) !== '') ||
    typed.problems.some(({ field }) => names.includes(field) || field === `photo.${line}`);
  return (
    <details open={isOpen}>
      <summary>
        {hasMarks ? 'Photo, note, more of the sidewall' : 'Photo, note'}
        <span class="hidden-words"> of {thingWords(thing)}</span>
      </summary>
      <div class="stack">
        <Field
          typed={typed}
          name={`photo.${line}`}
          label="Photo"
          type="file"
          accept="image/jpeg,image/png,image/webp"
          multiple
        />
        {hasMarks && (
          <div class="fields">
            <Field typed={typed} name={`${at}.tire.size`} label="Size" maxLength={24} />
            <Field typed={typed} name={`${at}.tire.maxLoad`} label="Maximum load, single" unit="lb" maxLength={12} />
            <Field
              typed={typed}
              name={`${at}.tire.maxColdPressure`}
              label="At"
              unit="psi"
              maxLength={12}
              hint="A load says nothing without its pressure."
            />
          </div>
        )}
        <Field typed={typed} name={`${at}.note`} label="Note" maxLength={200} />
      </div>
    </details>
  );
}

/** Every line as it starts: sound, for whoever looks changes what is not. */
export function soundLines(things: readonly ThingToSee[]): Readonly<Record<string, string>> {
  return Object.fromEntries(things.map((_, line) => [`seen.${line}.condition`, 'sound']));
}
