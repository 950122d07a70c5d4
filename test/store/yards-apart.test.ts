import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day } from '../../src/rules/calendar/civil-date.js';
import { Database } from '../../src/store/database.js';
import { newId } from '../../src/store/new-id.js';
import { type FreshDatabase, freshDatabase } from '../support/database.js';
import * as sample from './sample-facts.js';
import { aYard, BY_SEED, fillYard, type SampleYard, STORES } from './sample-yard.js';

/** Tables that no yard has: people and how they sign in, and the list of migrations. All others carry their yard. */
const SIGN_IN_TABLES = ['person', 'rate_limit', 'session', 'sign_in_account', 'verification'];
const NO_YARD = ['_prisma_migrations', ...SIGN_IN_TABLES];

let fresh: FreshDatabase;
let database: Database;
let ours: SampleYard;
let theirs: SampleYard;
let ourTrailer: string;
let theirTrailer: string;
let yardTables: string[];
/** A connection as the service opens them, for queries that no store would make. */
let service: pg.Client;
/** One that sees everything. */
let owner: pg.Client;

beforeAll(async () => {
  fresh = await freshDatabase();
  database = new Database(fresh.url);
  ours = await aYard(fresh.url, database, 'Ours');
  theirs = await aYard(fresh.url, database, 'Theirs');
  owner = new pg.Client(fresh.url);
  await owner.connect();
  ourTrailer = await fillYard(database, ours);
  theirTrailer = await fillYard(database, theirs);
  const tables = await asOwner<{
    name: string;
  }>(`select relname as name from pg_class where relkind in ('r', 'p', 'v', 'm', 'f') and relnamespace = 'public'::regnamespace
     order by relname`);
  yardTables = tables.map((table) => table.name).filter((name) => !NO_YARD.includes(name));
  service = new pg.Client({ connectionString: fresh.url, options: '-c role=axlebook_service' });
  await service.connect();
});

afterAll(async () => {
  await service.end();
  await owner.end();
  await database.onModuleDestroy();
  await fresh.drop();
});

async function asOwner<Row extends pg.QueryResultRow>(sql: string, values: readonly unknown[] = []): Promise<Row[]> {
  return (await owner.query<Row>(sql, [...values])).rows;
}

/** Runs as the service in one yard (or none) and undoes it all; an error comes back as a value. */
async function asService<Row extends pg.QueryResultRow>(
  yardId: string | null,
  sql: string,
  values: readonly unknown[] = [],
): Promise<Row[] | pg.DatabaseError> {
  await service.query('begin');
  try {
    if (yardId !== null) await service.query("select set_config('app.yard', $1, true)", [yardId]);
    return (await service.query<Row>(sql, [...values])).rows;
  } catch (error) {
    if (error instanceof pg.DatabaseError) return error;
    throw error;
  } finally {
    await service.query('rollback');
  }
}

function yardColumn(table: string): string {
  return table === 'yard' ? 'id' : 'yard_id';
}

test('every table but those of sign-in carries its yard', async () => {
  const carrying = await asOwner<{
    name: string;
  }>(`select c.relname as name from pg_class c join pg_attribute a on a.attrelid = c.oid
     where c.relkind = 'r' and c.relnamespace = 'public'::regnamespace and a.attname = 'yard_id' and a.attnotnull
     order by 1`);
  expect(carrying.map((table) => table.name)).toEqual(yardTables.filter((name) => name !== 'yard'));
});

test('row level security is on for every table that has a yard', async () => {
  const guarded = await asOwner<{
    name: string;
  }>(`select relname as name from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace
     and relrowsecurity order by relname`);
  expect(guarded.map((table) => table.name)).toEqual(yardTables);
});

test('the two yards of these tests have rows in every table, so that seeing none means something', async () => {
  for (const table of yardTables) {
    const rows = await asOwner(`select distinct ${yardColumn(table)} as yard from "${table}"`);
    expect([table, rows.map((row) => row.yard).sort()]).toEqual([table, [ours.yardId, theirs.yardId].sort()]);
  }
});

