import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exportDatabase, importDatabase } from '../../src/launch/backup.js';
import { emptyDatabase, type FreshDatabase, freshDatabase } from '../support/database.js';

const NOW = new Date('2026-11-25T10:00:00Z');
const AWKWARD = 'Tab\there, "quotes", back\\slash, \\. alone, line\nbreak, return\r, separator\u2028, Łódź, 拖车';

describe('a backup of the database', () => {
  let folder: string;
  let file: string;
  let original: FreshDatabase;
  const made: FreshDatabase[] = [];

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'axlebook-backup-'));
    file = join(folder, 'yard.backup');
    original = await freshDatabase();
    made.push(original);
    await asOwner(original.url, async (owner) => {
      const yard = '018f0000-0000-7000-8000-000000000001';
      await owner.query("insert into yard (id, name, slug, place) values ($1, 'North yard', 'north', $2)", [
        yard,
        AWKWARD,
      ]);
      await owner.query(
        `insert into person (id, name, email, updated_at) select gen_random_uuid(), 'Person ' || n, n || '@example.com', now()
         from generate_series(1, 5000) n`,
      );
    });
  });

  afterAll(async () => {
    for (const database of made) await database.drop();
    await rm(folder, { recursive: true, force: true });
  });

  it('comes back the same, row by row in every table', async () => {
    const written = await exportDatabase(original.url, file, NOW);
    const copy = await another(emptyDatabase());
    expect(await importDatabase(copy.url, file)).toEqual(written);
    expect(written).toMatchObject({ yard: 1, person: 5000 });
    expect(await contents(copy.url)).toEqual(await contents(original.url));
    await asOwner(copy.url, async (owner) => {
      const { rows } = await owner.query('select place from yard');
      expect(rows).toEqual([{ place: AWKWARD }]);
    });
  });

  it('is not mixed with a yard that is there already', async () => {
    const before = await contents(original.url);
    await expect(importDatabase(original.url, file)).rejects.toThrow('There are 1 yards in this database already');
    expect(await contents(original.url)).toEqual(before);
  });

  it('cut short is refused, and nothing of it is taken over', async () => {
    const whole = await readFile(file);
    const copy = await another(freshDatabase());
    const empty = await contents(copy.url);
    for (const share of [0.5, 0.9, 0.999]) {
      const cut = join(folder, `cut-${share}.backup`);
      await writeFile(cut, whole.subarray(0, Math.floor(whole.length * share)));
      await expect(importDatabase(copy.url, cut)).rejects.toThrow('cut short');
      expect(await contents(copy.url)).toEqual(empty);
    }
  });

  it('is told from any other file', async () => {
    const other = join(folder, 'other.backup');
    await writeFile(other, 'not a backup');
    const copy = await another(freshDatabase());
    await expect(importDatabase(copy.url, other)).rejects.toThrow('is not a backup of Axlebook');
  });

  const another = async (coming: Promise<FreshDatabase>): Promise<FreshDatabase> => {
    const database = await coming;
    made.push(database);
    return database;
  };
});

/** Every row of every table as text, in one order, to compare two databases whole. */
async function contents(url: string): Promise<Record<string, string[]>> {
  const all: Record<string, string[]> = {};
  await asOwner(url, async (owner) => {
    const { rows: tables } = await owner.query<{ relname: string }>(
      "select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r' and relname <> '_prisma_migrations'",
    );
    for (const { relname } of tables) {
      const { rows } = await owner.query<{ row: string }>(`select t::text as row from "${relname}" t order by 1`);
      all[relname] = rows.map(({ row }) => row);
    }
  });
  return all;
}

async function asOwner(url: string, work: (owner: pg.Client) => Promise<void>): Promise<void> {
  const owner = new pg.Client(url);
  await owner.connect();
  try {
    await work(owner);
  } finally {
    await owner.end();
  }
}
