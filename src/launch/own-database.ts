import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { startPostgres } from './postgres.js';

export interface OwnDatabase {
  readonly url: string;
  /** Gives the data folder free and stops its Postgres. Close every pool before. */
  readonly close: () => Promise<void>;
}

/** Another service works on the same data folder. The message says which and what to do. */
export class DataInUseError extends Error {
  override readonly name = 'DataInUseError';
}

/** What the service holds for as long as it runs. A session lock: Postgres frees it the moment the process is gone. */
const SERVICE_LOCK = "hashtext('axlebook service')";

/** How long to try when Postgres went away: recovery after a crash is a matter of seconds. */
const RESTART_TRIES = 20;

/**
 * Starts or adopts the Postgres in `dataDir` and holds that folder for this one service.
 *
 * While it is held, a Postgres that dies (killed, out of memory) is started again on the same port, so the service's
 * pools find it again. `onLost` is called when that does not work or another service took the folder meanwhile: the
 * service must stop then. Copies of the service that share one DATABASE_URL do not come here and need no lock.
 *
 * Throws DataInUseError when a service is running on the folder already.
 */
export const openOwnDatabase = async (dataDir: string, onLost: (reason: Error) => void): Promise<OwnDatabase> => {
  let server = await startPostgres(dataDir);
  let closing = false;
  const { url } = server;

  const hold = async (): Promise<pg.Client> => {
    const holder = await takeFolder(url, dataDir);
    holder.on('error', () => undefined);
    holder.once('end', () => {
      if (!closing) void regain();
    });
    return holder;
  };

  const regain = async (): Promise<void> => {
    for (let attempt = 1; !closing; attempt += 1) {
      try {
        server = await startPostgres(dataDir);
        if (server.url !== url) throw new DataInUseError('Postgres had to move to another port. Start Axlebook again.');
        holder = await hold();
        return;
      } catch (error) {
        if (error instanceof DataInUseError || attempt === RESTART_TRIES) return onLost(error as Error);
        await wait(250);
      }
    }
  };

  let holder = await hold();
  return {
    url,
    close: async () => {
      closing = true;
      await holder.end().catch(() => undefined);
      await server.stop();
    },
  };
};

const takeFolder = async (url: string, dataDir: string): Promise<pg.Client> => {
  const client = new pg.Client({ connectionString: url, application_name: `axlebook process ${process.pid}` });
  await client.connect();
  const { rows } = await client.query<{ taken: boolean }>(`select pg_try_advisory_lock(${SERVICE_LOCK}) as taken`);
  if (rows[0]?.taken) return client;
  const { rows: holders } = await client.query<{ application_name: string }>(
    `select application_name from pg_locks join pg_stat_activity using (pid)
     where locktype = 'advisory' and granted and objid = ${SERVICE_LOCK}::bit(32)::bigint::oid`,
  );
  await client.end();
  const who = holders[0] ? ` (${holders[0].application_name})` : '';
  throw new DataInUseError(
    `Axlebook is already running on the data in ${dataDir}${who}. ` +
      'Stop that one first, or set AXLEBOOK_DATA to another folder and PORT to another port.',
  );
};
