import { Module } from '@nestjs/common';
import { ScheduleModule } from '@nestjs/schedule';
import { UseCasesModule } from '../use-cases/use-cases.module.js';
import { Ticks } from './ticks.js';
import { WorkQueue } from './work-queue.js';
import { YardWork } from './yard-work.js';

/** What nobody asks for: waking trailers, planning the day's letters, sending them. */
@Module({ imports: [ScheduleModule.forRoot(), UseCasesModule], providers: [Ticks, WorkQueue, YardWork] })
export class JobsModule {}
