import { randomBytes } from 'node:crypto';
import { appendFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { inject } from 'vitest';
import { migrate } from '../../src/launch/migrate.js';
import { startPostgres } from '../../src/launch/postgres.js';
import { failedTests } from './failed-tests.js';

export interface FreshDatabase {
  /** Connects as the owner, as DATABASE_URL does. */
  readonly url: string;
  /** Call it in `afterAll`, with your pools closed. Keeps the database instead, and says where, if a test failed. */
  readonly drop: () => Promise<void>;
}

const TEMPLATE = 'axlebook_template';

/** A migrated, empty database of one's own: call it in `beforeAll`, one for each test file. */
export const freshDatabase = async (): Promise<FreshDatabase> => {
  const database = await emptyDatabase(await template());
  return database;
};

/** A database without any table, for tests that migrate it themselves, or a copy of another one. */
export const emptyDatabase = async (copyOf = 'template0'): Promise<FreshDatabase> => {
  const folder = inject('databaseFolder');
  const { url } = await startPostgres(folder, { throwAway: true });
  const name = `test_${randomBytes(6).toString('hex')}`;
  await asOwner(url, (owner) => owner.query(`create database ${name} template ${copyOf}`));
  const drop = async (): Promise<void> => {
    if (failedTests.length === 0) await asOwner(url, (owner) => owner.query(`drop database ${name} with (force)`));
    else await appendFile(join(folder, 'kept'), `  ${databaseAt(url, name)} ("${failedTests.join('", "')}")\n`);
  };
  return { url: databaseAt(url, name), drop };
};

/** Migrated once a run, by whichever test file comes first; the others wait for it and clone it. */
const template = async (): Promise<string> => {
  const { url } = await startPostgres(inject('databaseFolder'), { throwAway: true });
  await asOwner(url, async (owner) => {
    await owner.query("select pg_advisory_lock(hashtext('axlebook test template'))");
    const made = await owner.query('select from pg_database where datname = $1', [TEMPLATE]);
    if (made.rowCount !== 0) return;
    // Renamed when done, so that a migration that fails leaves no half template for the next file to clone.
    const unfinished = `${TEMPLATE}_unfinished`;
    await owner.query(`drop database if exists ${unfinished} with (force)`);
    await owner.query(`create database ${unfinished} template template0`);
    await migrate(databaseAt(url, unfinished));
    await owner.query(`alter database ${unfinished} rename to ${TEMPLATE}`);
  });
  return TEMPLATE;
};

const databaseAt = (url: string, name: string): string => Object.assign(new URL(url), { pathname: `/${name}` }).href;

const asOwner = async (url: string, work: (owner: pg.Client) => Promise<unknown>): Promise<void> => {
  const owner = new pg.Client(databaseAt(url, 'postgres'));
  await owner.connect();
  try {
    await work(owner);
  } finally {
    await owner.end();
  }
};