test('with no yard set, the service sees not one row of any table', async () => {
  for (const table of yardTables) {
    expect([table, await asService(null, `select * from "${table}"`)]).toEqual([table, []]);
  }
});

test('with a yard set that is empty or no yard at all, the service sees no row either', async () => {
  for (const table of yardTables) {
    expect([table, await asService('', `select * from "${table}"`)]).toEqual([table, []]);
    expect([table, await asService(newId(), `select * from "${table}"`)]).toEqual([table, []]);
  }
});

test('with a yard set, the service sees that yard and no other', async () => {
  for (const table of yardTables) {
    const seen = await asService(ours.yardId, `select distinct ${yardColumn(table)} as yard from "${table}"`);
    expect([table, seen]).toEqual([table, [{ yard: ours.yardId }]]);
  }
});

test("a row of another yard cannot be written, whatever the table's other rules", async () => {
  for (const table of yardTables) {
    const columns = (
      await asOwner<{ name: string }>(
        `select attname as name from pg_attribute where attrelid = $1::regclass and attnum > 0 and not attisdropped`,
        [`"${table}"`],
      )
    ).map((column) => `"${column.name}"`);
    // A copy of our own row in which only the yard is changed to theirs: refused for its yard alone, before any
    // key or check is looked at.
    const values = columns.map((name) => (name === `"${yardColumn(table)}"` ? `'${theirs.yardId}'::uuid` : name));
    const refused = await asService(
      ours.yardId,
      `insert into "${table}" (${columns.join(', ')}) select ${values.join(', ')} from "${table}"`,
    );
    expect([table, String(refused)]).toEqual([table, expect.stringContaining('row-level security policy')]);
  }
});

test('rows of another yard cannot be changed or removed', async () => {
  for (const table of yardTables) {
    const before = await asOwner(`select * from "${table}" where ${yardColumn(table)} = $1`, [theirs.yardId]);
    await asService(ours.yardId, `delete from "${table}" where ${yardColumn(table)} = $1`, [theirs.yardId]);
    const moved = await asService(
      ours.yardId,
      `update "${table}" set ${yardColumn(table)} = $1 where ${yardColumn(table)} = $1 returning 1`,
      [theirs.yardId],
    );
    expect([table, moved instanceof Error || moved.length === 0]).toEqual([table, true]);
    const after = await asOwner(`select * from "${table}" where ${yardColumn(table)} = $1`, [theirs.yardId]);
    expect([table, after]).toEqual([table, before]);
  }
});

test('our own rows cannot be handed to another yard', async () => {
  for (const table of yardTables) {
    const given = await asService(ours.yardId, `update "${table}" set ${yardColumn(table)} = $1`, [theirs.yardId]);
    expect([table, given instanceof Error]).toEqual([table, true]);
  }
});

