import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { YardStore } from '../../store/yard-store.js';

/** The time zone that makes "today" in a yard, for work that no person asked for. */
@Injectable()
export class FindTimeZone {
  constructor(
    private readonly database: Database,
    private readonly yards: YardStore,
  ) {}

  async run(yardId: string): Promise<string> {
    return this.database.inYard(yardId, async (tx) => (await this.yards.get(tx)).timeZone);
  }
}
