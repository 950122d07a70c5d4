import type { ComponentChildren } from 'preact';
import type { Caller } from '../../use-cases/caller.js';
import { Choice, Field, Section, type Typed, WrongList } from '../components/field.js';
import { Head, Page } from '../page.js';
import { BASIS_WORDS, CONTACT_WORDS, optionsOf } from '../words/build-words.js';

interface FormProps {
  readonly caller: Caller;
  readonly typed: Typed;
  readonly title: string;
  readonly lede: string;
  readonly action: string;
  readonly submit: string;
  readonly before?: ComponentChildren;
  readonly after?: ComponentChildren;
}

function ThingForm({
  caller,
  typed,
  title,
  lede,
  action,
  submit,
  children,
}: FormProps & { readonly children: ComponentChildren }) {
  return (
    <Page title={title} caller={caller} door="Jobs" at="below">
      <Head title={title} lede={lede} />
      <form class="form" method="post" action={action}>
        <WrongList typed={typed} />
        {children}
        <div class="actions">
          <button class="button button-main" type="submit">
            {submit}
          </button>
          <a class="button" href="/machines">
            Back without saving
          </a>
        </div>
      </form>
    </Page>
  );
}

export function MachineFormPage(props: FormProps) {
  const { typed } = props;
  return (
    <ThingForm {...props}>
      {props.before}
      <Section title="The machine">
        <div class="fields">
          <Field typed={typed} name="name" label="What it is called" required maxLength={80} />
          <Field typed={typed} name="mass" label="Weight as hauled" unit="lb" hint="With bucket, attachments, fuel" />
          <Choice
            typed={typed}
            name="basis"
            label="How the weight is known"
            options={optionsOf(BASIS_WORDS)}
            none="Not said"
          />
          <Field typed={typed} name="length" label="Length" unit="in, or ft" />
          <Field typed={typed} name="width" label="Width" unit="in" />
          <Field typed={typed} name="balancePoint" label="Balance point behind its front" unit="in, or ft" />
          <Choice typed={typed} name="contact" label="Stands on" options={optionsOf(CONTACT_WORDS)} />
        </div>
      </Section>
      <Section
        title="How it stands on a deck"
        lede="What boards and ramps must bear. Leave empty what nobody has measured."
      >
        <div class="fields">
          <Field
            typed={typed}
            name="contactCount"
            label="Wheels, tracks or pads"
            inputMode="numeric"
            hint="How many stand on the deck"
          />
          <Field
            typed={typed}
            name="contactLength"
            label="Length of each on the deck"
            unit="in"
            hint="Along the trailer: where it really touches"
          />
          <Field typed={typed} name="contactWidth" label="Width of each" unit="in" />
          <Field
            typed={typed}
            name="wheelbase"
            label="Wheelbase"
            unit="in, or ft"
            hint="Front to rear wheels; of tracks, the length on the ground"
          />
          <Field typed={typed} name="clearance" label="Ground clearance" unit="in" hint="Between wheels or tracks" />
        </div>
      </Section>
      {props.after}
    </ThingForm>
  );
}

export function TowVehicleFormPage(props: FormProps) {
  const { typed } = props;
  return (
    <ThingForm {...props}>
      <Section title="The tow vehicle" lede="From its door plate, its manual and the stamp on its hitch.">
        <div class="fields">
          <Field typed={typed} name="name" label="What it is called" required maxLength={80} />
          <Field typed={typed} name="gvwr" label="GVWR" unit="lb" hint="The vehicle alone" />
          <Field typed={typed} name="mass" label="Weighed as it drives" unit="lb" hint="Without trailer" />
          <Field typed={typed} name="gcwr" label="GCWR" unit="lb" hint="Vehicle and trailer together, its maker's" />
          <Field
            typed={typed}
            name="hitchRating"
            label="Hitch rating"
            unit="lb"
            hint="The least of receiver, ball mount, ball"
          />
          <Field typed={typed} name="hitchTongue" label="Hitch, tongue weight" unit="lb" />
          <Field typed={typed} name="ballSize" label="Ball size" unit="in" hint="Such as 2-5/16" />
          <Field
            typed={typed}
            name="ballHeight"
            label="Height of the ball"
            unit="in"
            hint="Ground to the top of it, trailer's weight on it"
          />
        </div>
      </Section>
    </ThingForm>
  );
}
