import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { MembershipStore } from '../../store/membership-store.js';
import { YardStore } from '../../store/yard-store.js';
import type { Standing } from './standing.js';

/** Finds where a person who has signed in works. Asked at every request, so that whoever leaves is out at once. */
@Injectable()
export class FindCaller {
  constructor(
    private readonly database: Database,
    private readonly members: MembershipStore,
    private readonly yards: YardStore,
  ) {}

  /** The yard asked for, if the person belongs to it; otherwise the first they belong to; null when there is none. */
  async run(personId: string, yardId: string | null): Promise<Standing | null> {
    const asked = yardId === null ? null : await this.#standing(personId, yardId);
    if (asked !== null) return asked;
    const yards = await this.database.yardsOfPerson(personId);
    const first = yards.find(({ leftOn }) => leftOn === null);
    return first === undefined ? null : this.#standing(personId, first.yardId);
  }

  #standing(personId: string, yardId: string): Promise<Standing | null> {
    return this.database.inYard(yardId, async (tx) => {
      const member = await this.members.find(tx, personId);
      if (member === null || member.leftOn !== null) return null;
      const { timeZone } = await this.yards.get(tx);
      return { yardId, personId, name: member.name, role: member.role, timeZone };
    });
  }
}
