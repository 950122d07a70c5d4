import { createApp } from './app.js';
import { type Config, ConfigError, readConfig } from './config.js';
import { firstStart } from './first-start.js';
import { migrate } from './launch/migrate.js';
import { DataInUseError, type OwnDatabase, openOwnDatabase } from './launch/own-database.js';
import { stopOnSignal } from './launch/until-stopped.js';
import { keptSecret } from './secret-file.js';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** From nothing to listening: settings, Postgres, migrations, the app, the demo yard on the very first start. */
async function start(): Promise<void> {
  const given = readConfig(process.env);
  const own = given.databaseUrl === null ? await openOwnDatabase(given.dataDir, lost) : null;
  const databaseUrl = given.databaseUrl ?? own?.url ?? '';
  try {
    await migrate(databaseUrl);
    const secret = given.secret ?? (await keptSecret(given.dataDir));
    await listen(given.with({ databaseUrl, secret }), databaseUrl, own);
  } catch (error) {
    await own?.close();
    throw error;
  }
}

async function listen(config: Config, databaseUrl: string, own: OwnDatabase | null): Promise<void> {
  const app = await createApp(config, { jobs: true });
  stopOnSignal(async () => {
    await app.close();
    await own?.close();
    say('Axlebook has stopped.');
  });
  await app.init();
  if (config.demo) await firstStart(app, databaseUrl, say);
  await app.listen(config.port, config.host);
  say(`\nAxlebook is ready at ${config.baseUrl}\nCtrl-C stops it.`);
}

/** The database beside the service is gone and does not come back: better to end than to answer every request with a failure. */
function lost(reason: Error): void {
  process.stderr.write(`Axlebook lost its database: ${reason.message}\n`);
  process.exit(1);
}

/** What the person at the terminal can mend is said in a sentence; everything else comes with where it happened. */
function explain(error: unknown): string {
  if (error instanceof ConfigError || error instanceof DataInUseError) return error.message;
  if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE') {
    return 'Another program listens on that port already. Set PORT to another one, such as PORT=3001.';
  }
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

start().catch((error: unknown) => {
  process.stderr.write(`Axlebook could not start.\n${explain(error)}\n`);
  process.exit(1);
});
