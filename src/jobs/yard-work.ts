import { Injectable } from '@nestjs/common';
import { Clock } from '../http/clock.js';
import type { Caller } from '../use-cases/caller.js';
import { DeliverNotice } from '../use-cases/notices/deliver-notice.js';
import { FindTimeZone } from '../use-cases/notices/find-time-zone.js';
import { PlanYardDay } from '../use-cases/notices/plan-yard-day.js';
import { WakeTrailers } from '../use-cases/notices/wake-trailers.js';
import type { Outcome } from '../use-cases/outcome.js';

/** One item of work ends after so long even if there is more, ms; the next tick asks again. Fairness among yards. */
const LONGEST_SWEEP_MS = 60_000;

/** What each kind of work does in one yard: speaks for the yard, and calls one use case. */
@Injectable()
export class YardWork {
  constructor(
    private readonly clock: Clock,
    private readonly timeZones: FindTimeZone,
    private readonly wakeTrailers: WakeTrailers,
    private readonly planDay: PlanYardDay,
    private readonly deliverNotice: DeliverNotice,
  ) {}

  async wake(yardId: string): Promise<void> {
    answered(await this.wakeTrailers.run(await this.callerFor(yardId)));
  }

  async plan(yardId: string): Promise<void> {
    const caller = await this.callerFor(yardId);
    // Letters tell what the day's assessments say, so sleepers are woken first.
    answered(await this.wakeTrailers.run(caller));
    answered(await this.planDay.run(caller));
  }

  /** Sends what may go out, one notice at a time, each in its own transaction. */
  async deliver(yardId: string, stopping: AbortSignal): Promise<void> {
    const until = Date.now() + LONGEST_SWEEP_MS;
    while (!stopping.aborted && Date.now() < until) {
      if (answered(await this.deliverNotice.run(await this.callerFor(yardId))) === 'nothing') return;
    }
  }

  private async callerFor(yardId: string): Promise<Caller> {
    const timeZone = await this.timeZones.run(yardId);
    return {
      yardId,
      personId: null,
      name: 'Axlebook',
      role: 'owner',
      door: 'job',
      today: this.clock.today(timeZone),
      now: this.clock.now(),
      timeZone,
    };
  }
}

/** Nothing here can be refused by what somebody typed; a refusal is a mistake of ours. */
function answered<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`work on a timer was refused: ${JSON.stringify(outcome.problem)}`);
}
