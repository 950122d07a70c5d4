import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { ChoicesView, type MachineChoice, type NameChoice } from '../../store/views/choices.view.js';
import { TrailerListView } from '../../store/views/trailer-list.view.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface ChoicesScreen {
  readonly machines: readonly MachineChoice[];
  readonly towVehicles: readonly NameChoice[];
  readonly people: readonly NameChoice[];
  /** Numbers of trailers in service to offer while typing; not all of a large yard's. */
  readonly trailerNumbers: readonly string[];
  /** The trailer whose number was typed; null when the yard has none of that number, or none was typed. */
  readonly trailerId: string | null;
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

/** A phone need not carry two thousand numbers; whoever knows theirs types it. */
const NUMBERS_OFFERED = 300;

/** What a form about a haul offers, and which trailer a typed number means. */
@Injectable()
export class ShowChoices {
  constructor(
    private readonly database: Database,
    private readonly choices: ChoicesView,
    private readonly trailers: TrailerListView,
  ) {}

  async run(caller: Caller, input: { readonly trailerNumber: string | null }): Promise<Outcome<ChoicesScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        machines: await this.choices.machines(tx),
        towVehicles: await this.choices.towVehicles(tx),
        people: await this.choices.people(tx),
        trailerNumbers: await this.trailers.numbers(tx, NUMBERS_OFFERED),
        trailerId: input.trailerNumber === null ? null : await this.trailers.findIdByNumber(tx, input.trailerNumber),
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      }),
    );
  }
}
