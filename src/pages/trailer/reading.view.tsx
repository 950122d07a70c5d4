import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Field, Picks, Section, type Typed } from '../components/field.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface ReadingProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
  /** The reading that is mended; null for a new one. */
  readonly readingId: string | null;
}

export function ReadingPage({ caller, screen, typed, readingId }: ReadingProps) {
  const path = `/trailers/${screen.trailer.id}/readings`;
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title={readingId === null ? 'Meter reading' : 'Mend a meter reading'}
      lede="What the hub meter shows, as it shows it."
      typed={typed}
      action={readingId === null ? `${path}/new` : `${path}/${readingId}`}
      submit="Save the reading"
    >
      <Section title="The reading">
        <div class="fields">
          <Field typed={typed} name="takenOn" label="Read on" type="date" required />
          <Field typed={typed} name="shown" label="The meter shows" unit="mi" required />
        </div>
        <Picks
          typed={typed}
          name="kind"
          label="Lower than the reading before?"
          kind="radio"
          options={[
            { value: '', label: 'No, an ordinary reading' },
            { value: 'rolled-over', label: 'Yes: it passed its last digit' },
            { value: 'replaced', label: 'Yes: it is a new meter' },
          ]}
        />
        <div class="fields">
          <Field
            typed={typed}
            name="meterSpan"
            label="It starts again from zero at"
            unit="mi"
            hint="Only if it passed its last digit, such as 100,000"
          />
        </div>
        {readingId !== null && (
          <Picks
            typed={typed}
            name="neverTaken"
            label="Was it never taken?"
            kind="checkbox"
            options={[{ value: 'yes', label: 'Yes, take it back' }]}
          />
        )}
      </Section>
    </TrailerFormPage>
  );
}
