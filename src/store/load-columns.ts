import type { CargoItem, Load } from '../rules/facts/load.js';
import { Prisma } from './generated/client.js';
import { jsonList, listOrNull } from './json-rows.js';

/** How the load of a trip or a job reads; both keep it in columns of the same names, with cargo in a table beside. */
export function loadShape(owner: 'trip' | 'job'): Prisma.Sql {
  const row = Prisma.raw(owner);
  const cargo = Prisma.raw(`${owner}_cargo`);
  const item = Prisma.sql`json_build_object(
    'name', ${cargo}.name,
    'massKg', ${cargo}.mass_kg,
    'basis', ${cargo}.basis,
    'machineId', ${cargo}.machine_id,
    'remedy', ${cargo}.remedy,
    'fromCouplerM', ${cargo}.from_coupler_m)`;
  const items = jsonList(
    item,
    Prisma.sql`from ${cargo} where ${cargo}.${Prisma.raw(`${owner}_id`)} = ${row}.id`,
    Prisma.sql`${cargo}.place`,
  );
  return Prisma.sql`json_build_object(
    'cargo', ${items},
    'balancePointM', ${row}.balance_point_m,
    'scale', case when num_nonnulls(${row}.scale_gross_kg, ${row}.scale_tongue_n) > 0 or cardinality(${row}.scale_axle_n) > 0
      then json_build_object(
        'grossKg', ${row}.scale_gross_kg,
        'tongueN', ${row}.scale_tongue_n,
        'axleN', ${listOrNull(Prisma.sql`${row}.scale_axle_n`)}) end,
    'hitchHeightM', ${row}.hitch_height_m,
    'offCentreM', ${row}.off_centre_m,
    'tieDowns', ${row}.tie_downs)`;
}

/** A scale ticket that shows nothing is kept as no ticket. */
export function loadColumns(load: Load) {
  return {
    balancePointM: load.balancePointM,
    scaleGrossKg: load.scale?.grossKg ?? null,
    scaleTongueN: load.scale?.tongueN ?? null,
    hitchHeightM: load.hitchHeightM,
    offCentreM: load.offCentreM,
  };
}

/** Beside `loadColumns`, because Prisma 7.10 cuts the numbers of a list to about 15 digits on their way in. */
export function axleLoads(load: Load): readonly number[] {
  return load.scale?.axleN ?? [];
}

export function cargoColumns(item: CargoItem, place: number) {
  return {
    place,
    name: item.name,
    massKg: item.massKg,
    basis: item.basis,
    machineId: item.machineId,
    remedy: item.remedy,
    fromCouplerM: item.fromCouplerM,
  };
}
