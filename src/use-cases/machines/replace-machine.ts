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
import { conflict, done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';
import { reloadJobs } from './reload-jobs.js';

export interface ReplaceMachineInput {
  /** The machine whose work is taken over. */
  readonly machineId: string;
  /** The day it went. */
  readonly replacedOn: string;
  readonly by: MachineInput;
}

interface MachineReplaced {
  /** The new machine. */
  readonly machineId: string;
  readonly trailersAssessed: number;
  /** Booked jobs whose load was brought up to it. */
  readonly jobsReloaded: readonly string[];
}

/** Enters the machine that takes over another's work: jobs to come carry it, and trailers are judged by it. */
@Injectable()
export class ReplaceMachine {
  constructor(
    private readonly database: Database,
    private readonly machines: MachineStore,
    private readonly jobs: JobStore,
    private readonly trailers: TrailerStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: ReplaceMachineInput): Promise<Outcome<MachineReplaced>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const replacedId = given.needId('machineId', 'the machine that goes');
    const replacedOn = given.needDate('replacedOn', 'the day it was replaced', {
      notAfter: caller.today,
      notAfterIs: 'today',
    });
    const machine = { ...readMachine(given.object('by')), replacesMachineId: replacedId };
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const before = await this.machines.find(tx, replacedId);
      if (before === null) return notFound('machine');
      if (before.retiredOn !== null) return conflict(`${before.name} was replaced on ${before.retiredOn} already.`);
      const machineId = await this.machines.insert(tx, machine, caller.personId);
      await this.machines.retire(tx, replacedId, replacedOn);
      const jobsReloaded = await reloadJobs(tx, this.needs(), caller, before, { ...machine, id: machineId });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'replace-machine',
        subject: 'machine',
        subjectId: machineId,
        trailerId: null,
        detail: { before, after: machine, replacedOn, jobsReloaded },
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
