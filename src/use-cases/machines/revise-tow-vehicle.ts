import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { TowVehicleStore } from '../../store/tow-vehicle-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { readTowVehicle, type TowVehicleInput } from '../input/tow-vehicle-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type ReviseTowVehicleInput = TowVehicleInput & { readonly towVehicleId: string };

/** Writes a tow vehicle anew, whole. */
@Injectable()
export class ReviseTowVehicle {
  constructor(
    private readonly database: Database,
    private readonly towVehicles: TowVehicleStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(
    caller: Caller,
    input: ReviseTowVehicleInput,
  ): Promise<Outcome<{ readonly towVehicleId: string; readonly trailersAssessed: number }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const towVehicleId = given.needId('towVehicleId', 'the tow vehicle');
    const towVehicle = readTowVehicle(given);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const before = await this.towVehicles.find(tx, towVehicleId);
      if (before === null) return notFound('tow vehicle');
      const after = { ...towVehicle, id: towVehicleId };
      await this.towVehicles.update(tx, after);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'revise-tow-vehicle',
        subject: 'tow-vehicle',
        subjectId: towVehicleId,
        trailerId: null,
        detail: { before, after },
      });
      const trailerIds = await this.towVehicles.trailerIdsTowed(tx, towVehicleId);
      return done({ towVehicleId, trailersAssessed: await this.reassess.each(tx, caller, trailerIds) });
    });
  }
}
