import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { TowVehicleStore } from '../../store/tow-vehicle-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { readTowVehicle, type TowVehicleInput } from '../input/tow-vehicle-input.js';
import { done, invalid, notAllowed, type Outcome } from '../outcome.js';

/** Enters a vehicle that tows. */
@Injectable()
export class AddTowVehicle {
  constructor(
    private readonly database: Database,
    private readonly towVehicles: TowVehicleStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: TowVehicleInput): Promise<Outcome<{ readonly towVehicleId: string }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const after = readTowVehicle(given);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const towVehicleId = await this.towVehicles.insert(tx, after);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'add-tow-vehicle',
        subject: 'tow-vehicle',
        subjectId: towVehicleId,
        trailerId: null,
        detail: { after },
      });
      return done({ towVehicleId });
    });
  }
}
