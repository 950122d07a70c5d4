import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { YardStore } from '../../store/yard-store.js';

export interface ListedYard {
  readonly yardId: string;
  readonly name: string;
  readonly slug: string;
  readonly timeZone: string;
}

/** Every yard of the database, for whoever runs the service and asks at its command line. */
@Injectable()
export class ListYards {
  constructor(
    private readonly database: Database,
    private readonly yards: YardStore,
  ) {}

  async run(): Promise<readonly ListedYard[]> {
    const listed: ListedYard[] = [];
    for (const yardId of await this.database.yardIds()) {
      const { name, slug, timeZone } = await this.database.inYard(yardId, (tx) => this.yards.get(tx));
      listed.push({ yardId, name, slug, timeZone });
    }
    return listed;
  }
}
