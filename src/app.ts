import 'reflect-metadata';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { Logger } from 'nestjs-pino';
import type { DestinationStream } from 'pino';
import { ApiDocument } from './api/openapi/api-document.js';
import { appModule } from './app.module.js';
import type { Config } from './config.js';
import { honourBodyLimits } from './http/body-limit.js';
import { Clock } from './http/clock.js';
import { FailureFilter } from './http/failure.filter.js';
import { packPages } from './http/packed-pages.js';
import { logRequests } from './http/request-log.js';
import { securityHeaders } from './http/security-headers.js';
import { failurePage } from './pages/failure-page.js';

/** Forms and JSON up to 1 MiB; uploads have their own limit where they are taken. */
const BODY_LIMIT_BYTES = 1_048_576;

/** A check sheet with its photos: those the use case takes, and room to tell that there was one too many. */
const UPLOAD_LIMITS = { fileSize: 9 * 1_048_576, files: 13, fields: 500, fieldSize: 20_000, parts: 513 };

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
    // Registered below: the adapter's own way waits for itself and never starts.
    multipart: false,
  });
  const app = await NestFactory.create<NestFastifyApplication>(
    appModule(config, { clock: new Clock(), jobs: false, ...overrides }),
    adapter,
    { bufferLogs: true, abortOnError: false },
  );
  const logger = app.get(Logger);
  app.useLogger(logger);
  logRequests(adapter.getInstance(), logger);
  honourBodyLimits(adapter.getInstance());
  packPages(adapter.getInstance());
  app.get(ApiDocument).describes(app);
  await app.register(helmet, securityHeaders(config.baseUrl));
  await adapter.getInstance().register(multipart, { limits: UPLOAD_LIMITS });
  app.useGlobalFilters(new FailureFilter(failurePage));
  return app;
}
