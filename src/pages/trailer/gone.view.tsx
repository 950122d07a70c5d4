import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Picks, Section, type Typed } from '../components/field.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface GoneProps {
  readonly caller: Caller;
  readonly trailer: TrailerFormScreen['trailer'];
  readonly typed: Typed;
}

export function GonePage({ caller, trailer, typed }: GoneProps) {
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title="Sold or scrapped"
      lede="Its history stays. Reminders stop, and jobs booked on it are left without a trailer."
      typed={typed}
      action={`/trailers/${trailer.id}/gone`}
      submit="Note it"
    >
      <Section title="What became of it">
        <Picks
          typed={typed}
          name="status"
          label="It was"
          kind="radio"
          options={[
            { value: 'sold', label: 'Sold' },
            { value: 'scrapped', label: 'Scrapped' },
            { value: 'in-service', label: 'Neither: it is in service' },
          ]}
        />
      </Section>
    </TrailerFormPage>
  );
}
