import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { schemaSql } from '../../src/launch/migrate.js';
import { projectRoot } from '../../src/launch/project-root.js';
import { emptyDatabase, type FreshDatabase, freshDatabase } from '../support/database.js';

/**
 * What Prisma's schema can say, one sentence for each thing: columns, keys and indexes. Checks, policies, rights,
 * functions and indexes over expressions are beyond its language and stand only in the migrations.
 */
const CATALOGUE = `
  select format('column %s.%s: %s%s%s', c.relname, a.attname, format_type(a.atttypid, a.atttypmod),
    case when a.attnotnull then ' not null' else '' end, ' default ' || pg_get_expr(d.adbin, d.adrelid)) as said
  from pg_class c
  join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
  left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
  where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
  union all
  select format('key %s.%s: %s', conrelid::regclass, conname, pg_get_constraintdef(oid))
  from pg_constraint where connamespace = 'public'::regnamespace and contype in ('p', 'u', 'f')
  union all
  select format('index %s', pg_get_indexdef(indexrelid))
  from pg_index join pg_class c on c.oid = indexrelid
  where c.relnamespace = 'public'::regnamespace and indexprs is null
  union all
  select format('enum %s: %s', t.typname, string_agg(e.enumlabel, ', ' order by e.enumsortorder))
  from pg_type t join pg_enum e on e.enumtypid = t.oid
  where t.typnamespace = 'public'::regnamespace group by t.typname`;

describe('the migrations and prisma/schema.prisma', () => {
  const made: FreshDatabase[] = [];
  let migrated: string[];
  let schema: string;

  beforeAll(async () => {
    const database = await freshDatabase();
    made.push(database);
    migrated = await catalogue(database.url);
    schema = await readFile(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8');
  });

  afterAll(async () => {
    for (const database of made) await database.drop();
  });

  it('make the same tables, columns, keys and indexes', async () => {
    expect(migrated.length).toBeGreaterThan(200);
    expect(migrated).toEqual(await fromSchema(schema));
  });

  it('are told apart by one column', async () => {
    const other = schema.replace(/^model Yard \{$/m, 'model Yard {\n  planted Int?');
    expect(other).not.toBe(schema);
    const said = await fromSchema(other);
    expect(said.filter((line) => !migrated.includes(line))).toEqual(['column yard.planted: integer']);
  });

  it('agree on the copy of the schema beside the last of them', async () => {
    const migrations = join(projectRoot(), 'prisma', 'migrations');
    const entries = await readdir(migrations, { withFileTypes: true });
    const folders = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
    const last = folders.sort().at(-1) ?? '';
    expect(await readFile(join(migrations, last, 'schema.prisma'), 'utf8')).toBe(schema);
  });

  it('have a next one drafted that leads from the schema as it was to the schema as it is', async () => {
    const other = schema
      .replace(/^model Yard \{$/m, 'model Yard {\n  planted Int?')
      .replace(/^ {2}registrationPlate .*\n/m, '');
    const database = await freshDatabase();
    made.push(database);
    const draft = await schemaSql(database.url, other, schema);
    await run(database.url, draft);
    expect(await catalogue(database.url)).toEqual(await fromSchema(other));
    expect(draft).toContain('ADD COLUMN');
    expect(draft).toContain('DROP COLUMN');
  });

  async function fromSchema(text: string): Promise<string[]> {
    const database = await emptyDatabase();
    made.push(database);
    await run(database.url, await schemaSql(database.url, text));
    return catalogue(database.url);
  }
});

async function run(url: string, sql: string): Promise<void> {
  const client = new pg.Client(url);
  await client.connect();
  await client.query(sql);
  await client.end();
}

async function catalogue(url: string): Promise<string[]> {
  const client = new pg.Client(url);
  await client.connect();
  const { rows } = await client.query<{ said: string }>(CATALOGUE);
  await client.end();
  return rows
    .map(({ said }) => said)
    .filter((said) => !said.includes('_prisma_migrations'))
    .sort();
}
