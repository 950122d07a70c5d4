import { CHECK_EVENTS, MEASURED_QUANTITIES } from '../../rules/facts/check.js';
import type { Caller } from '../../use-cases/caller.js';
import type { YardScreen } from '../../use-cases/show/show-yard.js';
import { Choice, Field, Picks, Section, type Typed, typedText, WrongList } from '../components/field.js';
import { Head, Page } from '../page.js';
import {
  BODY_WORDS,
  BRAKE_WORDS,
  DECK_WORDS,
  HITCH_WORDS,
  optionsOf,
  RAMP_WORDS,
  SUSPENSION_WORDS,
} from '../words/build-words.js';
import { eventWords } from '../words/due-words.js';
import { measuredUnit } from '../words/measured-words.js';

interface CheckKindProps {
  readonly caller: Caller;
  readonly screen: YardScreen;
  readonly typed: Typed;
  /** The check that is changed; null for a new one. */
  readonly checkKindId: string | null;
}

const SPARE_LINES = 4;

export function CheckKindPage({ caller, screen, typed, checkKindId }: CheckKindProps) {
  const title = checkKindId === null ? 'Set up a check' : typedText(typed, 'name') || 'A check';
  const action = checkKindId === null ? '/yard/checks/new' : `/yard/checks/${checkKindId}`;
  return (
    <Page title={title} caller={caller} door="Yard" at="below">
      <Head
        title={title}
        lede="When it falls due, for which builds, what it takes, and whose it is. Every trailer is judged anew when it changes."
      />
      <form class="form" method="post" action={action}>
        <WrongList typed={typed} />
        <input type="hidden" name="code" value={typedText(typed, 'code')} />
        <Section title="The check">
          <div class="fields">
            <Field typed={typed} name="name" label="What it is called" required maxLength={80} wide />
            <Field
              typed={typed}
              name="source"
              label="Where the interval comes from"
              required
              maxLength={200}
              wide
              hint="A manual, a rule, or: common practice, no source"
            />
          </div>
          <Picks
            typed={typed}
            name="safety"
            label="Can someone be hurt if it is left out?"
            kind="radio"
            options={[
              { value: 'yes', label: 'Yes: it cannot be put off past the next job' },
              { value: 'no', label: 'No' },
            ]}
          />
          <Picks
            typed={typed}
            name="blocks"
            label="Overdue, which jobs does it stop?"
            kind="radio"
            options={[
              { value: 'none', label: 'None' },
              { value: 'commercial-jobs', label: 'Those in commerce' },
              { value: 'all-jobs', label: 'All' },
            ]}
          />
        </Section>
        <Triggers typed={typed} />
        <AppliesTo typed={typed} />
        <Work typed={typed} />
        <People typed={typed} screen={screen} />
        <Lines typed={typed} />
        <Section title="Proof" lede="Paper that must ride with the trailer, if there is any.">
          <div class="fields">
            <Field
              typed={typed}
              name="proof.what"
              label="What must be aboard"
              maxLength={200}
              hint="Such as: report or decal"
            />
            <Field typed={typed} name="proof.keepMonths" label="Kept for" unit="months" />
          </div>
        </Section>
        <div class="actions">
          <button class="button button-main" type="submit">
            Save the check
          </button>
          <a class="button" href="/yard">
            Back without saving
          </a>
        </div>
      </form>
      {checkKindId !== null && (
        <form class="actions" method="post" action={`/yard/checks/${checkKindId}/retire`}>
          <button class="button button-stop" type="submit">
            Retire this check
          </button>
          <span class="soft small">No trailer owes it from then on. Its records stay.</span>
        </form>
      )}
    </Page>
  );
}

function Triggers({ typed }: { readonly typed: Typed }) {
  return (
    <Section
      title="When it falls due"
      lede="Whichever comes first. Fill in what applies; all empty means it is only done when somebody asks."
    >
      <div class="fields">
        <Field typed={typed} name="trigger.months" label="Every" unit="months" />
        <Field typed={typed} name="trigger.days" label="Or every" unit="days" />
        <Field typed={typed} name="trigger.miles" label="Or every" unit="miles" />
        <Field typed={typed} name="trigger.trips" label="Or every" unit="trips" />
      </div>
      <Picks
        typed={typed}
        name="trigger.toMonthEnd"
        label="Months run"
        kind="checkbox"
        options={[{ value: 'yes', label: 'To the end of the month' }]}
      />
      <Picks
        typed={typed}
        name="trigger.events"
        label="Or after"
        kind="checkbox"
        options={CHECK_EVENTS.map((value) => ({ value, label: eventWords(value) }))}
      />
      <div class="fields">
        {CHECK_EVENTS.map((event) => (
          <Field
            key={event}
            typed={typed}
            name={`trigger.after.${event}`}
            label={`Miles after: ${eventWords(event)}`}
            hint="Such as 10, 25, 50; empty means at once"
            maxLength={80}
          />
        ))}
      </div>
      <Picks
        typed={typed}
        name="trigger.dates"
        label="Or before a date on file"
        kind="checkbox"
        options={[
          { value: 'registration', label: 'The registration runs out' },
          { value: 'insurance', label: 'The insurance runs out' },
        ]}
      />
    </Section>
  );
}

