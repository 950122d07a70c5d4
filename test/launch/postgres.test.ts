import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DataInUseError, type OwnDatabase, openOwnDatabase } from '../../src/launch/own-database.js';
import { type RunningPostgres, startPostgres } from '../../src/launch/postgres.js';

describe('the Postgres of a data folder', () => {
  let folder: string;

  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'axlebook-postgres-'));
  });

  afterEach(async () => {
    if (await serverPid()) await (await start()).stop();
    await rm(folder, { recursive: true, force: true });
  });

  it('starts on loopback, in UTF-8 and UTC, and refuses a wrong password', async () => {
    const { url } = await start();
    expect(await rows(url, 'show listen_addresses')).toEqual([{ listen_addresses: '127.0.0.1' }]);
    expect(await rows(url, 'show server_encoding')).toEqual([{ server_encoding: 'UTF8' }]);
    expect(await rows(url, 'show timezone')).toEqual([{ TimeZone: 'UTC' }]);
    const stranger = Object.assign(new URL(url), { password: 'guessed' }).href;
    await expect(rows(stranger, 'select 1')).rejects.toThrow('password authentication failed');
  });

  it('is adopted by the next start while it runs, and found at the same address after a stop', async () => {
    const first = await start();
    const pid = await serverPid();
    expect((await start()).url).toBe(first.url);
    expect(await serverPid()).toBe(pid);
    expect(await first.stop()).toBe(true);
    expect(await serverPid()).toBeNull();
    expect((await start()).url).toBe(first.url);
  });

  it('keeps what was committed when it is killed', async () => {
    const { url } = await start();
    await rows(url, 'create table kept as select generate_series(1, 100) as number');
    await killServer();
    const next = await start();
    expect(next.url).toBe(url);
    expect(await rows(next.url, 'select count(*)::int as kept from kept')).toEqual([{ kept: 100 }]);
  });

  it('starts although its lock file names a process that is something else by now', async () => {
    const { url, stop } = await start();
    await stop();
    const port = new URL(url).port;
    const lock = [process.ppid, join(folder, 'postgres'), 1_700_000_000, port, '', '127.0.0.1', '', 'ready'];
    await writeFile(join(folder, 'postgres', 'postmaster.pid'), `${lock.join('\n')}\n`);
    expect((await start()).url).toBe(url);
  });

  it('moves to another port when a stranger took its own', async () => {
    const other = await mkdtemp(join(tmpdir(), 'axlebook-postgres-'));
    const stranger = await startPostgres(other, { throwAway: true });
    try {
      await (await start()).stop();
      await writeFile(join(folder, 'postgres', 'axlebook-port'), new URL(stranger.url).port);
      const { url } = await start();
      expect(new URL(url).port).not.toBe(new URL(stranger.url).port);
      expect(await rows(url, 'select 1 as answers')).toEqual([{ answers: 1 }]);
    } finally {
      await stranger.stop();
      await rm(other, { recursive: true, force: true });
    }
  });

  it('is one and the same for four first starts at once', async () => {
    const started = await Promise.all([1, 2, 3, 4].map(() => start()));
    expect(new Set(started.map(({ url }) => url)).size).toBe(1);
    expect(await readdir(folder)).toEqual(['postgres']);
  });

  it('is not stopped under someone else who is connected', async () => {
    const { url, stop } = await start();
    const other = new pg.Client(url);
    await other.connect();
    expect(await stop()).toBe(false);
    expect((await other.query('select 1 as answers')).rows).toEqual([{ answers: 1 }]);
    await other.end();
    expect(await stop()).toBe(true);
  });

  describe('held by a service', () => {
    const opened: OwnDatabase[] = [];
    const lost: Error[] = [];

    afterEach(async () => {
      for (const database of opened.splice(0)) await database.close();
      expect(lost.splice(0)).toEqual([]);
    });

    const open = async (): Promise<OwnDatabase> => {
      await start();
      const database = await openOwnDatabase(folder, (reason) => lost.push(reason));
      opened.push(database);
      return database;
    };

    it('is refused to a second one, and free again after the first', async () => {
      const first = await open();
      await expect(open()).rejects.toThrow(DataInUseError);
      await expect(open()).rejects.toThrow(`process ${process.pid}`);
      await first.close();
      await open();
    });

    it('comes back at the same address when it is killed, and is still held', async () => {
      const { url } = await open();
      const before = await serverPid();
      await killServer();
      await expect.poll(serverPid, { timeout: 30_000 }).not.toBe(before);
      await expect.poll(() => rows(url, 'select 1 as answers').catch(() => null), { timeout: 30_000 }).toHaveLength(1);
      await expect
        .poll(() => rows(url, "select 1 from pg_locks where locktype = 'advisory'").catch(() => null), {
          timeout: 30_000,
        })
        .toHaveLength(1);
      await expect(open()).rejects.toThrow(DataInUseError);
    });
  });

  /** Not waiting for the disk: a killed process loses nothing it handed to the system, only a power cut does. */
  function start(): Promise<RunningPostgres> {
    return startPostgres(folder, { throwAway: true });
  }

  async function serverPid(): Promise<number | null> {
    const path = join(folder, 'postgres', 'postmaster.pid');
    return existsSync(path) ? Number.parseInt(await readFile(path, 'utf8'), 10) : null;
  }

  async function killServer(): Promise<void> {
    process.kill((await serverPid()) ?? Number.NaN, 'SIGKILL');
  }
});

async function rows(url: string, query: string): Promise<unknown[]> {
  const client = new pg.Client(url);
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query(query)).rows;
  } finally {
    await client.end();
  }
}
