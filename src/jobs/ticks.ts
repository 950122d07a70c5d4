import { Injectable, Logger, type OnApplicationBootstrap, type OnModuleDestroy } from '@nestjs/common';
import { Cron, CronExpression, Interval } from '@nestjs/schedule';
import { Clock } from '../http/clock.js';
import { FindYardsWithWork } from '../use-cases/notices/find-yards-with-work.js';
import { WorkQueue } from './work-queue.js';
import { YardWork } from './yard-work.js';

/** A stop found at the gate is on its way within seconds. */
const DELIVERY_TICK_MS = 5_000;

/**
 * The timer. Every copy of the service ticks; each tick asks which yards have something to do and puts "go and look"
 * into the queue, which folds the same question of several copies into one. The first tick comes with the start, so
 * whatever a killed copy left undone is taken up at once.
 */
@Injectable()
export class Ticks implements OnApplicationBootstrap, OnModuleDestroy {
  private readonly log = new Logger('jobs');

  constructor(
    private readonly clock: Clock,
    private readonly yards: FindYardsWithWork,
    private readonly queue: WorkQueue,
    private readonly work: YardWork,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.queue.open({
      'wake-trailers': (yardId) => this.work.wake(yardId),
      'plan-day': (yardId) => this.work.plan(yardId),
      'deliver-notices': (yardId, stopping) => this.work.deliver(yardId, stopping),
    });
    await this.everyMinute();
    await this.everyFewSeconds();
  }

  async onModuleDestroy(): Promise<void> {
    await this.queue.close();
  }

  @Cron(CronExpression.EVERY_MINUTE)
  async everyMinute(): Promise<void> {
    await this.quietly(async () => {
      const now = this.clock.now();
      await this.queue.ask('wake-trailers', await this.yards.toWake(now));
      await this.queue.ask('plan-day', await this.yards.toPlan(now));
    });
  }

  @Interval(DELIVERY_TICK_MS)
  async everyFewSeconds(): Promise<void> {
    await this.quietly(async () => {
      await this.queue.ask('deliver-notices', await this.yards.toDeliver(this.clock.now()));
    });
  }

  /** A tick that fails (the database restarts) must not end the service: the next one asks the same. */
  private async quietly(tick: () => Promise<void>): Promise<void> {
    try {
      await tick();
    } catch (error) {
      this.log.warn(error, 'a tick found no answer; the next one asks again');
    }
  }
}
