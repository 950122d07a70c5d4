import { Injectable, Logger } from '@nestjs/common';
import { PgBoss } from 'pg-boss';
import { Config } from '../config.js';

/** What the timer may find to do in a yard. Each is the name of a queue. */
const WORK = ['wake-trailers', 'plan-day', 'deliver-notices'] as const;
export type Work = (typeof WORK)[number];

/** Looks, does what there is, and comes back. Being asked once too often must cost no more than a look. */
export type Handler = (yardId: string, stopping: AbortSignal) => Promise<void>;

/** How often a copy looks for an item of work, seconds. */
const LOOK_EVERY_S = 1;
/** Items of one kind that one copy works on at a time. Each may hold one database connection. */
const AT_ONCE = 2;
/** A handler is stopped after this, seconds; it ends by itself well before. */
const LONGEST_WORK_S = 180;
/** Finished items are of no more use; they are kept an hour for whoever looks into a disturbance. */
const KEPT_S = 3_600;
/** What is under way when the service stops may finish for so long, ms; main's own patience is a little longer. */
const STOP_WITHIN_MS = 10_000;
/** Connections of the queue's own pool, beside those the stores use. */
const CONNECTIONS = 3;

/**
 * Spreads the timer's work over all copies of the service, by a queue kept in Postgres.
 *
 * The queue is no record of anything. What is to be done stands in the rows themselves (a notice that waits, a day not
 * planned, a wake date that has come), and what is done is written there in the transaction that did it. An item of
 * work only says "go and look at that yard". So nothing is lost when an item is lost, nothing happens twice when one
 * comes twice, and when a copy is killed the next tick of any copy (seconds later, or its own start) asks again.
 * That is why the policy is `short`: one item a yard may wait, however many copies ask, and one that a killed copy
 * left "active" keeps nobody from asking anew. Retries are left to the next tick for the same reason.
 */
@Injectable()
export class WorkQueue {
  private readonly boss: PgBoss;
  private readonly log = new Logger('jobs');
  private readonly stopping = new AbortController();
  private isOpen = false;

  constructor(config: Config) {
    if (config.databaseUrl === null) throw new Error('the service was built before its database was known');
    this.boss = new PgBoss({
      connectionString: config.databaseUrl,
      application_name: 'axlebook jobs',
      schema: 'pgboss',
      max: CONNECTIONS,
      schedule: false,
    });
    this.boss.on('error', (error) => this.log.error(error));
  }

  async open(handlers: Readonly<Record<Work, Handler>>): Promise<void> {
    await this.boss.start();
    for (const work of WORK) {
      await this.boss.createQueue(work, {
        policy: 'short',
        retryLimit: 0,
        expireInSeconds: LONGEST_WORK_S,
        deleteAfterSeconds: KEPT_S,
      });
      const options = { pollingIntervalSeconds: LOOK_EVERY_S, localConcurrency: AT_ONCE };
      await this.boss.work<{ yardId: string }>(work, options, async (items) => {
        for (const { data } of items) await this.handle(work, handlers[work], data.yardId);
      });
    }
    this.isOpen = true;
  }

  /** Asks for work in some yards. Whoever asked before and was not answered yet has asked for all. */
  async ask(work: Work, yardIds: readonly string[]): Promise<void> {
    if (!this.isOpen || this.stopping.signal.aborted) return;
    for (const yardId of yardIds) await this.boss.send(work, { yardId }, { singletonKey: yardId });
  }

  /** Lets what is under way finish its step, takes nothing more, and ends the connections. */
  async close(): Promise<void> {
    this.stopping.abort();
    if (this.isOpen) await this.boss.stop({ graceful: true, timeout: STOP_WITHIN_MS });
  }

  private async handle(work: Work, handler: Handler, yardId: string): Promise<void> {
    try {
      await handler(yardId, this.stopping.signal);
    } catch (error) {
      // Said here, with the yard; the rows are as they were, and the next tick asks again.
      this.log.error(error, `${work} failed in yard ${yardId}`);
      throw error;
    }
  }
}
