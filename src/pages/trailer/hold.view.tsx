import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Choice, Field, Section, type Typed } from '../components/field.js';
import { showDate } from '../components/show-quantity.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface HoldProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
}

export function NewHoldPage({ caller, screen, typed }: HoldProps) {
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Put on hold"
      lede="From then on it must not go out. Only a recorded repair or a named person lifts it."
      typed={typed}
      action={`/trailers/${screen.trailer.id}/holds/new`}
      submit="Put it on hold"
    >
      <Section title="Why">
        <Field
          typed={typed}
          name="reason"
          label="What is wrong"
          required
          lines={3}
          wide
          maxLength={200}
          hint="As whoever wants to take it should read it"
        />
      </Section>
    </TrailerFormPage>
  );
}

export function LiftHoldPage({ caller, screen, typed, holdId }: HoldProps & { readonly holdId: string }) {
  const hold = screen.facts.holds.find((one) => one.id === holdId);
  const kinds = new Map(screen.facts.checkKinds.map((kind) => [kind.id, kind.name]));
  const passed = screen.facts.checkRecords
    .filter((record) => record.outcome === 'pass' && hold !== undefined && record.doneOn >= hold.openedOn)
    .map((record) => ({
      value: record.id,
      label: `${kinds.get(record.checkKindId) ?? 'Check'}, passed ${showDate(record.doneOn)}`,
    }));
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title="Lift the hold"
      lede={hold && `On hold since ${showDate(hold.openedOn)} by ${hold.openedByName}: ${hold.reason}`}
      typed={typed}
      action={`/trailers/${screen.trailer.id}/holds/${holdId}/lift`}
      submit="Lift the hold"
    >
      <Section title="What makes it fit to go" lede={`It is lifted in the name of ${caller.name}.`}>
        <Choice
          typed={typed}
          name="checkRecordId"
          label="A check passed since"
          options={passed}
          none={passed.length === 0 ? 'None is on record' : 'None of these'}
          wide
        />
        <Field
          typed={typed}
          name="reason"
          label="Why it may go out again"
          lines={2}
          wide
          maxLength={200}
          hint="Needed unless a check that passed says so"
        />
      </Section>
    </TrailerFormPage>
  );
}
