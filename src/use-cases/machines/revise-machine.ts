import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { JobStore } from '../../store/job-store.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { type MachineInput, readMachine } from '../input/load-input.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { reloadJobs } from './reload-jobs.js';

export type ReviseMachineInput = MachineInput & { readonly machineId: string };

interface MachineRevised {
  readonly machineId: string;
  /** How many trailers were judged anew, because their trips or jobs name this machine. */
  readonly trailersAssessed: number;
  /** Booked jobs whose load was brought up to it. */
  readonly jobsReloaded: readonly string[];
}

/**
 * Writes a machine anew, whole: weighed at last, or with another bucket. Jobs to come
 * carry the new weight; trips keep the one they were hauled at.
 */
@Injectable()
export class ReviseMachine {
  constructor(
    private readonly database: Database,
    private readonly machines: MachineStore,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: ReviseMachineInput): Promise<Outcome<MachineRevised>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const machineId = given.needId('machineId', 'the machine');
    const machine = readMachine(given);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const before = await this.machines.find(tx, machineId);
      if (before === null) return notFound('machine');
      const after = { ...machine, id: machineId, replacesMachineId: before.replacesMachineId };
      await this.machines.update(tx, after);
      const jobsReloaded = await reloadJobs(tx, this.needs(), caller, before, after);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'revise-machine',
        subject: 'machine',
        subjectId: machineId,
        trailerId: null,
        detail: { before, after, jobsReloaded },
      });
      const trailerIds = await this.machines.trailerIdsNaming(tx, machineId);
      const trailersAssessed = await this.reassess.each(tx, caller, trailerIds);
      return done({ machineId, trailersAssessed, jobsReloaded });
    });
  }

  private needs() {
    const { jobs, trailers } = this;
    return { jobs, trailers };
  }
}
