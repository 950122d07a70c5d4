import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';

/** Which yards have something for the timer to do now. Ids only: nothing of a yard is read outside it. */
export interface YardsWithWork {
  readonly toWake: readonly string[];
  readonly toPlan: readonly string[];
  readonly toDeliver: readonly string[];
}

@Injectable()
export class FindYardsWithWork {
  constructor(private readonly database: Database) {}

  async run(now: Date): Promise<YardsWithWork> {
    return {
      toWake: await this.database.yardsToWake(now),
      toPlan: await this.database.yardsToPlan(now),
      toDeliver: await this.database.yardsWithWaitingNotices(now),
    };
  }
}