function AppliesTo({ typed }: { readonly typed: Typed }) {
  const groups = [
    { name: 'bodies', label: 'Bodies', options: optionsOf(BODY_WORDS) },
    { name: 'suspensions', label: 'Suspensions', options: optionsOf(SUSPENSION_WORDS) },
    { name: 'brakes', label: 'Brakes', options: optionsOf(BRAKE_WORDS) },
    { name: 'hitches', label: 'Hitches', options: optionsOf(HITCH_WORDS) },
    { name: 'deckMaterials', label: 'Decks', options: optionsOf(DECK_WORDS) },
    {
      name: 'lubricants',
      label: 'Hubs',
      options: [
        { value: 'grease', label: 'Grease' },
        { value: 'oil', label: 'Oil' },
      ],
    },
    { name: 'ramps', label: 'Ramps', options: optionsOf(RAMP_WORDS) },
  ];
  return (
    <Section
      title="For which builds"
      lede="Nothing ticked in a row means any. A build that is unknown counts as: it may."
    >
      {groups.map(({ name, label, options }) => (
        <Picks key={name} typed={typed} name={`appliesTo.${name}`} label={label} kind="checkbox" options={options} />
      ))}
    </Section>
  );
}

function Work({ typed }: { readonly typed: Typed }) {
  return (
    <Section title="What it takes">
      <div class="fields">
        <Field typed={typed} name="work.hours" label="Time" unit="h" required />
        <Choice
          typed={typed}
          name="work.place"
          label="Where"
          none={null}
          options={[
            { value: 'yard', label: 'In the yard' },
            { value: 'shop', label: 'In the shop' },
            { value: 'road', label: 'On the road' },
          ]}
        />
        <Field
          typed={typed}
          name="work.bundle"
          label="Shares a visit with"
          maxLength={80}
          hint="A word such as hub: checks with the same word are done together"
        />
        <Field typed={typed} name="work.parts" label="Bring" lines={3} wide hint="One a line" />
        <Field typed={typed} name="work.together" label="Done on the same visit" lines={3} wide hint="One a line" />
      </div>
    </Section>
  );
}

function People({ typed, screen }: { readonly typed: Typed; readonly screen: YardScreen }) {
  const options = screen.people
    .filter((person) => person.leftOn === null)
    .map((person) => ({ value: person.personId, label: person.name }));
  return (
    <Section
      title="Whose it is"
      lede="The first is told. The other is told when the first cannot be reached, hands it on, or has left."
    >
      <div class="fields">
        <Choice typed={typed} name="ownerPersonId" label="Who does it" options={options} none="Nobody yet" />
        <Choice typed={typed} name="backupPersonId" label="Who stands in" options={options} none="Nobody yet" />
        <Field typed={typed} name="leadDays" label="Told ahead" unit="days" required />
      </div>
    </Section>
  );
}

function Lines({ typed }: { readonly typed: Typed }) {
  const filled = Object.keys(typed.values).reduce((most, name) => {
    const row = /^lines\.(\d+)\.text$/.exec(name);
    return row && typedText(typed, name) !== '' ? Math.max(most, Number(row[1]) + 1) : most;
  }, 0);
  const asked = [
    { value: 'photo', label: 'A photo' },
    ...MEASURED_QUANTITIES.map((value) => ({
      value,
      label: `Measure: ${measuredUnit(value).what} (${measuredUnit(value).unit})`,
    })),
  ];
  return (
    <Section title="The sheet" lede="Line by line, in the order of the walk. A line emptied is dropped.">
      {Array.from({ length: filled + SPARE_LINES }, (_, row) => row).map((row) => (
        <fieldset class="cargo-row" key={row}>
          <legend class="hidden-words">Line {row + 1}</legend>
          <input type="hidden" name={`lines.${row}.code`} value={typedText(typed, `lines.${row}.code`)} />
          <div class="fields">
            <Field typed={typed} name={`lines.${row}.text`} label={`Line ${row + 1}`} maxLength={200} wide />
            <Choice typed={typed} name={`lines.${row}.asked`} label="Answered by" options={asked} none="OK or bad" />
            <Picks
              typed={typed}
              name={`lines.${row}.safety`}
              label="If bad"
              kind="checkbox"
              wide={false}
              options={[{ value: 'yes', label: 'Hold the trailer' }]}
            />
          </div>
        </fieldset>
      ))}
    </Section>
  );
}
