import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { readConfig } from '../config.js';
import { exportDatabase } from './backup.js';
import { startPostgres } from './postgres.js';

/**
 * `npm run export [-- <file>]`: writes everything recorded into one file, also while the service runs. Keep a copy of
 * it on another machine; `npm run import` reads it. A database named by DATABASE_URL has its own tools for this.
 */
const config = readConfig(process.env);
const now = new Date();
const stamp = now.toISOString().slice(0, 19).replaceAll(':', '-');
// npm changes into the project folder; a file named by hand is meant from where the command was typed.
const file = resolve(
  process.env.INIT_CWD ?? '.',
  process.argv[2] ?? join(resolve(config.dataDir), 'backups', `axlebook-${stamp}.backup`),
);
try {
  if (config.databaseUrl)
    throw new Error('DATABASE_URL is set: back that database up with pg_dump, which comes with it.');
  const server = await startPostgres(config.dataDir);
  try {
    await mkdir(dirname(file), { recursive: true });
    const counts = await exportDatabase(server.url, file, now);
    const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
    console.log(`${rows} rows of ${Object.keys(counts).length} tables are in ${file}`);
    console.log('Keep a copy on another machine. Read it in with: npm run import -- <file>');
  } finally {
    await server.stop();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
