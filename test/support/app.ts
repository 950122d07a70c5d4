import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { createApp } from '../../src/app.js';
import { type ConfigSettings, readConfig } from '../../src/config.js';
import { Clock } from '../../src/http/clock.js';
import { SignIn } from '../../src/http/sign-in/sign-in.js';
import type { Role } from '../../src/use-cases/caller.js';
import { FoundYard } from '../../src/use-cases/people/found-yard.js';
import { freshDatabase } from './database.js';

/** A clock that stands where a test puts it. */
export class StandingClock extends Clock {
  constructor(public at: Date) {
    super();
  }

  override now(): Date {
    return this.at;
  }
}

export const PASSWORD = 'chalk marks on the drawbar';

export interface Member {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
}

export interface YardOfTest {
  readonly yardId: string;
  readonly owner: Member;
  readonly shop: Member;
  readonly hand: Member;
  readonly viewer: Member;
}

export interface Answer {
  readonly status: number;
  readonly body: string;
  readonly location: string | undefined;
  readonly headers: Readonly<Record<string, unknown>>;
}

/** The whole service on a database of its own, reached as a browser or a program would. Call it in `beforeAll`. */
export async function startApp(settings: Partial<ConfigSettings> = {}) {
  const database = await freshDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'axlebook-app-'));
  const clock = new StandingClock(new Date('2026-03-02T15:00:00Z'));
  const log: string[] = [];
  const config = readConfig({ LOG_LEVEL: 'silent' }).with({
    databaseUrl: database.url,
    dataDir,
    secret: 'for tests only, never for anything else',
    baseUrl: 'http://yard.test',
    ...settings,
  });
  const app = await createApp(config, { clock, logTo: { write: (line) => void log.push(line) } });
  await app.init();
  await app.getHttpAdapter().getInstance().ready();

  return {
    app,
    clock,
    config,
    databaseUrl: database.url,
    /** Every line the service logged. */
    log,
    close: async () => {
      await app.close();
      await database.drop();
      await rm(dataDir, { recursive: true, force: true });
    },
    browser: () => new Browser(app),
    /** A browser that has signed in as somebody. */
    signedIn: async (who: { readonly email: string }) => {
      const browser = new Browser(app);
      // From an address of its own each time: tries from one address are counted.
      signIns += 1;
      const from = `10.0.${Math.floor(signIns / 250)}.${1 + (signIns % 250)}`;
      const answer = await browser.post('/sign-in', { email: who.email, password: PASSWORD }, { from });
      if (answer.status !== 303) throw new Error(`${who.email} could not sign in: ${answer.status}`);
      return browser;
    },
    /** A yard with one person of each role. They are new people unless given. */
    makeYard: (name: string) => makeYard(app, name),
    /** The mails written so far, newest last, as text. */
    mails: async () => {
      const folder = join(dataDir, 'mail');
      // A letter under way has a name of its own until it is whole.
      const names = (await readdir(folder).catch(() => [])).filter((one) => /^[^.].*\.eml$/.test(one)).sort();
      return Promise.all(names.map((one) => readFile(join(folder, one), 'utf8')));
    },
  };
}

export type TestApp = Awaited<ReturnType<typeof startApp>>;

let yards = 0;
let signIns = 0;

async function makeYard(app: NestFastifyApplication, name: string): Promise<YardOfTest> {
  const signIn = app.get(SignIn);
  yards += 1;
  const make = async (role: Role): Promise<Member> => {
    const email = `${role}${yards}@${name.toLowerCase().replace(/[^a-z]/g, '')}.example`;
    const id = await signIn.makePerson({ name: `${role} of ${name}`, email, password: PASSWORD });
    return { id, name: `${role} of ${name}`, email, role };
  };
  const [owner, shop, hand, viewer] = await Promise.all([make('owner'), make('shop'), make('hand'), make('viewer')]);
  const people = [owner, shop, hand, viewer].map((member) => ({ ...member, cdl: null }));
  const founded = await app
    .get(FoundYard)
    .run('page', { name, timeZone: 'America/Chicago', place: null, demo: false, people });
  if (!founded.ok) throw new Error(JSON.stringify(founded.problem));
  return { yardId: founded.value.yardId, owner, shop, hand, viewer };
}

interface RequestExtras {
  readonly headers?: Readonly<Record<string, string>>;
  /** Where the request comes from, as the sign-in counts it. */
  readonly from?: string;
}

/** Keeps cookies and sends forms the way a browser without script does. Follows no redirect by itself. */
export class Browser {
  readonly cookies = new Map<string, string>();

  constructor(private readonly app: NestFastifyApplication) {}

  get(path: string, extras: RequestExtras = {}): Promise<Answer> {
    return this.#send('GET', path, undefined, extras);
  }

  post(
    path: string,
    fields: Readonly<Record<string, string>> | readonly (readonly [string, string])[] = {},
    extras: RequestExtras = {},
  ): Promise<Answer> {
    const pairs = Array.isArray(fields) ? fields : Object.entries(fields);
    return this.#send('POST', path, new URLSearchParams(pairs as string[][]).toString(), {
      ...extras,
      headers: {
        'content-type': 'application/x-www-form-urlencoded',
        origin: 'http://yard.test',
        ...extras.headers,
      },
    });
  }

  async #send(
    method: 'GET' | 'POST',
    url: string,
    payload: string | undefined,
    { headers, from }: RequestExtras,
  ): Promise<Answer> {
    const cookie = [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const answer = await this.app.inject({
      method,
      url,
      headers: { host: 'yard.test', ...(cookie === '' ? {} : { cookie }), ...headers },
      ...(payload === undefined ? {} : { payload }),
      ...(from === undefined ? {} : { remoteAddress: from }),
    });
    for (const { name, value, maxAge } of answer.cookies as { name: string; value: string; maxAge?: number }[]) {
      if (maxAge === 0 || value === '') this.cookies.delete(name);
      else this.cookies.set(name, encodeURIComponent(value));
    }
    const { location } = answer.headers;
    return {
      status: answer.statusCode,
      body: answer.body,
      location: typeof location === 'string' ? location : undefined,
      headers: answer.headers,
    };
  }
}
