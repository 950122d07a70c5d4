import type { CargoItem, ScaleTicket } from '../rules/facts/load.js';
import type { Trip } from '../rules/facts/use.js';
import { standingRows } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { TRIPS } from './trip-store.js';

/**
 * The standing trips of a trailer, column by column instead of row by row. Trips are by far the most of what is known
 * about a trailer, and a list for each column costs Postgres about a quarter of an object for each row.
 */
export const TRIP_COLUMNS = Prisma.sql`(select json_build_object(
    'id', json_agg(trip.id),
    'startedOn', json_agg(trip.started_on),
    'endedOn', json_agg(trip.ended_on),
    'distanceKm', json_agg(trip.distance_km),
    'machineId', json_agg(trip.machine_id),
    'balancePointM', json_agg(trip.balance_point_m),
    'scaleGrossKg', json_agg(trip.scale_gross_kg),
    'scaleTongueN', json_agg(trip.scale_tongue_n),
    'scaleAxleN', json_agg(trip.scale_axle_n),
    'hitchHeightM', json_agg(trip.hitch_height_m),
    'offCentreM', json_agg(trip.off_centre_m),
    'tieDowns', json_agg(trip.tie_downs),
    'roads', json_agg(case when trip.roads_known then to_json(trip.roads) end),
    'jobId', json_agg(trip.job_id))
  from (select trip.* ${standingRows(TRIPS)} order by ${TRIPS.order}) trip)`;

/** What was on the deck on all trips of a trailer, in the same way; of trips that do not stand too. */
export const CARGO_COLUMNS = Prisma.sql`(select json_build_object(
    'tripId', json_agg(item.trip_id),
    'name', json_agg(item.name),
    'massKg', json_agg(item.mass_kg),
    'basis', json_agg(item.basis),
    'machineId', json_agg(item.machine_id),
    'remedy', json_agg(item.remedy),
    'fromCouplerM', json_agg(item.from_coupler_m))
  from (
    select trip_cargo.* from trip join trip_cargo on trip_cargo.trip_id = trip.id
    where trip.yard_id = trailer.yard_id and trip.trailer_id = trailer.id
    order by trip_cargo.trip_id, trip_cargo.place) item)`;

/** Lists of one length, an entry a row; null where there is no row at all. */
type Columns<Row> = { readonly [Name in keyof Row]: readonly Row[Name][] | null };

export type TripColumns = Columns<
  Omit<Trip, 'load'> & {
    readonly balancePointM: Trip['load']['balancePointM'];
    readonly scaleGrossKg: ScaleTicket['grossKg'];
    readonly scaleTongueN: ScaleTicket['tongueN'];
    readonly scaleAxleN: NonNullable<ScaleTicket['axleN']>;
    readonly hitchHeightM: Trip['load']['hitchHeightM'];
    readonly offCentreM: Trip['load']['offCentreM'];
    readonly tieDowns: Trip['load']['tieDowns'];
  }
>;

export type CargoColumns = Columns<CargoItem & { readonly tripId: string }>;

export function tripsFrom(trips: TripColumns, cargo: CargoColumns): Trip[] {
  const aboard = cargoByTrip(cargo);
  return (trips.id ?? []).map((id, at) => ({
    id,
    startedOn: entry(trips.startedOn, at),
    endedOn: entry(trips.endedOn, at),
    distanceKm: entry(trips.distanceKm, at),
    machineId: entry(trips.machineId, at),
    load: {
      cargo: aboard.get(id) ?? [],
      balancePointM: entry(trips.balancePointM, at),
      scale: ticket(entry(trips.scaleGrossKg, at), entry(trips.scaleTongueN, at), entry(trips.scaleAxleN, at)),
      hitchHeightM: entry(trips.hitchHeightM, at),
      offCentreM: entry(trips.offCentreM, at),
      tieDowns: entry(trips.tieDowns, at),
    },
    roads: entry(trips.roads, at),
    jobId: entry(trips.jobId, at),
  }));
}

function cargoByTrip(cargo: CargoColumns): ReadonlyMap<string, readonly CargoItem[]> {
  const aboard = new Map<string, CargoItem[]>();
  (cargo.tripId ?? []).forEach((tripId, at) => {
    const item: CargoItem = {
      name: entry(cargo.name, at),
      massKg: entry(cargo.massKg, at),
      basis: entry(cargo.basis, at),
      machineId: entry(cargo.machineId, at),
      remedy: entry(cargo.remedy, at),
      fromCouplerM: entry(cargo.fromCouplerM, at),
    };
    const items = aboard.get(tripId);
    if (items === undefined) aboard.set(tripId, [item]);
    else items.push(item);
  });
  return aboard;
}

/** A ticket that shows nothing is no ticket. */
function ticket(
  grossKg: ScaleTicket['grossKg'],
  tongueN: ScaleTicket['tongueN'],
  axles: NonNullable<ScaleTicket['axleN']>,
): ScaleTicket | null {
  const axleN = axles.length === 0 ? null : axles;
  return grossKg === null && tongueN === null && axleN === null ? null : { grossKg, tongueN, axleN };
}

/** Every column has an entry for every row, so one that is missing means that the query above is wrong. */
function entry<T>(column: readonly T[] | null, at: number): T {
  const value = column?.[at];
  if (value === undefined) throw new RangeError(`a column of trips ends before row ${at}`);
  return value;
}
