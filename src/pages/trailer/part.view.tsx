import type { Part } from '../../rules/facts/part.js';
import { wheelPositions } from '../../rules/trailer/wheel-positions.js';
import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Choice, Field, Section, type Typed } from '../components/field.js';
import { MarkFields } from '../trailers/tire-fields.js';
import { optionsOf, PART_WORDS, positionWords, REMOVED_FOR_WORDS } from '../words/build-words.js';
import { partName } from './part-section.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface PartProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
}

export function NewPartPage({ caller, screen, typed }: PartProps) {
  const positions = screen.build === null ? ['1L', '1R', '2L', '2R', 'spare'] : wheelPositions(screen.build);
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Fit a part"
      lede="What was in its place comes off that day. A tire that comes off a wheel asks for torque rechecks after 10, 25 and 50 miles."
      typed={typed}
      action={`/trailers/${screen.trailer.id}/parts/new`}
      submit="Fit it"
    >
      <Section title="What and where">
        <div class="fields">
          <Choice typed={typed} name="kind" label="Part" options={optionsOf(PART_WORDS)} none="Choose" />
          <Choice
            typed={typed}
            name="position"
            label="Where"
            options={positions.map((value) => ({ value, label: `${positionWords(value)} (${value})` }))}
            none="No position"
            hint="Tires, hub bearings and brakes have one"
          />
          <Field typed={typed} name="fittedOn" label="Fitted on" type="date" hint="Empty if nobody knows" />
          <Field typed={typed} name="name" label="Maker's mark or name" maxLength={80} />
          <Field typed={typed} name="cost" label="Cost" unit="$" />
          <Choice
            typed={typed}
            name="replacedFor"
            label="Why the one before came off"
            options={optionsOf(REMOVED_FOR_WORDS)}
            none="Not said, or nothing was there"
            hint="What wore out tells how long such a part lasts"
          />
        </div>
      </Section>
      <Section title="Numbers, for hub bearings" lede="As stamped on the cones. Leave this empty for any other part.">
        <div class="fields">
          <Field typed={typed} name="bearings.inner" label="Inner bearing" hint="Such as 25580" maxLength={24} />
          <Field typed={typed} name="bearings.outer" label="Outer bearing" hint="Such as L44649" maxLength={24} />
        </div>
      </Section>
      <Section title="Marks, for a tire" lede="As on the sidewall. Leave this empty for any other part.">
        <MarkFields typed={typed} at="tire" />
        <div class="fields">
          <Field
            typed={typed}
            name="tire.dateCode"
            label="Date code"
            inputMode="text"
            hint="Last four digits of the DOT number, or all of it"
            maxLength={24}
          />
        </div>
      </Section>
    </TrailerFormPage>
  );
}

export function RemovePartPage({ caller, screen, typed, part }: PartProps & { readonly part: Part }) {
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Take off a part"
      lede={`${partName(part)}. If another goes on in its place, fit that one instead: this one then comes off by itself.`}
      typed={typed}
      action={`/trailers/${screen.trailer.id}/parts/${part.id}/remove`}
      submit="Take it off"
    >
      <Section title="When and why">
        <div class="fields">
          <Field typed={typed} name="removedOn" label="Came off on" type="date" required />
          <Choice
            typed={typed}
            name="removedFor"
            label="Why it came off"
            options={optionsOf(REMOVED_FOR_WORDS)}
            none="Not said"
            hint="What wore out tells how long such a part lasts"
          />
        </div>
      </Section>
    </TrailerFormPage>
  );
}
