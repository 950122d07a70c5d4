import { Choice, Field, Picks, Section, type Typed, typedText, YesNo } from '../components/field.js';
import { AXLE_FIELDS, MOST_AXLES } from '../form/build-form.js';
import {
  BASIS_WORDS,
  BODY_WORDS,
  BRAKE_WORDS,
  DECK_WORDS,
  FENDER_WORDS,
  FRAME_WORDS,
  HITCH_WORDS,
  optionsOf,
  RAMP_WORDS,
  SUSPENSION_WORDS,
  TILT_DRIVE_WORDS,
  TONGUE_WORDS,
  WOOD_GRADE_WORDS,
  WOOD_WORDS,
} from '../words/build-words.js';

interface FieldsProps {
  readonly typed: Typed;
}

/** The build sheet in sections, in the order a person walks around the trailer: plate, axles, hitch, deck, rear. */
export function BuildFields({ typed }: FieldsProps) {
  return (
    <>
      <PlateFields typed={typed} />
      <AxleFields typed={typed} />
      <HitchFields typed={typed} />
      <DeckFields typed={typed} />
      <FrameFields typed={typed} />
      <RearFields typed={typed} />
      <JackFields typed={typed} />
    </>
  );
}

function PlateFields({ typed }: FieldsProps) {
  return (
    <Section title="Plate and weight" lede="From the plate on the frame, and a scale ticket if there is one.">
      <div class="fields">
        <Choice typed={typed} name="build.body" label="Body" options={optionsOf(BODY_WORDS)} />
        <Field typed={typed} name="build.plate.gvwr" label="GVWR" unit="lb" hint="Whole trailer, loaded" />
        <Field typed={typed} name="build.plate.coldPressure" label="Cold tire pressure" unit="psi" />
        <Field
          typed={typed}
          name="build.empty.mass"
          label="Empty weight"
          unit="lb"
          hint="As used: spare, ramps and chain box on it"
        />
        <Choice
          typed={typed}
          name="build.empty.basis"
          label="How the empty weight is known"
          options={optionsOf(BASIS_WORDS)}
          none="Not said"
          hint="Weighed on a scale, stated by the maker, or assumed"
        />
        <Field typed={typed} name="build.empty.tongue" label="Tongue weight, empty" unit="lb" />
      </div>
    </Section>
  );
}

function AxleFields({ typed }: FieldsProps) {
  return (
    <Section
      title="Axles and wheels"
      lede="Counted from the front. GAWR is on the plate; the axle maker's rating is on the axle's own tag."
    >
      <div class="fields">
        <Choice
          typed={typed}
          name="build.axleCount"
          label="How many axles"
          options={['1', '2', '3'].map((value) => ({ value, label: value }))}
        />
        <Choice typed={typed} name="build.suspension" label="Suspension" options={optionsOf(SUSPENSION_WORDS)} />
        <Field
          typed={typed}
          name="build.wheels.boltPattern"
          label="Bolt pattern"
          hint="Such as 8 on 6.5 in"
          maxLength={24}
        />
        <Field
          typed={typed}
          name="build.wheels.nutTorque"
          label="Wheel nut torque"
          unit="lb-ft"
          hint="The wheel maker's"
        />
      </div>
      <Picks
        typed={typed}
        name="build.axlesAlike"
        label="Are the axles alike?"
        kind="checkbox"
        options={[{ value: 'yes', label: 'Yes: what I enter for axle 1 holds for all of them' }]}
      />
      {Array.from({ length: MOST_AXLES }, (_, place) => place).map((place) => (
        <AxleRow typed={typed} place={place} key={place} />
      ))}
    </Section>
  );
}

function AxleRow({ typed, place }: FieldsProps & { readonly place: number }) {
  const at = `build.axles.${place}`;
  const used = AXLE_FIELDS.some((name) => typedText(typed, `${at}.${name}`) !== '');
  const wrong = typed.problems.some(({ field }) => field.startsWith(`build.axles[${place}]`));
  return (
    <details class="fold" open={place === 0 || used || wrong}>
      <summary>
        <span class="strong">Axle {place + 1}</span>
      </summary>
      <div class="fields">
        <Field typed={typed} name={`${at}.gawr`} label={`Axle ${place + 1}, GAWR`} unit="lb" />
        <Field typed={typed} name={`${at}.rating`} label={`Axle ${place + 1}, maker's rating`} unit="lb" />
        <Field
          typed={typed}
          name={`${at}.fromCoupler`}
          label={`Axle ${place + 1}, behind the coupler`}
          unit="in, or ft"
          hint="From the ball's center to the hub's"
        />
        <Field
          typed={typed}
          name={`${at}.track`}
          label={`Axle ${place + 1}, track`}
          unit="in, or ft"
          hint="Middle of the left tires to the middle of the right"
        />
        <Field
          typed={typed}
          name={`${at}.springRate`}
          label={`Axle ${place + 1}, spring rate`}
          unit="lb per in"
          hint="Both wheels together; the axle maker knows"
        />
        <Choice
          typed={typed}
          name={`${at}.brakes`}
          label={`Axle ${place + 1}, brakes`}
          options={optionsOf(BRAKE_WORDS)}
        />
        <Choice
          typed={typed}
          name={`${at}.lubricant`}
          label={`Axle ${place + 1}, hubs run in`}
          options={[
            { value: 'grease', label: 'Grease' },
            { value: 'oil', label: 'Oil' },
          ]}
        />
        <Choice
          typed={typed}
          name={`${at}.dual`}
          label={`Axle ${place + 1}, wheels a side`}
          none="One"
          options={[{ value: 'yes', label: 'Two (dual)' }]}
        />
      </div>
    </details>
  );
}

