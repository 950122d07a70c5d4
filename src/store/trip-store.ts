import { Injectable } from '@nestjs/common';
import type { Trip } from '../rules/facts/use.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { axleLoads, cargoColumns, loadColumns, loadShape } from './load-columns.js';
import { newId } from './new-id.js';
import type { HistoryOf, New, Recorded } from './recorded.js';

const TRIP = Prisma.sql`json_build_object(
  'id', trip.id,
  'startedOn', trip.started_on,
  'endedOn', trip.ended_on,
  'distanceKm', trip.distance_km,
  'machineId', trip.machine_id,
  'load', ${loadShape('trip')},
  'roads', case when trip.roads_known then to_json(trip.roads) end,
  'jobId', trip.job_id)`;

export const TRIPS: FactTable<Trip> = {
  table: 'trip',
  shape: TRIP,
  order: Prisma.sql`trip.started_on, trip.id`,
  needed: ['started_on', 'ended_on'],
};

export interface NewTrip {
  readonly trailerId: string;
  readonly trip: New<Trip>;
  readonly recorded: Recorded;
  readonly note?: string | null | undefined;
}

@Injectable()
export class TripStore {
  /** Returns the id. */
  async insert(
    tx: YardTx,
    trailerId: string,
    trip: New<Trip>,
    recorded: Recorded & { readonly note?: string | null | undefined },
  ): Promise<string> {
    const [id] = await this.insertMany(tx, [{ trailerId, trip, recorded, note: recorded.note }]);
    if (id === undefined) throw new Error('a trip was written without an id');
    return id;
  }

  /**
   * Writes many trips in two statements; returns their ids in the same order. A few thousand at a time serve best:
   * the whole list goes to Postgres in one message.
   */
  async insertMany(tx: YardTx, trips: readonly NewTrip[]): Promise<readonly string[]> {
    const rows = trips.map(({ trailerId, trip, recorded, note }) => ({
      id: trip.id ?? newId(),
      trailer_id: trailerId,
      started_on: trip.startedOn,
      ended_on: trip.endedOn,
      distance_km: trip.distanceKm,
      machine_id: trip.machineId,
      job_id: trip.jobId,
      ...snake(loadColumns(trip.load)),
      scale_axle_n: axleLoads(trip.load),
      tie_downs: trip.load.tieDowns,
      roads_known: trip.roads !== null,
      roads: trip.roads ?? [],
      corrects_id: recorded.correctsId ?? null,
      note: note ?? null,
      recorded_at: recorded.recordedAt ?? null,
      recorded_by: recorded.recordedBy,
      door: recorded.door,
    }));
    await tx.$executeRaw`
      insert into trip (yard_id, id, trailer_id, started_on, ended_on, distance_km, machine_id, job_id, balance_point_m,
        scale_gross_kg, scale_tongue_n, scale_axle_n, hitch_height_m, off_centre_m, tie_downs, roads_known, roads,
        corrects_id, note, recorded_at, recorded_by, door)
      select ${tx.yardId}::uuid, id, trailer_id, started_on, ended_on, distance_km, machine_id, job_id, balance_point_m,
        scale_gross_kg, scale_tongue_n, scale_axle_n, hitch_height_m, off_centre_m, tie_downs, roads_known, roads,
        corrects_id, note, coalesce(recorded_at, now()), recorded_by, door
      from json_to_recordset(${JSON.stringify(rows)}::json) as row (id uuid, trailer_id uuid, started_on date,
        ended_on date, distance_km float8, machine_id uuid, job_id uuid, balance_point_m float8, scale_gross_kg float8,
        scale_tongue_n float8, scale_axle_n float8[], hitch_height_m float8, off_centre_m float8, tie_downs jsonb,
        roads_known boolean, roads text[], corrects_id uuid, note text,
        recorded_at timestamptz, recorded_by uuid, door text)`;
    const cargo = trips.flatMap(({ trip }, at) =>
      trip.load.cargo.map((item, place) => ({ trip_id: rows[at]?.id, ...snake(cargoColumns(item, place)) })),
    );
    if (cargo.length > 0) {
      await tx.$executeRaw`
        insert into trip_cargo (yard_id, trip_id, place, name, mass_kg, basis, machine_id, remedy, from_coupler_m)
        select ${tx.yardId}::uuid, trip_id, place, name, mass_kg, basis, machine_id, remedy, from_coupler_m
        from json_to_recordset(${JSON.stringify(cargo)}::json) as row (trip_id uuid, place int, name text,
          mass_kg float8, basis text, machine_id uuid, remedy text, from_coupler_m float8)`;
    }
    return rows.map((row) => row.id);
  }

  /** The trip with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, tripId: string): Promise<Trip | null> {
    return findFact(tx, TRIPS, trailerId, tripId);
  }

  /** Whether a trip was ever written under this id, standing or not. */
  async isKnown(tx: YardTx, tripId: string): Promise<boolean> {
    return (await tx.trip.count({ where: { yardId: tx.yardId, id: tripId } })) > 0;
  }

  /** Says that a trip never happened. */
  async withdraw(tx: YardTx, trailerId: string, tripId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, TRIPS, trailerId, tripId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<Trip>[]> {
    return factHistory(tx, TRIPS, trailerId);
  }
}

/** The names Postgres knows columns by. */
function snake(columns: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(columns).map(([name, value]) => [name.replace(/[A-Z]/g, (big) => `_${big.toLowerCase()}`), value]),
  );
}
