import { Injectable } from '@nestjs/common';
import { type ExplainedFit, explainedFit } from '../../rules/explain/explained-fit.js';
import { Database } from '../../store/database.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { type Caller, may } from '../caller.js';
import { Given } from '../input/given.js';
import { type JobInput, readJob } from '../input/job-input.js';
import { merged } from '../input/merged.js';
import { FindJobNames } from '../jobs/find-job-names.js';
import { machinesOf, withMachines } from '../machines/with-machines.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

/** A haul somebody thinks of: nothing of it is kept. */
export type CheckFitInput = Omit<Partial<JobInput>, 'trailerId' | 'name' | 'customer' | 'note'> &
  Pick<JobInput, 'startsOn' | 'endsOn'> & { readonly trailerId: string };

/** Answers whether this trailer may take this load on these days. */
@Injectable()
export class CheckFit {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly machines: MachineStore,
    private readonly names: FindJobNames,
  ) {}

  async run(caller: Caller, input: CheckFitInput): Promise<Outcome<ExplainedFit>> {
    if (!may(caller, 'viewer')) return notAllowed('viewer');
    const given = Given.from(merged(input, { name: 'a haul asked about' }));
    const plan = readJob(given, caller.today);
    if (plan.trailerId === null && !given.has('trailerId')) given.refuse('trailerId', 'Choose the trailer.');
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const facts = plan.trailerId === null ? null : await this.trailers.findFacts(tx, plan.trailerId);
      if (facts === null) return notFound('trailer');
      const haul = await this.names.complete(tx, given, plan);
      if (given.problems.length > 0) return invalid(given.problems);
      const known = withMachines(facts, await machinesOf(tx, this.machines, haul.load));
      return done(explainedFit(known, haul, caller.today));
    });
  }
}
