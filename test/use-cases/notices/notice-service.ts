import 'reflect-metadata';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { INestApplicationContext } from '@nestjs/common';
import { Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import pg from 'pg';
import { readConfig } from '../../../src/config.js';
import { configModule } from '../../../src/config.module.js';
import { Clock, civilDateIn } from '../../../src/http/clock.js';
import { Database } from '../../../src/store/database.js';
import type { Caller, Role } from '../../../src/use-cases/caller.js';
import { type Delivered, DeliverNotice } from '../../../src/use-cases/notices/deliver-notice.js';
import type { Outcome } from '../../../src/use-cases/outcome.js';
import { UseCasesModule } from '../../../src/use-cases/use-cases.module.js';
import { type FreshDatabase, freshDatabase } from '../../support/database.js';

@Module({})
class Root {}

/** The use cases on a database of their own, without any door, sending to an SMTP server of the test. */
export interface NoticeService {
  readonly database: Database;
  readonly url: string;
  readonly get: INestApplicationContext['get'];
  /** Runs one statement as the owner of the database. */
  sql<Row extends pg.QueryResultRow>(text: string, values?: readonly unknown[]): Promise<Row[]>;
  /** Sends until nothing may go out at that moment; says what became of each. */
  deliverAll(caller: Caller): Promise<Delivered[]>;
  close(): Promise<void>;
}

export async function startNoticeService(smtpUrl: string | null): Promise<NoticeService> {
  const fresh: FreshDatabase = await freshDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'axlebook-notices-'));
  const config = readConfig({
    DATABASE_URL: fresh.url,
    AXLEBOOK_DATA: dataDir,
    AXLEBOOK_URL: 'https://trailers.ostrow.example',
    MAIL_FROM: 'Axlebook <trailers@ostrow.example>',
    SMTP_URL: smtpUrl ?? undefined,
  });
  const app = await NestFactory.createApplicationContext(
    { module: Root, imports: [configModule(config, new Clock()), UseCasesModule] },
    { logger: false, abortOnError: false },
  );
  const owner = new pg.Client(fresh.url);
  await owner.connect();
  return {
    database: app.get(Database),
    url: fresh.url,
    get: app.get.bind(app),
    sql: async <Row extends pg.QueryResultRow>(text: string, values: readonly unknown[] = []) =>
      (await owner.query<Row>(text, [...values])).rows,
    deliverAll: async (caller) => {
      const all: Delivered[] = [];
      while (true) {
        const delivered = value(await app.get(DeliverNotice).run(caller));
        if (delivered === 'nothing') return all;
        all.push(delivered);
      }
    },
    close: async () => {
      await app.close();
      await owner.end();
      await fresh.drop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

/** Somebody of a yard, or its timer, at a moment. */
export function callerAt(
  iso: string,
  yard: { readonly yardId: string; readonly timeZone: string },
  who: { readonly personId: string; readonly name: string; readonly role: Role } | null = null,
): Caller {
  const now = new Date(iso);
  return {
    yardId: yard.yardId,
    timeZone: yard.timeZone,
    personId: who?.personId ?? null,
    name: who?.name ?? 'Axlebook',
    role: who?.role ?? 'owner',
    door: who === null ? 'job' : 'page',
    now,
    today: civilDateIn(yard.timeZone, now),
  };
}

/** What a use case answered, where it must not refuse. */
export function value<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`refused: ${JSON.stringify(outcome.problem)}`);
}
