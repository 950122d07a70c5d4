import { resolve } from 'node:path';
import { readConfig } from '../config.js';
import { startPostgres } from './postgres.js';
import { stopOnSignal } from './until-stopped.js';

/**
 * `npm run database [-- <folder>]`: runs only the Postgres of a data folder and prints its address, to look into it
 * with any SQL client: the service's own, or the one a failed test run left behind.
 */
const folder = resolve(process.env.INIT_CWD ?? '.', process.argv[2] ?? readConfig(process.env).dataDir);
const server = await startPostgres(folder);
console.log(`${server.url}\nCtrl-C stops it, unless someone else is still connected.`);
const untilThen = setInterval(() => undefined, 60_000);
stopOnSignal(async () => {
  clearInterval(untilThen);
  await server.stop();
});
