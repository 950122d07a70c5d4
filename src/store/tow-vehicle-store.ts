import { Injectable } from '@nestjs/common';
import type { TowVehicle } from '../rules/facts/use.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import type { New } from './recorded.js';

export const TOW_VEHICLE = Prisma.sql`json_build_object(
  'id', tow_vehicle.id,
  'name', tow_vehicle.name,
  'gvwrKg', tow_vehicle.gvwr_kg,
  'massKg', tow_vehicle.mass_kg,
  'gcwrKg', tow_vehicle.gcwr_kg,
  'hitchRatingKg', tow_vehicle.hitch_rating_kg,
  'hitchTongueN', tow_vehicle.hitch_tongue_n,
  'ballSizeM', tow_vehicle.ball_size_m,
  'ballHeightM', tow_vehicle.ball_height_m)`;

@Injectable()
export class TowVehicleStore {
  async list(tx: YardTx): Promise<readonly TowVehicle[]> {
    return jsonRows<TowVehicle>(
      tx,
      TOW_VEHICLE,
      Prisma.sql`from tow_vehicle order by tow_vehicle.name, tow_vehicle.id`,
    );
  }

  async find(tx: YardTx, towVehicleId: string): Promise<TowVehicle | null> {
    const found = await jsonRows<TowVehicle>(
      tx,
      TOW_VEHICLE,
      Prisma.sql`from tow_vehicle where tow_vehicle.id = ${towVehicleId}::uuid`,
    );
    return found[0] ?? null;
  }

  /** Trailers with a job that this vehicle tows. */
  async trailerIdsTowed(tx: YardTx, towVehicleId: string): Promise<readonly string[]> {
    const rows = await tx.job.findMany({
      where: { yardId: tx.yardId, towVehicleId, trailerId: { not: null } },
      select: { trailerId: true },
      distinct: ['trailerId'],
    });
    return rows.flatMap((row) => row.trailerId ?? []).sort();
  }

  /** Returns the id. */
  async insert(tx: YardTx, towVehicle: New<TowVehicle>): Promise<string> {
    const id = towVehicle.id ?? newId();
    await tx.towVehicle.createMany({ data: [{ id, yardId: tx.yardId, ...columns(towVehicle) }] });
    return id;
  }

  /** Writes the tow vehicle as it now is. False when the yard has no such one. */
  async update(tx: YardTx, towVehicle: TowVehicle): Promise<boolean> {
    const { count } = await tx.towVehicle.updateMany({ where: { id: towVehicle.id }, data: columns(towVehicle) });
    return count === 1;
  }
}

function columns(towVehicle: New<TowVehicle>) {
  return {
    name: towVehicle.name,
    gvwrKg: towVehicle.gvwrKg,
    massKg: towVehicle.massKg,
    gcwrKg: towVehicle.gcwrKg,
    hitchRatingKg: towVehicle.hitchRatingKg,
    hitchTongueN: towVehicle.hitchTongueN,
    ballSizeM: towVehicle.ballSizeM,
    ballHeightM: towVehicle.ballHeightM,
  };
}
