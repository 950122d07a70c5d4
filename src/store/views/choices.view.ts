import { Injectable } from '@nestjs/common';
import type { WeightBasis } from '../../rules/facts/build-sheet.js';
import type { Kilograms } from '../../rules/units/mass.js';
import type { YardTx } from '../database.js';

export interface MachineChoice {
  readonly id: string;
  readonly name: string;
  readonly massKg: Kilograms | null;
  readonly basis: WeightBasis;
}

export interface NameChoice {
  readonly id: string;
  readonly name: string;
}

/** What a form offers to choose from. Retired machines and people who left are not offered. */
@Injectable()
export class ChoicesView {
  async machines(tx: YardTx): Promise<readonly MachineChoice[]> {
    const rows = await tx.machine.findMany({
      where: { retiredOn: null },
      orderBy: { name: 'asc' },
      select: { id: true, name: true, massKg: true, massBasis: true },
    });
    return rows.map((row) => ({
      id: row.id,
      name: row.name,
      massKg: row.massKg as Kilograms | null,
      basis: row.massBasis as WeightBasis,
    }));
  }

  towVehicles(tx: YardTx): Promise<readonly NameChoice[]> {
    return tx.towVehicle.findMany({ orderBy: { name: 'asc' }, select: { id: true, name: true } });
  }

  async people(tx: YardTx): Promise<readonly NameChoice[]> {
    const rows = await tx.membership.findMany({
      where: { yardId: tx.yardId, leftOn: null },
      orderBy: { name: 'asc' },
      select: { personId: true, name: true },
    });
    return rows.map((row) => ({ id: row.personId, name: row.name }));
  }

  /** Names behind ids that facts and flags mention, whether or not they are still offered. */
  async machineNames(tx: YardTx): Promise<ReadonlyMap<string, string>> {
    const rows = await tx.machine.findMany({ select: { id: true, name: true } });
    return new Map(rows.map((row) => [row.id, row.name]));
  }

  async checkKindNames(tx: YardTx): Promise<ReadonlyMap<string, string>> {
    const rows = await tx.checkKind.findMany({ select: { id: true, name: true } });
    return new Map(rows.map((row) => [row.id, row.name]));
  }
}
