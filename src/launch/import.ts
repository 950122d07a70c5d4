import { resolve } from 'node:path';
import { readConfig } from '../config.js';
import { BackupError, importDatabase } from './backup.js';
import { openOwnDatabase } from './own-database.js';

/**
 * `npm run import -- <file>`: reads what `npm run export` wrote into an empty data folder. The service must not run on
 * that folder meanwhile. To bring a backup back beside what is there, name another folder:
 * `AXLEBOOK_DATA=./data-restored npm run import -- <file>`, then start the service with the same setting.
 */
const config = readConfig(process.env);
try {
  if (config.databaseUrl) throw new BackupError('DATABASE_URL is set: restore that database with pg_restore.');
  const name = process.argv[2];
  if (!name) throw new BackupError('Name the backup: npm run import -- <file>');
  const database = await openOwnDatabase(config.dataDir, (reason) => {
    console.error(reason.message);
    process.exit(1);
  });
  try {
    const counts = await importDatabase(database.url, resolve(process.env.INIT_CWD ?? '.', name));
    const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
    console.log(`${rows} rows of ${Object.keys(counts).length} tables are in ${resolve(config.dataDir)}`);
  } finally {
    await database.close();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
