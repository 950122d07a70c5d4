import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MachineStore } from '../../store/machine-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type MachineInput, readMachine } from '../input/load-input.js';
import { done, invalid, notAllowed, type Outcome } from '../outcome.js';

/** Enters a machine as really hauled. Its weight may be unknown; then no load with it can be answered for. */
@Injectable()
export class AddMachine {
  constructor(
    private readonly database: Database,
    private readonly machines: MachineStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: MachineInput): Promise<Outcome<{ readonly machineId: string }>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const machine = { ...readMachine(given), replacesMachineId: null };
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const machineId = await this.machines.insert(tx, machine, caller.personId);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'add-machine',
        subject: 'machine',
        subjectId: machineId,
        trailerId: null,
        detail: { after: machine },
      });
      return done({ machineId });
    });
  }
}
