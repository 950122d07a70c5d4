import { Injectable } from '@nestjs/common';
import type { Machine } from '../../rules/facts/load.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { TowVehicle } from '../../rules/facts/use.js';
import { factsForLoad } from '../../rules/fit/facts-for-load.js';
import { Database } from '../../store/database.js';
import { MachineStore } from '../../store/machine-store.js';
import { TowVehicleStore } from '../../store/tow-vehicle-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { ChoicesView, type MachineChoice, type NameChoice } from '../../store/views/choices.view.js';
import { TrailerListView } from '../../store/views/trailer-list.view.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface LoadCheckScreen {
  readonly machines: readonly MachineChoice[];
  readonly towVehicles: readonly NameChoice[];
  /** Numbers of trailers in service to offer while typing; not all of a large yard's. */
  readonly trailerNumbers: readonly string[];
  /** What of the trailer's facts a load check rests on; null when the yard has none of that number, or none was typed. */
  readonly facts: TrailerFacts | null;
  readonly machine: Machine | null;
  readonly towVehicle: TowVehicle | null;
}

interface Asked {
  readonly trailerNumber: string | null;
  readonly machineId: string | null;
  readonly towVehicleId: string | null;
}

/** A phone need not carry two thousand numbers; whoever knows theirs types it. */
const NUMBERS_OFFERED = 300;

/** What a load check offers to choose from, and the facts of what was chosen. */
@Injectable()
export class ShowLoadCheck {
  constructor(
    private readonly database: Database,
    private readonly choices: ChoicesView,
    private readonly list: TrailerListView,
    private readonly trailers: TrailerStore,
    private readonly machines: MachineStore,
    private readonly towVehicles: TowVehicleStore,
  ) {}

  async run(caller: Caller, { trailerNumber, machineId, towVehicleId }: Asked): Promise<Outcome<LoadCheckScreen>> {
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailerId = trailerNumber === null ? null : await this.list.findIdByNumber(tx, trailerNumber);
      const facts = trailerId === null ? null : await this.trailers.findFacts(tx, trailerId);
      const chosen = machineId === null ? [] : await this.machines.findWithReplacements(tx, [machineId]);
      const machine = chosen.find(({ id }) => id === machineId) ?? null;
      return done({
        machines: await this.choices.machines(tx),
        towVehicles: await this.choices.towVehicles(tx),
        trailerNumbers: await this.list.numbers(tx, NUMBERS_OFFERED),
        facts:
          facts === null ? null : factsForLoad({ ...facts, machines: machine === null ? [] : [machine] }, caller.today),
        machine,
        towVehicle: towVehicleId === null ? null : await this.towVehicles.find(tx, towVehicleId),
      });
    });
  }
}
