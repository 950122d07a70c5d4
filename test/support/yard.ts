import 'reflect-metadata';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Module, type Type } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import pg from 'pg';
import { readConfig } from '../../src/config.js';
import { configModule } from '../../src/config.module.js';
import { Clock } from '../../src/http/clock.js';
import type { CivilDate } from '../../src/rules/calendar/civil-date.js';
import type { CheckKind } from '../../src/rules/facts/check.js';
import { CheckKindStore } from '../../src/store/check-kind-store.js';
import { Database, type YardTx } from '../../src/store/database.js';
import { MembershipStore } from '../../src/store/membership-store.js';
import { newId } from '../../src/store/new-id.js';
import { YardStore } from '../../src/store/yard-store.js';
import type { Caller, Door, Role } from '../../src/use-cases/caller.js';
import type { Outcome, Problem } from '../../src/use-cases/outcome.js';
import { UseCasesModule } from '../../src/use-cases/use-cases.module.js';
import { freshDatabase } from './database.js';
import { TODAY } from './trailers.js';

@Module({})
class Composition {}

/** Everything the service does, on a database of its own, with mail written to a folder. Call it in `beforeAll`. */
export async function startUseCases() {
  const database = await freshDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'axlebook-use-cases-'));
  const config = readConfig({ LOG_LEVEL: 'silent' }).with({
    databaseUrl: database.url,
    dataDir,
    baseUrl: 'http://yard.test',
  });
  const app = await NestFactory.createApplicationContext(
    { module: Composition, imports: [configModule(config, new Clock()), UseCasesModule] },
    { logger: false },
  );
  const owner = new pg.Pool({ connectionString: database.url, max: 1 });
  return {
    get: <T>(useCase: Type<T>): T => app.get(useCase, { strict: false }),
    makeYard: (more: YardWish = {}) => makeYard(app.get(Database, { strict: false }), owner, more),
    /** Runs SQL as the owner of the database, who sees every yard. */
    sql: async <Row extends object>(text: string, values: readonly unknown[] = []): Promise<Row[]> =>
      (await owner.query<Row>(text, [...values])).rows,
    close: async () => {
      await app.close();
      await owner.end();
      await database.drop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

export type UseCases = Awaited<ReturnType<typeof startUseCases>>;

interface YardWish {
  readonly name?: string;
  readonly timeZone?: string;
  /** Checks the yard starts with; none unless asked for. */
  readonly checkKinds?: readonly Omit<CheckKind, 'id'>[];
}

/** People of a test yard. `driver` is a second hand. Every name is invented. */
const PEOPLE = [
  { key: 'owner', role: 'owner', name: 'Marta Quill', cdl: 'none' },
  { key: 'shop', role: 'shop', name: 'Luis Ostrow', cdl: null },
  { key: 'hand', role: 'hand', name: 'Theo Fenn', cdl: 'none' },
  { key: 'driver', role: 'hand', name: 'Dale Harrow', cdl: 'A' },
  { key: 'viewer', role: 'viewer', name: 'Dee Castell', cdl: null },
] as const;

type PersonKey = (typeof PEOPLE)[number]['key'];

async function makeYard(database: Database, owner: pg.Pool, wish: YardWish) {
  const yardId = newId();
  const name = wish.name ?? 'Quill Grading';
  const people = PEOPLE.map((person) => ({
    ...person,
    personId: newId(),
    email: `${person.key}.${yardId.slice(-12)}@quill.example`,
  }));
  for (const { personId, name, email } of people) {
    await owner.query('insert into person (id, name, email, updated_at) values ($1, $2, $3, now())', [
      personId,
      name,
      email,
    ]);
  }
  const checkKindIds = new Map<string, string>();
  await database.inYard(yardId, async (tx) => {
    await new YardStore().insert(tx, {
      name,
      slug: `yard-${yardId}`,
      timeZone: wish.timeZone ?? 'America/Chicago',
    });
    for (const { personId, role, name, email, cdl } of people) {
      await new MembershipStore().insert(tx, { personId, role, name, email, cdl });
    }
    for (const kind of wish.checkKinds ?? []) checkKindIds.set(kind.code, await new CheckKindStore().save(tx, kind));
  });
  const idOf = (key: PersonKey): string => {
    const person = people.find((one) => one.key === key);
    if (person === undefined) throw new Error(`no ${key} in this yard`);
    return person.personId;
  };
  return {
    yardId,
    idOf,
    emailOf: (key: PersonKey): string => people.find((one) => one.key === key)?.email ?? '',
    checkKindId: (code: string): string => {
      const id = checkKindIds.get(code);
      if (id === undefined) throw new Error(`the yard has no check ${code}`);
      return id;
    },
    /** Somebody of the yard asks on a day, at noon UTC. */
    as: (key: PersonKey, today: CivilDate = TODAY, door: Door = 'page'): Caller => {
      const person = people.find((one) => one.key === key);
      return {
        yardId,
        personId: idOf(key),
        name: person?.name ?? '',
        role: (person?.role ?? 'viewer') as Role,
        door,
        today,
        now: new Date(`${today}T12:00:00Z`),
        timeZone: wish.timeZone ?? 'America/Chicago',
      };
    },
    inYard: <T>(work: (tx: YardTx) => Promise<T>): Promise<T> => database.inYard(yardId, work),
  };
}

export type Yard = Awaited<ReturnType<typeof makeYard>>;

/** What came of it; a refusal fails the test and says why. */
export async function must<T>(outcome: Promise<Outcome<T>> | Outcome<T>): Promise<T> {
  const settled = await outcome;
  if (!settled.ok) throw new Error(`refused: ${JSON.stringify(settled.problem, null, 2)}`);
  return settled.value;
}

/** Why it was refused; a success fails the test. */
export async function refusal<T>(outcome: Promise<Outcome<T>> | Outcome<T>): Promise<Problem> {
  const settled = await outcome;
  if (settled.ok) throw new Error(`not refused: ${JSON.stringify(settled.value, null, 2)}`);
  return settled.problem;
}

/** Fields that were refused, with what was said of each. */
export async function refusedFields<T>(outcome: Promise<Outcome<T>> | Outcome<T>): Promise<Record<string, string>> {
  const problem = await refusal(outcome);
  if (problem.kind !== 'invalid') throw new Error(`refused for another reason: ${JSON.stringify(problem)}`);
  return Object.fromEntries(problem.fields.map(({ field, message }) => [field, message]));
}
