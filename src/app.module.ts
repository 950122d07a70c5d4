import { type DynamicModule, Module } from '@nestjs/common';
import { LoggerModule } from 'nestjs-pino';
import type { DestinationStream } from 'pino';
import { ApiModule } from './api/api.module.js';
import type { Config } from './config.js';
import { configModule } from './config.module.js';
import type { Clock } from './http/clock.js';
import { HttpModule } from './http/http.module.js';
import { logSettings } from './http/log-settings.js';
import { JobsModule } from './jobs/jobs.module.js';
import { PagesModule } from './pages/pages.module.js';

@Module({})
class AppModule {}

interface Surroundings {
  readonly clock: Clock;
  readonly jobs: boolean;
  readonly logTo?: DestinationStream;
}

/** The whole composition. One module a room; the imports inside each repeat the picture in DEVELOPERS.md. */
export function appModule(config: Config, { clock, jobs, logTo }: Surroundings): DynamicModule {
  return {
    module: AppModule,
    imports: [
      LoggerModule.forRoot(logSettings(config, logTo)),
      configModule(config, clock),
      HttpModule,
      PagesModule,
      ApiModule,
      ...(jobs ? [JobsModule] : []),
    ],
  };
}
