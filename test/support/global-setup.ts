import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { isAlive } from '../../src/launch/is-alive.js';
import { bundleIslands } from '../../src/launch/island-bundles.js';
import { startPostgres } from '../../src/launch/postgres.js';
import { projectRoot } from '../../src/launch/project-root.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of this run's throw-away Postgres; the first test that wants a database starts it. */
    databaseFolder: string;
  }
}

/**
 * One folder a run, for one throw-away server, and the scripts of the pages bundled as they are now. No server is started
 * here: a run of pure rules never pays for Postgres.
 * At the end the server is stopped and the folder deleted, unless a failed test left a database worth looking at.
 */
export const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  const runs = join(tmpdir(), `axlebook-test-${userInfo().uid}`);
  await sweepEarlierRuns(runs);
  await bundleIslands(projectRoot(), join(projectRoot(), 'dist', 'islands'));
  const folder = join(runs, String(process.pid));
  await mkdir(folder, { recursive: true });
  project.provide('databaseFolder', folder);
  return async () => {
    if (isUp(folder)) await (await startPostgres(folder)).stop();
    const kept = await readFile(join(folder, 'kept'), 'utf8').catch(() => '');
    if (!kept) return rm(folder, { recursive: true, force: true });
    console.error(`\nKept until the next run, because tests failed:\n${kept}`);
    console.error(`Start their server again with: npm run database -- ${folder}\n`);
  };
};

/** Deletes what runs that are over left behind: kept databases, and servers whose run was killed. */
const sweepEarlierRuns = async (runs: string): Promise<void> => {
  for (const name of await readdir(runs).catch(() => [])) {
    if (isAlive(Number(name))) continue;
    const folder = join(runs, name);
    if (isUp(folder)) await (await startPostgres(folder)).stop();
    if (!isUp(folder)) await rm(folder, { recursive: true, force: true });
  }
};

const isUp = (folder: string): boolean => existsSync(join(folder, 'postgres', 'postmaster.pid'));
