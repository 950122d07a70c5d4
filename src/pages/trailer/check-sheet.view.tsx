import type { CheckKind } from '../../rules/facts/check.js';
import type { Caller } from '../../use-cases/caller.js';
import type { CheckSheetScreen } from '../../use-cases/show/show-check-sheet.js';
import { Caution } from '../components/caution.js';
import { Field, Picks, Section, SendId, type Typed, typedText, YesNo } from '../components/field.js';
import { Island } from '../components/island.js';
import { lineField } from '../form/check-form.js';
import { personMark } from '../sheets/person-mark.js';
import { type CheckSheetData, sheetPath } from '../sheets/sheet-data.js';
import { listWords, positionWords } from '../words/build-words.js';
import { triggerWords, workWords } from '../words/due-words.js';
import { measuredLimit, measuredPlaces, measuredUnit } from '../words/measured-words.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface CheckSheetProps {
  readonly caller: Caller;
  readonly screen: CheckSheetScreen;
  readonly typed: Typed;
}

type Line = CheckKind['lines'][number];

/** One check, line by line: tick, measure with the limit beside it, photograph. */
export function CheckSheetPage({ caller, screen, typed }: CheckSheetProps) {
  const { trailer, kind } = screen;
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title={kind.name}
      lede={`${trailer.yardNumber} is the number to find on the trailer. ${workWords(kind)}.`}
      typed={typed}
      action={`/trailers/${trailer.id}/checks/${kind.id}`}
      submit="Record the check"
      multipart
    >
      <SendId typed={typed} />
      <input type="hidden" name="seen" value={typedText(typed, 'seen') || JSON.stringify(screen.seen)} />
      <input type="hidden" name="person" value={personMark(caller)} />
      <Island name="check-sheet" data={sheetData(caller, screen)}>
        <p class="phone-line" role="status">
          Send it while there is a signal.
        </p>
        <div class="wrong-list sheet-wrong" role="alert" tabindex={-1} hidden>
          <p class="strong">Not signed yet. It is kept as it is; mend this:</p>
        </div>
      </Island>
      {screen.lookAlikes.length > 0 && (
        <p class="caution" role="note">
          {trailer.yardNumber} is easily taken for {lookAlikeWords(screen.lookAlikes)}. Read the number on the trailer
          you stand at.
        </p>
      )}
      {kind.lines.some((line) => line.kind !== 'photo') && (
        <Section
          title="The sheet"
          lede="What is skipped stays open. A bad line that keeps people safe puts the trailer on hold at once."
        >
          <ol class="sheet-lines answers">
            {kind.lines
              .filter((line) => line.kind !== 'photo')
              .map((line) => (
                <li key={line.code}>
                  <SheetLineFields line={line} screen={screen} typed={typed} />
                </li>
              ))}
          </ol>
        </Section>
      )}
      <Section title="Photos" lede={photoWords(kind)}>
        <Field
          typed={typed}
          name="photos"
          label="Up to 12 pictures, 8 MB each"
          type="file"
          accept="image/jpeg,image/png,image/webp"
          multiple
          wide
        />
        <ul class="photos shots" aria-label="Pictures taken" hidden />
      </Section>
      <Section title="How it came out">
        <Picks
          typed={typed}
          name="outcome"
          label="The check"
          kind="radio"
          options={[
            { value: '', label: 'As its lines say' },
            { value: 'pass', label: 'Passed' },
            { value: 'fail', label: 'Failed' },
          ]}
        />
        <div class="fields">
          <Field typed={typed} name="doneOn" label="Done on" type="date" required />
          <Field
            typed={typed}
            name="byName"
            label="Done by, if from outside"
            maxLength={80}
            hint={`Empty: ${caller.name}`}
          />
          <Field typed={typed} name="cost" label="Cost" unit="$" />
        </div>
        {kind.proof !== null && (
          <>
            <Picks
              typed={typed}
              name="inspectedBy"
              label="Who passed it?"
              kind="radio"
              hint="A State program's pass runs to the end of its month."
              options={[
                { value: '', label: 'Not said' },
                { value: 'own', label: 'Own or a hired inspector' },
                { value: 'state', label: 'A State program' },
              ]}
            />
            <YesNo
              typed={typed}
              name="proofOnTrailer"
              label={`Is the proof on the trailer (${kind.proof.what})?`}
              hint="A report that is in date does not make up for a missing decal."
            />
          </>
        )}
        <Field typed={typed} name="note" label="Note" lines={2} wide maxLength={4000} />
        <p class="soft small">
          {kind.triggers.length > 0 && `Asked for ${listWords(kind.triggers.map(triggerWords))}. `}
          {kind.source}
        </p>
      </Section>
      <SignSection caller={caller} typed={typed} />
      <Caution>Limits beside the fields are the ones on file; the maker's own number governs.</Caution>
    </TrailerFormPage>
  );
}

