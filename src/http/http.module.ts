import { Module } from '@nestjs/common';
import { HealthController } from './health.controller.js';

/** What pages and the JSON API share: who asks, how problems become answers, and what every answer carries. */
@Module({ controllers: [HealthController] })
export class HttpModule {}