function HitchFields({ typed }: FieldsProps) {
  return (
    <Section title="Hitch" lede="The rating is stamped on the coupler.">
      <div class="fields">
        <Choice typed={typed} name="build.hitch.kind" label="Kind" options={optionsOf(HITCH_WORDS)} />
        <Field typed={typed} name="build.hitch.couplerRating" label="Coupler rating" unit="lb" />
        <Field typed={typed} name="build.hitch.couplerTongue" label="Coupler, vertical rating" unit="lb" />
        <Field typed={typed} name="build.hitch.ballSize" label="Ball size" unit="in" hint="Such as 2-5/16" />
        <Field
          typed={typed}
          name="build.hitch.chainBreak"
          label="Safety chain, breaking strength"
          unit="lb"
          hint="Of each chain"
        />
      </div>
      <div class="fields">
        <Field
          typed={typed}
          name="build.hitch.levelHeight"
          label="Coupler height when level"
          unit="in"
          hint="Ground to coupler, trailer standing level"
        />
      </div>
      <YesNo typed={typed} name="build.hitch.heightAdjustable" label="Can the coupler height be changed?" />
      <YesNo typed={typed} name="build.hitch.breakaway" label="Breakaway switch and battery?" />
    </Section>
  );
}

function DeckFields({ typed }: FieldsProps) {
  return (
    <Section title="Deck">
      <div class="fields">
        <Choice typed={typed} name="build.deck.material" label="Material" options={optionsOf(DECK_WORDS)} />
        <Field typed={typed} name="build.deck.length" label="Length" unit="in, or ft" hint="Such as 20 ft" />
        <Field typed={typed} name="build.deck.width" label="Width" unit="in" />
        <Field typed={typed} name="build.deck.height" label="Height above ground" unit="in" />
        <Field
          typed={typed}
          name="build.deck.frontFromCoupler"
          label="Front edge behind the coupler"
          unit="in, or ft"
          hint="Places a load along the deck"
        />
        <Field
          typed={typed}
          name="build.deck.tiltLength"
          label="Tilting part"
          unit="in, or ft"
          hint="Empty if it does not tilt"
        />
        <Choice
          typed={typed}
          name="build.deck.tiltDrive"
          label="Tilt works by"
          options={optionsOf(TILT_DRIVE_WORDS)}
          none="Unknown, or does not tilt"
        />
        <Field
          typed={typed}
          name="build.deck.pivotFromCoupler"
          label="Tilt turns behind the coupler at"
          unit="in, or ft"
          hint="Empty if it does not tilt"
        />
        <Field typed={typed} name="build.deck.plankThickness" label="Plank thickness" unit="in" />
        <Field typed={typed} name="build.deck.plankWidth" label="Plank width" unit="in" />
        <Field typed={typed} name="build.deck.crossmemberSpacing" label="Crossmember spacing" unit="in" />
        <Field typed={typed} name="build.deck.boardCount" label="Boards" inputMode="numeric" hint="Side by side" />
        <Choice
          typed={typed}
          name="build.deck.wood"
          label="Wood"
          options={optionsOf(WOOD_WORDS)}
          none="Unknown, or no wood"
        />
        <Choice
          typed={typed}
          name="build.deck.woodGrade"
          label="Grade"
          options={optionsOf(WOOD_GRADE_WORDS)}
          hint="Stamped on the board"
        />
      </div>
      <YesNo typed={typed} name="build.deck.treated" label="Is the wood pressure treated?" />
    </Section>
  );
}

function FrameFields({ typed }: FieldsProps) {
  return (
    <Section title="Frame and fenders">
      <div class="fields">
        <Choice typed={typed} name="build.frame.section" label="Main rail" options={optionsOf(FRAME_WORDS)} />
        <Field typed={typed} name="build.frame.depth" label="Rail depth" unit="in" />
        <Choice typed={typed} name="build.frame.tongue" label="Tongue" options={optionsOf(TONGUE_WORDS)} />
        <Field typed={typed} name="build.frame.bedDepth" label="Bed frame depth" unit="in" hint="Under a tilt deck" />
        <Choice typed={typed} name="build.fenders.kind" label="Fenders" options={optionsOf(FENDER_WORDS)} />
        <Field typed={typed} name="build.fenders.clearWidth" label="Clear width between fenders" unit="in" />
      </div>
    </Section>
  );
}

function RearFields({ typed }: FieldsProps) {
  return (
    <Section title="Rear">
      <div class="fields">
        <Choice typed={typed} name="build.rear.ramps" label="Ramps" options={optionsOf(RAMP_WORDS)} />
        <Field typed={typed} name="build.rear.rampLength" label="Ramp length" unit="in, or ft" />
        <Field typed={typed} name="build.rear.rampRating" label="Ramps together carry" unit="lb" />
        <Field typed={typed} name="build.rear.dovetail" label="Dovetail length" unit="in, or ft" />
      </div>
      <YesNo typed={typed} name="build.rear.stabilizers" label="Rear stabilizer jacks?" />
    </Section>
  );
}

function JackFields({ typed }: FieldsProps) {
  return (
    <Section title="Jacks">
      <div class="fields">
        <Field typed={typed} name="build.jacks.count" label="How many" inputMode="numeric" />
        <Field typed={typed} name="build.jacks.lift" label="Each can lift" unit="lb" />
        <Field typed={typed} name="build.jacks.support" label="Each can hold, standing still" unit="lb" />
        <Field typed={typed} name="build.jacks.fromCoupler" label="Jack behind the coupler" unit="in, or ft" />
      </div>
    </Section>
  );
}
