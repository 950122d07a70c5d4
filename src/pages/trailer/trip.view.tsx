import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Caution } from '../components/caution.js';
import { Field, Picks, Section, SendId, type Typed } from '../components/field.js';
import { LoadFields } from '../components/load-fields.js';
import { optionsOf, ROAD_WORDS } from '../words/build-words.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface TripProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
  readonly typed: Typed;
  /** The trip that is mended; null for a new one. */
  readonly tripId: string | null;
}

export function TripPage({ caller, screen, typed, tripId }: TripProps) {
  const path = `/trailers/${screen.trailer.id}/trips`;
  return (
    <TrailerFormPage
      caller={caller}
      trailer={screen.trailer}
      title={tripId === null ? 'Record a trip' : 'Mend a trip'}
      lede={
        tripId === null
          ? 'One haul done. A haul made from a booked job is recorded by closing the job.'
          : 'Say what it should have been, whole. The mistaken record stays in the history.'
      }
      typed={typed}
      action={tripId === null ? `${path}/new` : `${path}/${tripId}`}
      submit={tripId === null ? 'Record the trip' : 'Save what it should have been'}
    >
      {tripId === null && <SendId typed={typed} />}
      <Section title="When and how far">
        <div class="fields">
          <Field typed={typed} name="startedOn" label="Started" type="date" required />
          <Field typed={typed} name="endedOn" label="Ended" type="date" hint="Empty: the same day" />
          <Field typed={typed} name="distance" label="Miles" unit="mi" hint="There and back; empty if unknown" />
        </div>
        <RoadPicks typed={typed} />
      </Section>
      <LoadFields typed={typed} machines={screen.machines} />
      <Section title="Note">
        <Field typed={typed} name="note" label="Anything worth keeping" lines={2} wide maxLength={4000} />
      </Section>
      <Caution />
    </TrailerFormPage>
  );
}

export function RoadPicks({ typed }: { readonly typed: Typed }) {
  return (
    <Picks
      typed={typed}
      name="roads"
      label="What it went through"
      kind="checkbox"
      hint="Nothing ticked means nobody said, and that is not taken for clean."
      options={[{ value: 'dry', label: 'Dry pavement only' }, ...optionsOf(ROAD_WORDS)]}
    />
  );
}