/** Which trailer it was, and who answers for what is written above. */
function SignSection({ caller, typed }: { readonly caller: Caller; readonly typed: Typed }) {
  return (
    <Section title="Sign it" lede="Read the number off the trailer you stand at, not off this page.">
      <div class="fields">
        <Field typed={typed} name="paintedNumber" label="Number painted on the trailer" maxLength={24} />
        <div class="actions scan" hidden>
          <button class="button" type="button">
            Scan its label
          </button>
        </div>
      </div>
      <video class="scan-view" hidden muted playsInline aria-label="What the camera sees" />
      <p class="wrong number-wrong" role="alert" hidden />
      <p class="tape-note must-not-go" role="alert" hidden />
      <div class="sign-pad" hidden>
        <span class="label">Sign here with a finger</span>
        <canvas width={640} height={240} role="img" aria-label="Your signature; typing your name below does as well" />
        <div class="actions">
          <button class="button" type="button">
            Clear the signature
          </button>
        </div>
      </div>
      <Field
        typed={typed}
        name="signedName"
        label="Name typed as signature"
        hint={`Typing your name counts as signing. You are ${caller.name}.`}
        autoComplete="name"
        maxLength={80}
      />
    </Section>
  );
}

/** What the script of the sheet needs to know without asking. */
function sheetData(caller: Caller, { trailer, kind, build, lookAlikes }: CheckSheetScreen): CheckSheetData {
  const measures = kind.lines.flatMap(({ code, quantity }) =>
    quantity === null
      ? []
      : measuredPlaces(quantity, build).map((place) => [lineField(code, place, 'value'), quantity] as const),
  );
  return {
    person: personMark(caller),
    path: sheetPath(trailer.id, kind.id),
    trailerId: trailer.id,
    yardNumber: trailer.yardNumber,
    check: kind.name,
    today: caller.today,
    timeZone: caller.timeZone,
    lookAlikes,
    measures: Object.fromEntries(measures),
    safety: Object.fromEntries(kind.lines.filter((line) => line.safety).map((line) => [line.code, line.text])),
  };
}

/** So many are named; a yard of two thousand has dozens for each. */
const MOST_NAMED = 4;

function lookAlikeWords(numbers: readonly string[]): string {
  const named = numbers.slice(0, MOST_NAMED);
  const more = numbers.length - named.length;
  const all = more > 0 ? [...named, `${more} more`] : named;
  return new Intl.ListFormat('en-US', { type: 'disjunction' }).format(all);
}

function photoWords(kind: CheckKind): string {
  const wanted = kind.lines.filter((line) => line.kind === 'photo').map((line) => line.text);
  return wanted.length === 0 ? 'If there is something to see.' : `Wanted: ${wanted.join('; ')}.`;
}

function SheetLineFields({
  line,
  screen,
  typed,
}: {
  readonly line: Line;
  readonly screen: CheckSheetScreen;
  readonly typed: Typed;
}) {
  const label = line.safety ? `${line.text} (keeps people safe)` : line.text;
  if (line.quantity === null) {
    return (
      <Picks
        typed={typed}
        name={lineField(line.code, null, 'result')}
        label={label}
        kind="radio"
        options={[
          { value: 'ok', label: 'OK' },
          { value: 'bad', label: 'Bad' },
          { value: '', label: 'Skip' },
        ]}
      />
    );
  }
  return <Measures line={line} quantity={line.quantity} label={label} screen={screen} typed={typed} />;
}

interface MeasuresProps {
  readonly line: Line;
  readonly quantity: NonNullable<Line['quantity']>;
  readonly label: string;
  readonly screen: CheckSheetScreen;
  readonly typed: Typed;
}

function Measures({ line, quantity, label, screen, typed }: MeasuresProps) {
  const places = measuredPlaces(quantity, screen.build);
  const tire = screen.facts.parts.find((part) => part.kind === 'tire' && part.removedOn === null)?.tire ?? null;
  const limit = measuredLimit(quantity, screen.build, tire);
  const { unit } = measuredUnit(quantity);
  return (
    <fieldset class="field wide">
      <legend class="label">{label}</legend>
      {limit && <span class="hint">{limit}</span>}
      <div class="measures">
        {places.map((position) => (
          <div class="measure" key={position ?? 'once'}>
            <Field
              typed={typed}
              name={lineField(line.code, position, 'value')}
              label={position === null ? 'Measured' : positionWords(position)}
              unit={unit}
              maxLength={12}
            />
            <label class="pick">
              <input
                type="checkbox"
                name={lineField(line.code, position, 'result')}
                value="bad"
                checked={typed.values[lineField(line.code, position, 'result')] === 'bad'}
              />
              Bad
              <span class="hidden-words">
                : {line.text}, {position === null ? 'measured' : positionWords(position)}
              </span>
            </label>
          </div>
        ))}
      </div>
    </fieldset>
  );
}
