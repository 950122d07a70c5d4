import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Machine } from '../rules/facts/load.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import type { New } from './recorded.js';

const MACHINE_FIELDS = Prisma.sql`
  'id', machine.id,
  'name', machine.name,
  'massKg', machine.mass_kg,
  'basis', machine.mass_basis,
  'lengthM', machine.length_m,
  'widthM', machine.width_m,
  'balancePointM', machine.balance_point_m,
  'contact', machine.contact,
  'contactCount', machine.contact_count,
  'contactLengthM', machine.contact_length_m,
  'contactWidthM', machine.contact_width_m,
  'wheelbaseM', machine.wheelbase_m,
  'clearanceM', machine.clearance_m,
  'replacesMachineId', machine.replaces_machine_id`;

const MACHINE = Prisma.sql`json_build_object(${MACHINE_FIELDS})`;
const KEPT_MACHINE = Prisma.sql`json_build_object(${MACHINE_FIELDS}, 'retiredOn', machine.retired_on)`;

export interface KeptMachine extends Machine {
  readonly retiredOn: CivilDate | null;
}

@Injectable()
export class MachineStore {
  /** Every machine of the yard by name, retired ones too. */
  async list(tx: YardTx): Promise<readonly KeptMachine[]> {
    return jsonRows<KeptMachine>(tx, KEPT_MACHINE, Prisma.sql`from machine order by machine.name, machine.id`);
  }

  async find(tx: YardTx, machineId: string): Promise<KeptMachine | null> {
    const found = await jsonRows<KeptMachine>(
      tx,
      KEPT_MACHINE,
      Prisma.sql`from machine where machine.id = ${machineId}::uuid`,
    );
    return found[0] ?? null;
  }

  /** These machines, and those that replaced them, and those that replaced these. Machines that retired stay facts. */
  async findWithReplacements(tx: YardTx, machineIds: readonly string[]): Promise<readonly Machine[]> {
    return jsonRows<Machine>(
      tx,
      MACHINE,
      Prisma.sql`from (
        with recursive line as (
          select id from machine where yard_id = ${tx.yardId}::uuid and id = any(${[...machineIds]}::uuid[])
          union
          select later.id from machine later join line on later.replaces_machine_id = line.id
          where later.yard_id = ${tx.yardId}::uuid)
        select machine.* from machine join line using (id)) machine order by machine.name, machine.id`,
    );
  }

  /** Trailers whose trips or jobs name this machine, or one whose work it took over: what is judged by its weight. */
  async trailerIdsNaming(tx: YardTx, machineId: string): Promise<readonly string[]> {
    const rows = await tx.$queryRaw<{ id: string }[]>`
      with recursive line as (
        select id, replaces_machine_id from machine where yard_id = ${tx.yardId}::uuid and id = ${machineId}::uuid
        union
        select earlier.id, earlier.replaces_machine_id from machine earlier
        join line on line.replaces_machine_id = earlier.id where earlier.yard_id = ${tx.yardId}::uuid)
      select distinct trailer_id::text as id from (
        select trailer_id from trip where yard_id = ${tx.yardId}::uuid
          and (machine_id in (select id from line)
            or exists (select from trip_cargo where trip_id = trip.id and machine_id in (select id from line)))
        union all
        select trailer_id from job where yard_id = ${tx.yardId}::uuid and trailer_id is not null
          and (machine_id in (select id from line)
            or exists (select from job_cargo where job_id = job.id and machine_id in (select id from line)))) haul
      order by id`;
    return rows.map((row) => row.id);
  }

  /** Returns the id. */
  async insert(tx: YardTx, machine: New<Machine>, recordedBy: string | null): Promise<string> {
    const id = machine.id ?? newId();
    await tx.machine.createMany({ data: [{ id, yardId: tx.yardId, recordedBy, ...columns(machine) }] });
    return id;
  }

  /** Writes the machine as it now is. False when the yard has no such machine. */
  async update(tx: YardTx, machine: Machine): Promise<boolean> {
    const { count } = await tx.machine.updateMany({ where: { id: machine.id }, data: columns(machine) });
    return count === 1;
  }

  async retire(tx: YardTx, machineId: string, retiredOn: CivilDate | null): Promise<boolean> {
    const { count } = await tx.machine.updateMany({
      where: { id: machineId },
      data: { retiredOn: toColumn(retiredOn) },
    });
    return count === 1;
  }
}

function columns(machine: New<Machine>) {
  return {
    name: machine.name,
    massKg: machine.massKg,
    massBasis: machine.basis,
    lengthM: machine.lengthM,
    widthM: machine.widthM,
    balancePointM: machine.balancePointM,
    contact: machine.contact,
    contactCount: machine.contactCount,
    contactLengthM: machine.contactLengthM,
    contactWidthM: machine.contactWidthM,
    wheelbaseM: machine.wheelbaseM,
    clearanceM: machine.clearanceM,
    replacesMachineId: machine.replacesMachineId,
  };
}
