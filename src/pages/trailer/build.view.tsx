import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Field, Picks, Section, type Typed } from '../components/field.js';
import { showDate } from '../components/show-quantity.js';
import { BuildFields } from '../trailers/build-fields.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface BuildProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
}

export function BuildPage({ caller, screen, typed }: BuildProps) {
  const { build } = screen;
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Build sheet"
      lede="Whole: what is left empty becomes unknown."
      typed={typed}
      action={`/trailers/${screen.trailer.id}/build`}
      submit="Save the build sheet"
    >
      <Section title="What this is">
        {build !== null && (
          <Picks
            typed={typed}
            name="what"
            label="Why are you changing it?"
            kind="radio"
            options={[
              {
                value: 'mend',
                label: `A mistake: the version of ${showDate(build.effectiveFrom)} should have said this`,
              },
              { value: 'change', label: 'The trailer was changed: a new version from a day on' },
            ]}
          />
        )}
        <div class="fields">
          <Field
            typed={typed}
            name="effectiveFrom"
            label="Built so since"
            type="date"
            hint="For a change. Trips before this day are judged by the build they had"
          />
        </div>
      </Section>
      <BuildFields typed={typed} />
    </TrailerFormPage>
  );
}
