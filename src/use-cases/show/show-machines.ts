import { Injectable } from '@nestjs/common';
import type { TowVehicle } from '../../rules/facts/use.js';
import { Database } from '../../store/database.js';
import { type KeptMachine, MachineStore } from '../../store/machine-store.js';
import { TowVehicleStore } from '../../store/tow-vehicle-store.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface MachinesScreen {
  readonly machines: readonly KeptMachine[];
  readonly towVehicles: readonly TowVehicle[];
}

/** What gets carried, and what pulls. */
@Injectable()
export class ShowMachines {
  constructor(
    private readonly database: Database,
    private readonly machines: MachineStore,
    private readonly towVehicles: TowVehicleStore,
  ) {}

  async run(caller: Caller): Promise<Outcome<MachinesScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({ machines: await this.machines.list(tx), towVehicles: await this.towVehicles.list(tx) }),
    );
  }
}
