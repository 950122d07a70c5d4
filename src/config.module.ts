import { type DynamicModule, Module } from '@nestjs/common';
import { Config } from './config.js';
import { Clock } from './http/clock.js';

@Module({})
class ConfigModule {}

/**
 * What the service is given from outside: its settings and the time. Every room may ask for `Config`; only doors and
 * jobs ask for `Clock`. It is the one global module of the house, because it holds values and depends on nothing.
 */
export function configModule(config: Config, clock: Clock): DynamicModule {
  return {
    module: ConfigModule,
    global: true,
    providers: [
      { provide: Config, useValue: config },
      { provide: Clock, useValue: clock },
    ],
    exports: [Config, Clock],
  };
}
