import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type { DiffTarget, MigrationDirectory, MigrationList, SchemaEngine } from '@prisma/schema-engine-wasm';
import pg from 'pg';
import { projectRoot } from './project-root.js';

export interface MigrateOptions {
  /** Where the migrations are; the project's own if left out. */
  readonly folder?: string;
  /** The last migration to apply, as the database of an earlier release had it; the newest if left out. */
  readonly until?: string;
}

const MIGRATIONS = join(projectRoot(), 'prisma', 'migrations');

/**
 * Brings the database at `url` to the newest migration and returns the names of those applied now, oldest first.
 *
 * Prisma's own engine applies them, on one connection inside one transaction: a process killed half way leaves the
 * database as it was, instead of a migration the engine would call "failed" at every later start. Several copies of
 * the service starting at once take turns. A migration can therefore not contain statements that refuse a
 * transaction (create index concurrently); the migrations check runs them all this way.
 */
export const migrate = async (url: string, options: MigrateOptions = {}): Promise<string[]> => {
  const migrationsList = await readMigrations(options.folder ?? MIGRATIONS, options.until);
  return withEngine(url, async (engine, connection) => {
    await connection.query('begin');
    try {
      await connection.query("select pg_advisory_xact_lock(hashtext('axlebook migrate'))");
      await connection.query(HISTORY_TABLE);
      const filters = { externalTables: [], externalEnums: [] };
      const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters });
      await connection.query('commit');
      return appliedMigrationNames;
    } catch (error) {
      await connection.query('rollback');
      throw error;
    }
  });
};

/**
 * The SQL that turns a database of the schema `from` into one of `schema` (both the text of a schema.prisma); from
 * nothing if left out. `url` is opened, not changed.
 */
export const schemaSql = async (url: string, schema: string, from?: string): Promise<string> =>
  withEngine(url, async (engine) => {
    const { stdout } = await engine.diff({
      from: from === undefined ? { tag: 'empty' } : datamodel(from),
      to: datamodel(schema),
      script: true,
      exitCode: null,
      filters: { externalTables: [], externalEnums: [] },
    });
    return stdout ?? '';
  });

const datamodel = (schema: string): DiffTarget => ({
  tag: 'schemaDatamodel',
  files: [{ path: 'schema.prisma', content: schema }],
});

/**
 * The engine's own table of what was applied, made beforehand: the engine looks for it by a query that fails when it
 * is missing, and a failed query would spoil the transaction around it.
 */
const HISTORY_TABLE = `
  create table if not exists _prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`;

/** Names of the migrations a database has, oldest first; none for one that was never migrated. */
export const appliedMigrations = async (client: pg.ClientBase): Promise<string[]> => {
  const { rows: found } = await client.query<{ exists: boolean }>(
    "select to_regclass('_prisma_migrations') is not null as exists",
  );
  if (!found[0]?.exists) return [];
  const { rows } = await client.query<{ migration_name: string }>(
    'select migration_name from _prisma_migrations where finished_at is not null order by migration_name',
  );
  return rows.map((row) => row.migration_name);
};

const readMigrations = async (folder: string, until?: string): Promise<MigrationList> => {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .filter((name) => until === undefined || name <= until);
  const migrationDirectories = names.sort().map(
    async (name): Promise<MigrationDirectory> => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: await readFile(join(folder, name, 'migration.sql'), 'utf8') },
      },
    }),
  );
  return {
    baseDir: folder,
    lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(migrationDirectories),
  };
};

/** Prisma's own adapter cuts a script at every semicolon, also inside function bodies; Postgres reads it whole. */
class WholeScripts extends PrismaPg {
  override async connect() {
    const adapter = await super.connect();
    adapter.executeScript = async (script) => {
      await adapter.underlyingDriver().query(script);
    };
    return adapter;
  }
}

/**
 * Hands the engine a pool of exactly one connection. The engine does not close what it opens, so the pool is ours to
 * end; and it leaves a ten-second timer behind that would keep the process alive, so timers made meanwhile are let go.
 */
const withEngine = async <T>(
  url: string,
  work: (engine: SchemaEngine, connection: pg.Pool) => Promise<T>,
): Promise<T> => {
  const { SchemaEngine } = await import('@prisma/schema-engine-wasm');
  const connection = new pg.Pool({ connectionString: url, max: 1, idleTimeoutMillis: 0 });
  const setTimer = globalThis.setTimeout;
  globalThis.setTimeout = ((...args: Parameters<typeof setTimer>) => setTimer(...args).unref()) as typeof setTimer;
  try {
    const adapter = bindMigrationAwareSqlAdapterFactory(new WholeScripts(connection));
    const engine = await SchemaEngine.new({ datamodels: undefined }, () => undefined, adapter);
    return await work(engine, connection);
  } finally {
    globalThis.setTimeout = setTimer;
    await connection.end();
  }
};
