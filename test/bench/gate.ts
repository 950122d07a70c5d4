import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import pg from 'pg';
import type { createApp } from '../../src/app.js';
import type { readConfig } from '../../src/config.js';
import { Clock } from '../../src/http/clock.js';
import type { SignIn } from '../../src/http/sign-in/sign-in.js';
import { migrate } from '../../src/launch/migrate.js';
import { startPostgres } from '../../src/launch/postgres.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import type { FoundYard } from '../../src/use-cases/people/found-yard.js';
import { fillFleet } from '../support/fleet.js';

/**
 * How long the pages that show a whole yard take with 20 trailers and with 2,000, in turn in one run on this machine, and
 * the ratio of the two. The service is the compiled one, asked as a browser asks, without a network. Printed, not asserted.
 */
const FLEETS = [20, 2_000] as const;
const PAGES = ['/', '/?text=T-1', '/trailers', '/timeline', '/timeline?show=all&weeks=4'] as const;
const ROUNDS = 30;
const WARM_UP = 5;
const PASSWORD = 'only measured, never used';

interface Built {
  readonly createApp: typeof createApp;
  readonly readConfig: typeof readConfig;
  readonly SignIn: typeof SignIn;
  readonly FoundYard: typeof FoundYard;
}

/** Plain Node cannot run the service's decorators as they stand, so what was built is asked. */
async function built(): Promise<Built> {
  const files = ['app', 'config', 'http/sign-in/sign-in', 'use-cases/people/found-yard'];
  const loaded = await Promise.all(
    files.map((file) => import(new URL(`../../dist/src/${file}.js`, import.meta.url).href) as Promise<Built>),
  );
  return Object.assign({}, ...loaded);
}

class StandingClock extends Clock {
  override now(): Date {
    return new Date('2026-03-02T15:00:00Z');
  }
}

const folder = await mkdtemp(join(tmpdir(), 'axlebook-bench-'));
const server = await startPostgres(folder, { throwAway: true });
const owner = new pg.Pool({ connectionString: server.url, max: 1 });
try {
  await migrate(server.url);
  const { createApp, readConfig, SignIn, FoundYard } = await built();
  const config = readConfig({ LOG_LEVEL: 'silent' }).with({
    databaseUrl: server.url,
    dataDir: folder,
    secret: 'for this measurement only',
    baseUrl: 'http://yard.test',
  });
  const app = await createApp(config, { clock: new StandingClock() });
  await app.init();
  await app.getHttpAdapter().getInstance().ready();

  const cookies: string[] = [];
  for (const count of FLEETS) {
    const email = `owner@fleet${count}.example`;
    const id = await app.get(SignIn, { strict: false }).makePerson({ name: 'Owner', email, password: PASSWORD });
    const people = [{ id, name: 'Owner', email, role: 'owner' as const, cdl: null }];
    const yard = { name: `Fleet ${count}`, timeZone: 'America/Chicago', place: null, demo: false, people };
    const founded = await app.get(FoundYard, { strict: false }).run('page', yard);
    if (!founded.ok) throw new Error(JSON.stringify(founded.problem));
    await fillFleet(owner, founded.value.yardId, count, day('2026-03-02'));
    const answer = await app.inject({
      method: 'POST',
      url: '/sign-in',
      headers: { 'content-type': 'application/x-www-form-urlencoded', origin: 'http://yard.test', host: 'yard.test' },
      payload: new URLSearchParams({ email, password: PASSWORD }).toString(),
    });
    if (answer.statusCode !== 303) throw new Error(`no sign-in: ${answer.statusCode}`);
    cookies.push(answer.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; '));
  }

  const ask = async (page: string, yard: number): Promise<string> => {
    const answer = await app.inject({ url: page, headers: { host: 'yard.test', cookie: cookies[yard] as string } });
    if (answer.statusCode !== 200) throw new Error(`${page} answered ${answer.statusCode}`);
    return answer.body;
  };
  for (const page of PAGES) {
    const taken = FLEETS.map(() => [] as number[]);
    for (let round = 0; round < WARM_UP + ROUNDS; round++) {
      // In turn, so that a busy moment hits each alike.
      for (const yard of FLEETS.keys()) {
        const start = performance.now();
        await ask(page, yard);
        if (round >= WARM_UP) taken[yard]?.push(performance.now() - start);
      }
    }
    const [few = 0, many = 0] = taken.map((times) => times.sort((a, b) => a - b)[ROUNDS / 2] as number);
    const kb = gzipSync(await ask(page, 1)).length / 1_000;
    console.log(
      `${page.padEnd(28)} ${few.toFixed(1).padStart(7)} ms at 20, ${many.toFixed(1).padStart(7)} ms at 2,000 trailers: ` +
        `${(many / few).toFixed(2)} times; ${kb.toFixed(1)} kB compressed`,
    );
  }
  await app.close();
} finally {
  await owner.end();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
}