describe("another yard's rows cannot even be named", () => {
  test.each([
    ['a trip', "trip (id, trailer_id, started_on, ended_on, door) values ($3, $1, '2025-01-01', '2025-01-01', 'api')"],
    ['a part', "part (id, trailer_id, kind, door) values ($3, $1, 'deck', 'api')"],
    ['a reading', "meter_reading (id, trailer_id, taken_on, shown_km, door) values ($3, $1, '2025-01-01', 1, 'api')"],
    ['a hold', "hold (id, trailer_id, opened_on, reason, opened_by_name) values ($3, $1, '2025-01-01', 'x', 'x')"],
    ['a build', "build_sheet (id, trailer_id, effective_from, door) values ($3, $1, '2025-01-01', 'api')"],
    ['a job', "job (id, trailer_id, name, starts_on, ends_on, door) values ($3, $1, 'x', now(), now(), 'api')"],
    ['a result', "flag_result (trailer_id, key, rule, severity, flag) values ($1, $3::uuid::text, 'x', 'stop', '{}')"],
  ])('%s about their trailer', async (_, into) => {
    const insert = `insert into ${into.replace('(', '(yard_id, ').replace('values (', 'values ($2, ')}`;
    const values = (trailerId: string) => [trailerId, ours.yardId, newId()];
    expect(await asService(ours.yardId, insert, values(ourTrailer))).toEqual([]);
    expect(await asService(ours.yardId, insert, values(theirTrailer))).toMatchObject({ code: '23503' });
  });

  test('every reference from one yard table to another carries the yard', async () => {
    const without = await asOwner(
      `select conrelid::regclass::text as from, conname as key from pg_constraint c
       where contype = 'f' and conrelid::regclass::text = any($1) and confrelid::regclass::text = any($1)
       and not exists (select from pg_attribute a where a.attrelid = c.conrelid and a.attnum = any(c.conkey)
         and a.attname = 'yard_id')`,
      [yardTables],
    );
    expect(without).toEqual([]);
  });

  test('every column that names a row of a yard is held to it by a key', async () => {
    const columns = await asOwner<{ column: string }>(
      `select c.relname || '.' || a.attname as column from pg_class c join pg_attribute a on a.attrelid = c.oid
       where c.relname = any($1) and c.relkind = 'r' and c.relnamespace = 'public'::regnamespace
       and a.atttypid = 'uuid'::regtype and a.attname not in ('id', 'yard_id')
       and not exists (select from pg_constraint k where k.contype = 'f' and k.conrelid = c.oid and a.attnum = any(k.conkey))
       order by 1`,
      [yardTables],
    );
    // These remember who wrote a row, or what it was about, also when that is gone or was never of the yard.
    expect(columns.map((row) => row.column)).toEqual([
      'audit_entry.person_id',
      'audit_entry.subject_id',
      'audit_entry.trailer_id',
      'build_sheet.recorded_by',
      'check_record.recorded_by',
      'handover.recorded_by',
      'hold.lifted_by',
      'hold.opened_by',
      'job.recorded_by',
      'machine.recorded_by',
      'meter_reading.recorded_by',
      'part.recorded_by',
      'trip.recorded_by',
    ]);
  });
});

describe('what the service may do', () => {
  async function rights(table: string): Promise<string[]> {
    const granted = await asOwner<{ right: string }>(
      `select privilege as right from unnest(array['SELECT', 'INSERT', 'UPDATE', 'DELETE', 'TRUNCATE', 'REFERENCES', 'TRIGGER']) privilege
       where has_table_privilege('axlebook_service', $1, privilege)`,
      [`"${table}"`],
    );
    return granted.map((row) => row.right);
  }

  async function columnsItMayChange(table: string): Promise<string[]> {
    const columns = await asOwner<{ name: string }>(
      `select attname as name from pg_attribute where attrelid = $1::regclass and attnum > 0
       and has_column_privilege('axlebook_service', attrelid, attnum, 'UPDATE') order by attnum`,
      [`"${table}"`],
    );
    return columns.map((column) => column.name);
  }

  test.each([
    'build_sheet',
    'build_axle',
    'trip',
    'trip_cargo',
    'meter_reading',
    'check_record',
    'checked_line',
    'check_photo',
    'handover',
    'handover_photo',
    'notice_item',
    'notice_answer',
    'audit_entry',
  ])('a row of %s is written once: it can be neither changed nor removed', async (table) => {
    expect(await rights(table)).toEqual(['SELECT', 'INSERT']);
    expect(await columnsItMayChange(table)).toEqual([]);
  });

  test('of a part only the day it came off and why can be added, and of a hold only how it was lifted', async () => {
    expect(await rights('part')).toEqual(['SELECT', 'INSERT']);
    expect(await columnsItMayChange('part')).toEqual(['removed_on', 'removed_for']);
    expect(await rights('hold')).toEqual(['SELECT', 'INSERT']);
    expect(await columnsItMayChange('hold')).toEqual([
      'lifted_on',
      'lifted_by',
      'lifted_by_name',
      'lift_reason',
      'lift_check_record_id',
    ]);
  });

  test('a day on which a part came off does not move afterwards, nor a lifted hold', async () => {
    const changed = await database.inYard(ours.yardId, async (tx) => {
      const part = await STORES.parts.insert(tx, ourTrailer, sample.FULL_TIRE, BY_SEED);
      const hold = await STORES.holds.open(tx, ourTrailer, {
        openedOn: day('2025-01-01'),
        reason: 'a light out',
        openedBy: null,
        openedByName: 'Wren',
      });
      const lift = { liftedBy: null, liftedByName: 'Wren', reason: 'new lamp', checkRecordId: null };
      await STORES.holds.lift(tx, ourTrailer, hold, { ...lift, liftedOn: day('2025-01-02') });
      return [
        await tx.$executeRaw`update part set removed_on = null where id = ${part}::uuid`,
        await tx.$executeRaw`update hold set lifted_on = '2025-02-02' where id = ${hold}::uuid`,
      ];
    });
    expect(changed).toEqual([0, 0]);
  });

  test('only results and the cargo of a job to come can be removed', async () => {
    const removable: string[] = [];
    for (const table of yardTables) if ((await rights(table)).includes('DELETE')) removable.push(table);
    expect(removable).toEqual(['due_result', 'flag_result', 'job_cargo', 'trailer_result']);
  });

  test('it cannot read, write or empty the tables of sign-in, where session tokens stand in clear', async () => {
    for (const table of [...SIGN_IN_TABLES, '_prisma_migrations']) {
      expect([table, await rights(table)]).toEqual([table, []]);
      expect(await asService(ours.yardId, `select * from "${table}"`)).toMatchObject({ code: '42501' });
    }
  });

  test('it is no superuser, cannot pass row level security by, owns nothing and cannot make tables', async () => {
    const role = `select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, rolcanlogin from pg_roles where rolname = 'axlebook_service'`;
    expect(await asOwner(role)).toEqual([
      { rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false, rolcanlogin: false },
    ]);
    const owned = `select relname from pg_class where relowner = 'axlebook_service'::regrole`;
    expect(await asOwner(owned)).toEqual([]);
    expect(await asService(ours.yardId, 'create table mine (x int)')).toMatchObject({ code: '42501' });
  });
});

