import type { Trip } from '../../rules/facts/use.js';
import { km, toMiles } from '../../rules/units/distance.js';
import { kg } from '../../rules/units/mass.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { Fact } from '../components/load-table.js';
import { showDate, showDates, showDistance, showMass, showNumber } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { UsePicture } from '../pictures/use-picture.js';
import { listWords, ROAD_WORDS } from '../words/build-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

const LATEST = 8;

export function UseSection({ caller, screen }: SectionProps) {
  const { use } = screen.assessment;
  const path = `/trailers/${screen.trailer.id}`;
  const trips = screen.facts.trips.toSorted((a, b) => (a.startedOn < b.startedOn ? 1 : -1)).slice(0, LATEST);
  return (
    <section class="stack-tight" aria-labelledby="use">
      <h2 class="chalked" id="use">
        Use
      </h2>
      <dl class="facts sheet">
        <Fact name="Miles known" value={use.totalKm === null ? null : showDistance(use.totalKm)} />
        <Fact
          name="Of late, a day"
          value={use.kmPerDay === null ? null : `${showNumber(toMiles(km(use.kmPerDay)), 1)} mi`}
        />
        <Fact name="Trips on file" value={showNumber(use.trips)} />
        <Fact name="Last trip" value={use.lastTripOn && showDate(use.lastTripOn)} />
      </dl>
      <UsePicture loads={screen.loads} trailerClass={screen.assessment.ratings?.trailerClass ?? null} />
      {trips.length > 0 && (
        <Table
          caption={`The latest ${trips.length === 1 ? 'trip' : `${trips.length} trips`}`}
          rows={trips}
          rowKey={(trip) => trip.id}
          columns={[
            { label: 'Days', lead: true, cell: (trip) => showDates(trip.startedOn, trip.endedOn) },
            { label: 'On the deck', cell: (trip) => cargoWords(trip, screen) },
            { label: 'Weight', right: true, cell: (trip) => showMass(cargoKg(trip)) },
            {
              label: 'Miles',
              right: true,
              cell: (trip) =>
                trip.distanceKm === null ? <span class="unknown">unknown</span> : showDistance(trip.distanceKm),
            },
            { label: 'Through', cell: (trip) => roadWords(trip) ?? <span class="unknown">nobody said</span> },
          ]}
        />
      )}
      <p class="actions">
        <a class="button" href={`${path}/history`}>
          All trips and readings
        </a>
        {may(caller, 'hand') && screen.trailer.status === 'in-service' && (
          <a class="button" href={`${path}/trips/new`}>
            Record a trip
          </a>
        )}
      </p>
    </section>
  );
}

export function cargoKg(trip: Trip) {
  return kg(trip.load.cargo.reduce((sum, item) => sum + item.massKg, 0));
}

export function cargoWords(trip: Trip, names: Pick<TrailerScreen, 'machineNames'>): string {
  if (trip.load.cargo.length === 0) return 'nothing';
  return listWords(
    trip.load.cargo.map((item) => (item.machineId && names.machineNames.get(item.machineId)) || item.name),
  );
}

export function roadWords(trip: Trip): string | null {
  if (trip.roads === null) return null;
  return trip.roads.length === 0 ? 'dry pavement' : listWords(trip.roads.map((road) => ROAD_WORDS[road].toLowerCase()));
}
