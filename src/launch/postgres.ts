import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import {
  appendFile,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  readlink,
  realpath,
  rename,
  rm,
  writeFile,
} from 'node:fs/promises';
import { createServer } from 'node:net';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { isAlive } from './is-alive.js';
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
const UNFINISHED = '.new-';

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
  await sweepUnfinished(cluster);
  const fresh = await mkdtemp(`${cluster}${UNFINISHED}${process.pid}-`);
  const passwordFile = `${fresh}.password`;
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

/** What a first start that was killed left behind; those of living processes are being made right now. */
const sweepUnfinished = async (cluster: string): Promise<void> => {
  const begin = basename(cluster) + UNFINISHED;
  for (const name of await readdir(dirname(cluster))) {
    if (!name.startsWith(begin) || isAlive(Number.parseInt(name.slice(begin.length), 10))) continue;
    await rm(join(dirname(cluster), name), { recursive: true, force: true });
  }
};

const settings = (options: PostgresOptions): string => {
  const always = ["listen_addresses = '127.0.0.1'", "unix_socket_directories = ''", "timezone = 'UTC'"];
  const throwAway = ['fsync = off', 'full_page_writes = off', 'max_connections = 300'];
  return `\n# Axlebook\n${[...always, ...(options.throwAway ? throwAway : [])].join('\n')}\n`;
};

/** Adopts or starts, and tries again while another process is starting, recovering or stopping the same server. */
const untilRunning = async (binaries: PostgresBinaries, cluster: string): Promise<void> => {
  const giveUpAt = performance.now() + START_TIMEOUT_MS;
  const log = join(cluster, 'log');
  await refuseForeignFiles(cluster);
  while (!(await isRunning(cluster))) {
    const port = await readPort(cluster);
    const start = ['-D', cluster, '-w', '-l', log, '-o', `-p ${port}`, 'start'];
    const { output } = await runPostgresBinary(binaries.pg_ctl, start);
    if (await isRunning(cluster)) return;
    if (performance.now() > giveUpAt) {
      const said = await readFile(log, 'utf8').catch(() => '');
      throw new Error(`Postgres did not start in ${cluster}.\n${output}${said.slice(-2000)}`);
    }
    await clearTheWay(cluster, port);
    await wait(100);
  }
};

/** Files made by another user can never be started by us; better said at once than after two minutes of trying. */
const refuseForeignFiles = async (cluster: string): Promise<void> => {
  await readFile(join(cluster, PASSWORD_FILE)).catch((cause: unknown) => {
    throw new Error(`The database in ${cluster} cannot be read. Start it as the user who started it before.`, {
      cause,
    });
  });
};

/** Removes what kept the server from starting, where nobody can be hurt by that; otherwise changes nothing. */
const clearTheWay = async (cluster: string, port: number): Promise<void> => {
  const lock = await readLock(cluster);
  if (lock === null) {
    // Another program took our port while we were away. No server of ours runs, so a new port cuts nobody off.
    if (await isTaken(port)) await writeFile(join(cluster, PORT_FILE), String(await freePort()));
  } else if (await worksElsewhere(Number(lock[0]), cluster)) {
    // Its number was given to another process, as after a restart of the machine. Postgres itself would not dare.
    await rm(join(cluster, 'postmaster.pid'), { force: true });
  }
};

/** Whether that process is alive and certainly not the server of this folder: a server works inside its folder. */
const worksElsewhere = async (pid: number, cluster: string): Promise<boolean> => {
  // A dead one is left to Postgres, which also looks for children of it that may still be writing.
  if (!isAlive(pid)) return false;
  // Not to be known on other systems, or of a process of someone else's: the lock file is believed then.
  const folder = await readlink(`/proc/${pid}/cwd`).catch(() => null);
  return folder !== null && folder !== (await realpath(cluster));
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