describe('what sign-in may do', () => {
  test('it keeps its own five tables and sees no table of a yard', async () => {
    const auth = new pg.Client({ connectionString: fresh.url, options: '-c role=axlebook_auth' });
    await auth.connect();
    try {
      for (const table of SIGN_IN_TABLES) await auth.query(`select * from "${table}"`);
      for (const table of yardTables) {
        await expect(auth.query(`select * from "${table}"`), table).rejects.toMatchObject({ code: '42501' });
      }
    } finally {
      await auth.end();
    }
  });

  test('a session works in no yard that its person is not of', async () => {
    const session = `insert into session (id, person_id, token, expires_at, yard_id, updated_at)
      values (gen_random_uuid(), $1, gen_random_uuid()::text, now(), $2, now())`;
    await expect(asOwner(session, [ours.ownerId, theirs.yardId])).rejects.toMatchObject({ code: '23503' });
    await asOwner(session, [ours.ownerId, ours.yardId]);
  });
});

describe('the questions that cross yards', () => {
  test('are exactly these functions, closed to everybody else and with nothing to lead them astray', async () => {
    const functions = await asOwner(`select proname as name, prosecdef as "asOwner", proconfig as settings,
         exists (select from aclexplode(proacl) where grantee = 0) as "openToAll"
       from pg_proc where pronamespace = 'public'::regnamespace order by proname`);
    const safe = { asOwner: true, settings: ['search_path=pg_catalog'], openToAll: false };
    expect(functions).toEqual(
      [
        'api_token_of',
        'invitation_of',
        'memberships_of',
        'yard_ids',
        'yards_to_plan',
        'yards_to_wake',
        'yards_with_waiting_notices',
      ].map((name) => ({ name, ...safe })),
    );
  });

  test('which yards there are, and which have something to do', async () => {
    expect([...(await database.yardIds())].sort()).toEqual([ours.yardId, theirs.yardId].sort());
    // The trailers' wake date is 16 July; in Chicago it begins five hours after it does in Greenwich.
    expect(await database.yardsToWake(new Date('2025-07-16T04:59:59Z'))).toEqual([]);
    expect((await database.yardsToWake(new Date('2025-07-16T05:00:00Z'))).length).toBe(2);
    expect(await database.yardsWithWaitingNotices(new Date('2025-06-16T10:59:59Z'))).toEqual([]);
    expect((await database.yardsWithWaitingNotices(new Date('2025-06-16T11:00:00Z'))).length).toBe(2);
  });

  test('where a person may work', async () => {
    expect(await database.yardsOfPerson(ours.shopId)).toEqual([
      { yardId: ours.yardId, yardName: 'Ours', role: 'shop', leftOn: null },
    ]);
    await database.inYard(ours.yardId, (tx) => STORES.memberships.save(tx, ours.shopId, { leftOn: day('2025-05-31') }));
    expect((await database.yardsOfPerson(ours.shopId))[0]?.leftOn).toBe('2025-05-31');
    expect(await database.yardsOfPerson(newId())).toEqual([]);
  });

  test('whose key and whose invitation a secret is, until the key is revoked', async () => {
    const key = await database.apiTokenOf(`key of ${ours.yardId}`);
    expect(key).toMatchObject({ yardId: ours.yardId, personId: ours.ownerId });
    expect(await database.apiTokenOf('key of nobody')).toBe(null);
    expect(await database.invitationOf(`invitation of ${theirs.yardId}`)).toMatchObject({ yardId: theirs.yardId });
    expect(await database.invitationOf('invitation of nobody')).toBe(null);
    const revoked = await database.inYard(ours.yardId, (tx) => STORES.apiTokens.revoke(tx, key?.id ?? '', new Date()));
    expect(revoked).toBe(true);
    expect(await database.apiTokenOf(`key of ${ours.yardId}`)).toBe(null);
  });
});

