import 'reflect-metadata';
import helmet from '@fastify/helmet';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { Logger } from 'nestjs-pino';
import type { DestinationStream } from 'pino';
import { appModule } from './app.module.js';
import type { Config } from './config.js';
import { Clock } from './http/clock.js';
import { FailureFilter } from './http/failure.filter.js';
import { logRequests } from './http/request-log.js';
import { securityHeaders } from './http/security-headers.js';
import { failurePage } from './pages/failure-page.js';

/** Forms and JSON up to 1 MiB; uploads have their own limit where they are taken. */
const BODY_LIMIT_BYTES = 1_048_576;

interface Overrides {
  /** A clock that stands where a test wants it. */
  readonly clock?: Clock;
  /** Whether the timer works: it plans and sends letters. The service says yes; a test that wants quiet says nothing. */
  readonly jobs?: boolean;
  /** Takes the log's lines in place of the terminal. */
  readonly logTo?: DestinationStream;
}

/** Builds the service around a migrated database. It does not listen yet: `main` does, or a test on port 0. */
export async function createApp(config: Config, overrides: Overrides = {}): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    // Open keep-alive connections must not hold back the end of the service.
    forceCloseConnections: true,
    trustProxy: (_address: string, hop: number) => hop < config.proxies,
    bodyLimit: BODY_LIMIT_BYTES,
    routerOptions: { maxParamLength: 300 },
  });
  const app = await NestFactory.create<NestFastifyApplication>(
    appModule(config, { clock: new Clock(), jobs: false, ...overrides }),
    adapter,
    { bufferLogs: true, abortOnError: false },
  );
  const logger = app.get(Logger);
  app.useLogger(logger);
  logRequests(adapter.getInstance(), logger);
  await app.register(helmet, securityHeaders(config.baseUrl));
  app.useGlobalFilters(new FailureFilter(failurePage));
  return app;
}
