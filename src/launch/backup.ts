import { createReadStream, createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import pg from 'pg';
import { from as copyFrom, to as copyTo } from 'pg-copy-streams';
import { backupLines } from './backup-lines.js';
import { appliedMigrations, migrate } from './migrate.js';

/**
 * A backup is one gzip file of text: a line of JSON that says what it is, then for each table a line of JSON with its
 * name and columns, its rows as Postgres's COPY writes them, and a line `\.`; last a line of JSON with the number of
 * rows of every table, so that a file cut short is noticed. Everything is read in one transaction: it is the state of
 * one moment, whatever is recorded meanwhile. The queue of jobs under way is not in it: it is made from the facts again.
 */
interface Head {
  readonly backup: 'axlebook';
  readonly format: 1;
  readonly madeAt: string;
  /** The newest migration the database had; an import goes to that one first and on from there afterwards. */
  readonly migration: string;
}

interface TableHead {
  readonly table: string;
  readonly columns: readonly string[];
}

interface Tail {
  readonly rows: Readonly<Record<string, number>>;
}

/** What an export wrote or an import read: rows by table. */
export type RowCounts = Tail['rows'];

/** The database or the file cannot be used for this; the message says why and what to do. */
export class BackupError extends Error {
  override readonly name = 'BackupError';
}

/** Writes all that is recorded to `file`, replacing it only once the backup is whole. The service may go on running. */
export const exportDatabase = async (url: string, file: string, now: Date): Promise<RowCounts> => {
  const unfinished = `${file}.unfinished`;
  const counts: Record<string, number> = {};
  try {
    await connected(url, async (client) => {
      const migration = (await appliedMigrations(client)).at(-1);
      if (migration === undefined)
        throw new BackupError('This database holds nothing yet: there is nothing to export.');
      await client.query('begin transaction isolation level repeatable read, read only');
      const head: Head = { backup: 'axlebook', format: 1, madeAt: now.toISOString(), migration };
      const text = Readable.from(backupText(client, head, counts));
      await pipeline(text, createGzip(), createWriteStream(unfinished, { mode: 0o600 }));
      await client.query('commit');
    });
    await rename(unfinished, file);
  } finally {
    await rm(unfinished, { force: true });
  }
  return counts;
};

/**
 * Reads a backup into the database at `url`, which must hold no yard yet: a backup is put in place of nothing, never
 * mixed with what is there. All of it or none of it is taken over. A backup of an earlier release is brought forward.
 */
export const importDatabase = async (url: string, file: string): Promise<RowCounts> => {
  const lines = backupLines(createReadStream(file).pipe(createGunzip()));
  const head = await readHead(lines, file);
  await migrate(url, { until: head.migration });
  const counts = await connected(url, async (client) => {
    if ((await appliedMigrations(client)).at(-1) !== head.migration) {
      throw new BackupError(
        `The backup was made by another release (its newest migration is ${head.migration}). ` +
          'Import it with the release that made it or a later one, into an empty folder.',
      );
    }
    await client.query('begin');
    const { rows } = await client.query<{ yards: number }>('select count(*)::int as yards from yard');
    if (rows[0]?.yards !== 0) {
      throw new BackupError(
        `There are ${rows[0]?.yards} yards in this database already. Import into an empty one: set AXLEBOOK_DATA to a new folder.`,
      );
    }
    // The rows were consistent when they were read; checks across tables would only ask for them in a certain order.
    await client.query('set local session_replication_role = replica');
    const read = await readTables(client, lines);
    await client.query('commit');
    return read;
  });
  await migrate(url);
  return counts;
};

async function* backupText(client: pg.Client, head: Head, counts: Record<string, number>) {
  yield json(head);
  for (const { table, columns } of await tablesOf(client)) {
    yield json({ table, columns } satisfies TableHead);
    const copy = client.query(copyTo(`copy ${quoted(table)} (${columns.map(quoted).join(', ')}) to stdout`));
    for await (const rows of copy) yield rows as Buffer;
    counts[table] = copy.rowCount;
    yield '\\.\n';
  }
  yield json({ rows: counts } satisfies Tail);
}

const tablesOf = async (client: pg.Client): Promise<TableHead[]> => {
  const { rows } = await client.query<TableHead>(`
    select c.relname as table, array_agg(a.attname::text order by a.attnum) as columns
    from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relname <> '_prisma_migrations'
      and not a.attisdropped and a.attgenerated = ''
    group by c.relname order by c.relname`);
  return rows;
};

const readHead = async (lines: AsyncGenerator<Buffer>, file: string): Promise<Head> => {
  const head = await lines.next().then(
    ({ value }) => parse<Head>(value),
    () => null,
  );
  if (head?.backup !== 'axlebook' || head.format !== 1) throw new BackupError(`${file} is not a backup of Axlebook.`);
  return head;
};

const readTables = async (client: pg.Client, lines: AsyncGenerator<Buffer>): Promise<RowCounts> => {
  const counts: Record<string, number> = {};
  for await (const line of cutShort(lines)) {
    const part = parse<TableHead | Tail>(line);
    if (part !== null && 'rows' in part) {
      const differing = Object.keys({ ...part.rows, ...counts }).filter((table) => part.rows[table] !== counts[table]);
      if (differing.length > 0)
        throw new BackupError(`The backup is damaged: rows are missing from ${differing.join(', ')}.`);
      return counts;
    }
    if (part === null) throw new BackupError('The backup is damaged: a table without its name.');
    const { table, columns } = part;
    await client.query(`delete from ${quoted(table)}`);
    const copy = client.query(copyFrom(`copy ${quoted(table)} (${columns.map(quoted).join(', ')}) from stdin`));
    await pipeline(Readable.from(rowsUntilEnd(lines)), copy);
    counts[table] = copy.rowCount;
  }
  throw new BackupError('The backup is cut short: its end is missing. Nothing of it was taken over.');
};

/** The lines up to the one that ends a table. */
async function* rowsUntilEnd(lines: AsyncGenerator<Buffer>) {
  for (;;) {
    const { value, done } = await lines.next().catch(() => ({ value: undefined, done: true }));
    if (done || !value)
      throw new BackupError('The backup is cut short: its end is missing. Nothing of it was taken over.');
    if (value.length === 3 && value.toString('latin1') === '\\.\n') return;
    yield value;
  }
}

/** A gzip stream that ends too early throws; here that is the same as lines that end too early. */
async function* cutShort(lines: AsyncGenerator<Buffer>) {
  for (;;) {
    const { value, done } = await lines.next().catch(() => ({ value: undefined, done: true }));
    if (done || !value) return;
    yield value;
  }
}

const connected = async <T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> => {
  const client = new pg.Client(url);
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
};

const json = (value: object): string => `${JSON.stringify(value)}\n`;

const parse = <T>(line: Buffer | undefined): T | null => {
  try {
    return JSON.parse(line?.toString() ?? '') as T;
  } catch {
    return null;
  }
};

const quoted = (name: string): string => pg.escapeIdentifier(name);
