import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';

/** Which yards have something for the timer to do now. Ids only: nothing of a yard is read outside it. */
@Injectable()
export class FindYardsWithWork {
  constructor(private readonly database: Database) {}

  /** Where a trailer's wake date has come. */
  toWake(now: Date): Promise<readonly string[]> {
    return this.database.yardsToWake(now);
  }

  /** Where it is past the plan hour of a day not planned yet. */
  toPlan(now: Date): Promise<readonly string[]> {
    return this.database.yardsToPlan(now);
  }

  /** Where a notice may go out. */
  toDeliver(now: Date): Promise<readonly string[]> {
    return this.database.yardsWithWaitingNotices(now);
  }
}
