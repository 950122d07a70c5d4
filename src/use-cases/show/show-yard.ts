import { Injectable } from '@nestjs/common';
import type { CheckKind } from '../../rules/facts/check.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database } from '../../store/database.js';
import { type Membership, MembershipStore } from '../../store/membership-store.js';
import { type Yard, YardStore } from '../../store/yard-store.js';
import type { Caller } from '../caller.js';
import { done, type Outcome } from '../outcome.js';

export interface YardScreen {
  readonly yard: Yard;
  readonly checkKinds: readonly CheckKind[];
  /** Everyone, those who left too: a check may still name one of them. */
  readonly people: readonly Membership[];
}

/** What the yard has decided for itself. */
@Injectable()
export class ShowYard {
  constructor(
    private readonly database: Database,
    private readonly yards: YardStore,
    private readonly checkKinds: CheckKindStore,
    private readonly members: MembershipStore,
  ) {}

  async run(caller: Caller): Promise<Outcome<YardScreen>> {
    return this.database.inYard(caller.yardId, async (tx) =>
      done({
        yard: await this.yards.get(tx),
        checkKinds: await this.checkKinds.list(tx),
        people: await this.members.list(tx),
      }),
    );
  }
}
