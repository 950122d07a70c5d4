import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Field, Section, type Typed } from '../components/field.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface WithdrawTripProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
  readonly tripId: string;
}

export function WithdrawTripPage({ caller, screen, typed, tripId }: WithdrawTripProps) {
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Take a trip back"
      lede="For a trip that never happened, or was another trailer's. It stays in the history, struck out."
      typed={typed}
      action={`/trailers/${screen.trailer.id}/trips/${tripId}/withdraw`}
      submit="Take it back"
    >
      <Section title="Why">
        <Field typed={typed} name="reason" label="What was wrong with it" required wide maxLength={200} />
      </Section>
    </TrailerFormPage>
  );
}
