import type { ChoicesScreen } from '../../use-cases/show/show-choices.js';
import { CDL_WORDS, optionsOf } from '../words/build-words.js';
import { Choice, Field, Section, type Typed, YesNo } from './field.js';

interface HaulFieldsProps {
  readonly typed: Typed;
  readonly choices: ChoicesScreen;
  /** What it means to name no trailer. */
  readonly withoutTrailer: string;
}

/** Which trailer, when, how far. */
export function WhenFields({ typed, choices, withoutTrailer }: HaulFieldsProps) {
  return (
    <div class="fields">
      <Field
        typed={typed}
        name="trailerNumber"
        label="Trailer"
        list={choices.trailerNumbers}
        maxLength={24}
        hint={`Its number; ${withoutTrailer}`}
      />
      <Field typed={typed} name="startsOn" label="First day" type="date" required />
      <Field typed={typed} name="endsOn" label="Last day" type="date" hint="Empty: the same day" />
      <Field typed={typed} name="distance" label="Miles" unit="mi" hint="There and back" />
    </div>
  );
}

/** What pulls it and who drives: some lines of law depend on both. */
export function TowFields({ typed, choices }: Omit<HaulFieldsProps, 'withoutTrailer'>) {
  return (
    <Section title="Tow vehicle and driver">
      <div class="fields">
        <Choice
          typed={typed}
          name="towVehicleId"
          label="Tow vehicle"
          options={choices.towVehicles.map(({ id, name }) => ({ value: id, label: name }))}
          none="Not known yet"
        />
        <Choice
          typed={typed}
          name="haulerPersonId"
          label="Who hauls, of the yard"
          options={choices.people.map(({ id, name }) => ({ value: id, label: name }))}
          none="Nobody of the yard, or not known"
          hint="Gets the mail before the job"
        />
        <Field typed={typed} name="driver.name" label="Driver, if somebody else" maxLength={80} />
        <Choice typed={typed} name="driver.cdl" label="That driver's license" options={optionsOf(CDL_WORDS)} />
      </div>
      <YesNo
        typed={typed}
        name="commercial"
        label="Is the haul in commerce?"
        hint="Some federal and state rules ask only then."
      />
    </Section>
  );
}
