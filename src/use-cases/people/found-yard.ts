import { Injectable } from '@nestjs/common';
import { DEFAULT_CHECK_KINDS } from '../../rules/inspection/default-check-kinds.js';
import { AuditStore } from '../../store/audit-store.js';
import { CheckKindStore } from '../../store/check-kind-store.js';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { newId } from '../../store/new-id.js';
import { YardStore } from '../../store/yard-store.js';
import type { Door, Role } from '../caller.js';
import { done, invalid, type Outcome } from '../outcome.js';
import { type NewYardInput, readNewYard } from './read-new-yard.js';

export interface FoundYardInput extends NewYardInput {
  /** Who belongs to it from the start. The first is an owner and stands as its founder. */
  readonly people: readonly FirstMember[];
  /** A yard to look at and try things in; it does not count as somebody's own. */
  readonly demo: boolean;
}

interface FirstMember {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly cdl: 'A' | 'B' | 'none' | null;
}

/** Sets up a yard with its first people and the checks most yards start from. There is no caller yet: this makes one. */
@Injectable()
export class FoundYard {
  constructor(
    private readonly database: Database,
    private readonly yards: YardStore,
    private readonly members: MembershipStore,
    private readonly checkKinds: CheckKindStore,
    private readonly audit: AuditStore,
  ) {}

  async run(door: Door, input: FoundYardInput): Promise<Outcome<{ readonly yardId: string }>> {
    const [founder] = input.people;
    if (founder?.role !== 'owner') throw new RangeError('The first person of a yard must be an owner');
    const { yard, problems } = readNewYard(input);
    if (problems.length > 0) return invalid(problems);

    const yardId = newId();
    return this.database.inYard(yardId, async (tx) => {
      await this.yards.insert(tx, { ...yard, slug: slugOf(yard.name, yardId), demo: input.demo });
      for (const { id, ...member } of input.people) await this.members.insert(tx, { ...member, personId: id });
      for (const kind of DEFAULT_CHECK_KINDS) await this.checkKinds.save(tx, kind);
      await this.audit.append(tx, {
        ...{ personId: founder.id, who: founder.name, door, action: 'found-yard', subject: 'yard' },
        ...{ subjectId: yardId, trailerId: null, detail: { name: yard.name, timeZone: yard.timeZone } },
      });
      return done({ yardId });
    });
  }
}

/** Unique over all yards without asking any of them: the end of the id sets two yards of one name apart. */
function slugOf(name: string, id: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `${words.slice(0, 40) || 'yard'}-${id.slice(-6)}`;
}
