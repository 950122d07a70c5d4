import { Injectable } from '@nestjs/common';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { type Caller, may, signed } from '../caller.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface ChangeLicenceInput {
  readonly personId: string;
  /** Class of commercial licence; null is unknown. */
  readonly cdl: 'A' | 'B' | 'none' | null;
}

/** Records which commercial licence somebody holds, which the fit of a heavy job asks for. */
@Injectable()
export class ChangeLicence {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly audit: AuditStore,
  ) {}

  async run(caller: Caller, input: ChangeLicenceInput): Promise<Outcome<null>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const given = Given.from(input);
    const personId = given.needId('personId', 'the person');
    const cdl = given.choice('cdl', 'the commercial license', ['A', 'B', 'none'] as const);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      const member = await this.members.find(tx, personId);
      if (member === null || member.leftOn !== null) return notFound('person');
      await this.members.save(tx, personId, { cdl });
      await this.audit.append(tx, {
        ...signed(caller),
        ...{ action: 'change-licence', subject: 'person', subjectId: personId, trailerId: null },
        detail: { from: member.cdl, to: cdl },
      });
      return done(null);
    });
  }
}