test('through the stores, a transaction in one yard finds nothing of another', async () => {
  await database.inYard(ours.yardId, async (tx) => {
    expect(await STORES.trailers.find(tx, theirTrailer)).toBe(null);
    expect(await STORES.trailers.findFacts(tx, theirTrailer)).toBe(null);
    expect(await STORES.trailers.lock(tx, theirTrailer)).toBe(false);
    expect(await STORES.trailers.update(tx, theirTrailer, { name: 'mine now' })).toBe(false);
    expect(await STORES.results.find(tx, theirTrailer)).toBe(null);
    expect((await STORES.trailers.list(tx)).map((trailer) => trailer.id)).toEqual([ourTrailer]);
  });
});

test('a yard set in one transaction is forgotten in the next on the same connection', async () => {
  const single = new Database(fresh.url, 1);
  try {
    await single.inYard(ours.yardId, async (tx) => STORES.trailers.list(tx));
    const stray = newId();
    expect(await single.inYard(stray, async (tx) => STORES.trailers.list(tx))).toEqual([]);
  } finally {
    await single.onModuleDestroy();
  }
});

test('two yards at work at the same moment do not get into each other', async () => {
  const readsOwn = async (yard: SampleYard, trailerId: string) =>
    database.inYard(yard.yardId, async (tx) => {
      for (let turn = 0; turn < 20; turn += 1) {
        expect(tx.yardId).toBe(yard.yardId);
        expect((await STORES.yards.get(tx)).id).toBe(yard.yardId);
        expect((await STORES.trailers.list(tx)).map((trailer) => trailer.id)).toEqual([trailerId]);
      }
    });
  await Promise.all([readsOwn(ours, ourTrailer), readsOwn(theirs, theirTrailer), readsOwn(ours, ourTrailer)]);
});

test('work that throws leaves nothing behind', async () => {
  const attempt = database.inYard(ours.yardId, async (tx) => {
    await STORES.trailers.insert(tx, { ...sample.BARE_TRAILER, yardNumber: 'T-half' });
    throw new Error('half way');
  });
  await expect(attempt).rejects.toThrow('half way');
  const found = await database.inYard(ours.yardId, (tx) => STORES.trailers.findByNumber(tx, 'T-half'));
  expect(found).toBe(null);
});
