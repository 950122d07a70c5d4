import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { appendFile, mkdir, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { giveToPostgres, type PostgresBinaries, postgresBinaries, runPostgresBinary } from './postgres-binaries.js';

export interface RunningPostgres {
  /** Where the service's database answers; the role in it owns the database and runs the migrations. */
  readonly url: string;
  /** Stops the server, unless someone else is still connected; resolves to whether it was stopped. */
  readonly stop: () => Promise<boolean>;
}

export interface PostgresOptions {
  /** For tests: never waits for the disk, because the data is thrown away with the run. */
  readonly throwAway?: boolean;
}

const OWNER = 'axlebook';
const DATABASE = 'axlebook';
const PASSWORD_FILE = 'axlebook-password';
const PORT_FILE = 'axlebook-port';

/** Crash recovery of a large database may take a while; a server that is not up after this is not coming. */
const START_TIMEOUT_MS = 120_000;

/**
 * Starts the Postgres that keeps its files in `<dataDir>/postgres`, or adopts the one already running there.
 *
 * After a `kill -9` of the service its server lives on, and after a `kill -9` of the server a lock file stays; both
 * are found here and end in one running server with everything that was committed. Several starts at once end on the
 * same server. The port is chosen once and kept, so that a service finds its server again after a restart of it.
 * Listens on loopback only.
 *
 * Throws when the files cannot be made or the server does not come up; the message ends with the server's own log.
 */
export const startPostgres = async (dataDir: string, options: PostgresOptions = {}): Promise<RunningPostgres> => {
  const cluster = join(resolve(dataDir), 'postgres');
  const binaries = await postgresBinaries();
  if (!existsSync(join(cluster, 'PG_VERSION'))) await createCluster(binaries, cluster, options);
  await untilRunning(binaries, cluster);
  const admin = await connectionTo(cluster, 'postgres');
  await ensureDatabase(admin);
  const { user, password, host, port } = admin;
  return {
    url: `postgres://${user}:${password}@${host}:${port}/${DATABASE}`,
    stop: () => stopUnlessUsed(binaries, cluster),
  };
};

/**
 * Makes the files in a folder beside the final one and renames it: two first starts at once would otherwise write
 * into each other's half-made files. Whoever renames second deletes its own and uses the other's.
 */
const createCluster = async (binaries: PostgresBinaries, cluster: string, options: PostgresOptions): Promise<void> => {
  await mkdir(dirname(cluster), { recursive: true });
  const fresh = `${cluster}.new-${process.pid}`;
  const passwordFile = `${fresh}.password`;
  await rm(fresh, { recursive: true, force: true });
  await mkdir(fresh, { mode: 0o700 });
  await writeFile(passwordFile, randomBytes(24).toString('hex'), { mode: 0o600 });
  for (const path of [fresh, passwordFile]) giveToPostgres(path);
  try {
    const made = await runPostgresBinary(binaries.initdb, [
      ...['-D', fresh, '-U', OWNER, '--pwfile', passwordFile, '--auth=scram-sha-256', '--encoding=UTF8'],
      ...['--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--no-instructions'],
      ...(options.throwAway ? ['--no-sync'] : []),
    ]);
    if (made.code !== 0) throw new Error(`Postgres could not make its files in ${fresh}:\n${made.output}`);
    await rename(passwordFile, join(fresh, PASSWORD_FILE));
    await writeFile(join(fresh, PORT_FILE), String(await freePort()));
    await appendFile(join(fresh, 'postgresql.conf'), settings(options));
    await rename(fresh, cluster).catch((error: NodeJS.ErrnoException) => {
      if (!['ENOTEMPTY', 'EEXIST'].includes(error.code ?? '')) throw error;
    });
  } finally {
    await rm(fresh, { recursive: true, force: true });
    await rm(passwordFile, { force: true });
  }
};

const settings = (options: PostgresOptions): string => {
  const always = ["listen_addresses = '127.0.0.1'", "unix_socket_directories = ''", "timezone = 'UTC'"];
  const throwAway = ['fsync = off', 'synchronous_commit = off', 'full_page_writes = off', 'max_connections = 300'];
  return `\n# Axlebook\n${[...always, ...(options.throwAway ? throwAway : [])].join('\n')}\n`;
};

/** Adopts or starts, and tries again while another process is starting, recovering or stopping the same server. */
const untilRunning = async (binaries: PostgresBinaries, cluster: string): Promise<void> => {
  const giveUpAt = performance.now() + START_TIMEOUT_MS;
  for (;;) {
    if (await isRunning(cluster)) return;
    const log = join(cluster, 'log');
    const port = await readPort(cluster);
    const started = await runPostgresBinary(binaries.pg_ctl, [
      ...['-D', cluster, '-w', '-l', log, '-o', `-p ${port}`, 'start'],
    ]);
    if (started.code === 0 && (await isRunning(cluster))) return;
    if (await isRunning(cluster)) return;
    if (!(await holdsLock(cluster)) && (await isTaken(port))) {
      // Another program took our port while we were away; nobody can be using the server, so a new port harms no one.
      await writeFile(join(cluster, PORT_FILE), String(await freePort()));
    } else if (performance.now() > giveUpAt || (await isNotOurs(cluster))) {
      const said = await readFile(log, 'utf8').catch(() => '');
      throw new Error(`Postgres did not start in ${cluster}.\n${started.output}${said.slice(-2000)}`);
    }
    await wait(100);
  }
};

/** Whether the server of exactly this folder answers; a stranger on the same port has another data folder. */
const isRunning = async (cluster: string): Promise<boolean> => {
  const port = Number((await readLock(cluster))?.[3]);
  if (!port) return false;
  const client = new pg.Client({ ...(await connectionTo(cluster, 'postgres')), port, connectionTimeoutMillis: 5000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
    const { rows } = await client.query<{ data_directory: string }>('show data_directory');
    if ((await realpath(rows[0]?.data_directory ?? '')) !== (await realpath(cluster))) return false;
    await writeFile(join(cluster, PORT_FILE), String(port));
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
};

/** Lines of the server's lock file: pid, data folder, start time, port, … or null without one. */
const readLock = async (cluster: string): Promise<readonly string[] | null> => {
  const text = await readFile(join(cluster, 'postmaster.pid'), 'utf8').catch(() => null);
  return text === null ? null : text.split('\n');
};

const holdsLock = async (cluster: string): Promise<boolean> => (await readLock(cluster)) !== null;

/** Files made by another user can never be started by us; better said at once than after two minutes. */
const isNotOurs = (cluster: string): Promise<boolean> =>
  readFile(join(cluster, PASSWORD_FILE)).then(
    () => false,
    () => true,
  );

const readPort = async (cluster: string): Promise<number> => Number(await readFile(join(cluster, PORT_FILE), 'utf8'));

const connectionTo = async (cluster: string, database: string) => ({
  host: '127.0.0.1',
  port: await readPort(cluster),
  user: OWNER,
  password: await readFile(join(cluster, PASSWORD_FILE), 'utf8'),
  database,
});

const ensureDatabase = async (admin: pg.ClientConfig): Promise<void> => {
  const client = new pg.Client(admin);
  await client.connect();
  try {
    // The lock makes two first starts take turns; "create database" itself knows no "if not exists".
    await client.query("select pg_advisory_lock(hashtext('axlebook create database'))");
    const found = await client.query('select from pg_database where datname = $1', [DATABASE]);
    if (found.rowCount === 0) await client.query(`create database ${DATABASE}`);
  } finally {
    await client.end();
  }
};

const stopUnlessUsed = async (binaries: PostgresBinaries, cluster: string): Promise<boolean> => {
  if (!(await isRunning(cluster))) return false;
  const client = new pg.Client(await connectionTo(cluster, 'postgres'));
  await client.connect();
  const { rowCount } = await client.query(
    "select from pg_stat_activity where backend_type = 'client backend' and pid <> pg_backend_pid()",
  );
  await client.end();
  if (rowCount !== 0) return false;
  return (await runPostgresBinary(binaries.pg_ctl, ['-D', cluster, '-w', '-m', 'fast', 'stop'])).code === 0;
};

const freePort = (): Promise<number> =>
  new Promise((done, fail) => {
    const server = createServer();
    server.once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address ? address.port : 0));
    });
  });

const isTaken = (port: number): Promise<boolean> =>
  new Promise((done) => {
    const server = createServer();
    server.once('error', () => done(true));
    server.listen(port, '127.0.0.1', () => server.close(() => done(false)));
  });
