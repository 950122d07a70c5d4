import { randomBytes } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { migrate } from '../../src/launch/migrate.js';
import { projectRoot } from '../../src/launch/project-root.js';
import { Database } from '../../src/store/database.js';
import { newId } from '../../src/store/new-id.js';
import { asOwner, aYard, fillYard, STORES } from '../store/sample-yard.js';
import { emptyDatabase, type FreshDatabase } from '../support/database.js';

const MIGRATIONS = join(projectRoot(), 'prisma', 'migrations');

const made: FreshDatabase[] = [];
const cleanUps: (() => Promise<unknown>)[] = [];

afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

afterAll(async () => {
  for (const database of made) await database.drop();
});

async function anEmptyDatabase(): Promise<string> {
  const database = await emptyDatabase();
  made.push(database);
  return database.url;
}

async function names(): Promise<string[]> {
  const entries = await readdir(MIGRATIONS, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

describe('the migrations', () => {
  test('run from nothing, and a second run has nothing to do', async () => {
    const url = await anEmptyDatabase();
    expect(await migrate(url)).toEqual(await names());
    expect(await migrate(url)).toEqual([]);
  });

  test('run in two databases of one server at the same moment, though both want to make the same roles', async () => {
    const urls = [await anEmptyDatabase(), await anEmptyDatabase()];
    const applied = await Promise.all(urls.map((url) => migrate(url)));
    expect(applied).toEqual([await names(), await names()]);
  });

  test('each keep a copy of the schema they lead to, from which the next is made', async () => {
    for (const name of await names()) {
      expect(await readdir(join(MIGRATIONS, name))).toEqual(['migration.sql', 'schema.prisma']);
    }
  });

  test('leave what was written under the first of them in place, and the stores can read it', async () => {
    const [first] = await names();
    const url = await anEmptyDatabase();
    expect(await migrate(url, { until: first ?? '' })).toEqual([first]);

    const ids = { yard: newId(), trailer: newId(), trip: newId(), tire: newId() };
    await asOwner(url, `insert into yard (id, name, slug) values ($1, 'Old yard', 'old')`, [ids.yard]);
    await asOwner(url, `insert into trailer (id, yard_id, yard_number) values ($1, $2, 'T-01')`, [
      ids.trailer,
      ids.yard,
    ]);
    await asOwner(
      url,
      `insert into trip (id, yard_id, trailer_id, started_on, ended_on, distance_km, scale_axle_n, roads, door)
       values ($1, $2, $3, '2025-03-08', '2025-03-09', 61.155072, '{27000.1,0.30000000000000004}', '{}', 'page')`,
      [ids.trip, ids.yard, ids.trailer],
    );
    await asOwner(
      url,
      `insert into part (id, yard_id, trailer_id, kind, position, date_code, door) values ($1, $2, $3, 'tire', '1L', '0524', 'page')`,
      [ids.tire, ids.yard, ids.trailer],
    );

    expect(await migrate(url)).toEqual((await names()).slice(1));
    const database = new Database(url);
    cleanUps.push(() => database.onModuleDestroy());
    const facts = await database.inYard(ids.yard, (tx) => STORES.trailers.findFacts(tx, ids.trailer));
    expect(facts?.trips).toMatchObject([{ id: ids.trip, distanceKm: 61.155072, roads: null }]);
    expect(facts?.trips[0]?.load.scale?.axleN).toEqual([27000.1, 0.30000000000000004]);
    expect(facts?.parts).toMatchObject([{ id: ids.tire, tire: { dateCode: '0524', size: null } }]);
  });
});

describe('a server whose database is owned by somebody who is no superuser', () => {
  async function aPlainOwner(): Promise<{ url: string; owner: string }> {
    const url = await anEmptyDatabase();
    const owner = `owner_${randomBytes(6).toString('hex')}`;
    await asOwner(url, `create role ${owner} login createrole password 'plain'`);
    await asOwner(url, `alter database ${new URL(url).pathname.slice(1)} owner to ${owner}`);
    cleanUps.push(() =>
      asOwner(url, `reassign owned by ${owner} to current_user; drop owned by ${owner}; drop role ${owner}`),
    );
    return { url: Object.assign(new URL(url), { username: owner, password: 'plain' }).href, owner };
  }

  test('holds yards apart just the same', async () => {
    // The roles of this server were made by others, so an administrator has to let the new owner take them on.
    const { url, owner } = await aPlainOwner();
    const admin = made.at(-1)?.url ?? '';
    await migrate(await anEmptyDatabase());
    await asOwner(admin, `grant axlebook_service, axlebook_auth to ${owner}`);
    expect(await migrate(url)).toEqual(await names());

    const database = new Database(url);
    cleanUps.push(() => database.onModuleDestroy());
    const ours = await aYard(url, database, 'Ours');
    const theirs = await aYard(url, database, 'Theirs');
    const theirTrailer = await fillYard(database, theirs);
    const seen = await database.inYard(ours.yardId, (tx) => STORES.trailers.find(tx, theirTrailer));
    expect(seen).toBe(null);
    expect((await database.yardIds()).length).toBe(2);
    expect((await database.yardsOfPerson(theirs.shopId)).map((yard) => yard.yardId)).toEqual([theirs.yardId]);
  });
});

test('a server where the role of the service may pass row level security by is refused, with the fix', async () => {
  const url = await anEmptyDatabase();
  await migrate(await anEmptyDatabase());
  // In a transaction of its own that is undone: other tests use the same role of the same server.
  const client = new pg.Client(url);
  await client.connect();
  try {
    const [first] = await names();
    const sql = await readFile(join(MIGRATIONS, first ?? '', 'migration.sql'), 'utf8');
    await client.query('begin');
    await client.query('alter role axlebook_service bypassrls');
    await expect(client.query(sql)).rejects.toThrow('ALTER ROLE axlebook_service NOSUPERUSER NOBYPASSRLS');
  } finally {
    await client.query('rollback');
    await client.end();
  }
});
