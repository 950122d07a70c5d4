import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { firstStart } from '../../src/first-start.js';
import { type Browser, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { type Route, routesOf } from '../support/routes.js';

/** Where the ids of a route's parameter come from. Whoever adds a parameter adds it here, or the walk stops. */
const TABLE_OF: Readonly<Record<string, string>> = {
  buildSheetId: 'build_sheet',
  checkKindId: 'check_kind',
  checkRecordId: 'check_record',
  handoverId: 'handover',
  holdId: 'hold',
  invitationId: 'invitation',
  jobId: 'job',
  keyId: 'api_token',
  machineId: 'machine',
  noticeId: 'notice',
  partId: 'part',
  personId: 'membership',
  photoId: 'check_photo',
  readingId: 'meter_reading',
  towVehicleId: 'tow_vehicle',
  trailerId: 'trailer',
  tripId: 'trip',
};

let service: TestApp;
let owner: pg.Pool;
let mine: YardOfTest;
let theirYard: string;
/** One row's id for each parameter. */
const theirs: Record<string, string> = {};
let myTrailer: string;
/** What only their yard knows. */
let secrets: readonly string[];
let browser: Browser;
let key: string;

/** Filling the demo yard takes seconds, on a machine busy with other tests minutes. */
const FILLING_MS = 300_000;

beforeAll(async () => {
  service = await startApp();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 2 });
  // Theirs is the demo yard, with a row of everything; mine has a trailer and nothing else.
  const said: string[] = [];
  await firstStart(service.app, service.databaseUrl, (line) => void said.push(line));
  theirYard = String((await owner.query('select id from yard')).rows[0]?.id);
  await fillTheRest(/password: (\S+)/.exec(said.join('\n'))?.[1] ?? '');
  mine = await service.makeYard('Mine');
  const made = await owner.query(
    `insert into trailer (id, yard_id, yard_number) values (gen_random_uuid(), $1, 'M-1') returning id`,
    [mine.yardId],
  );
  myTrailer = made.rows[0].id;
  for (const [param, table] of Object.entries(TABLE_OF)) {
    const column = param === 'personId' ? 'person_id' : 'id';
    const { rows } = await owner.query(`select ${column} as id from ${table} where yard_id = $1 limit 1`, [theirYard]);
    if (rows[0] === undefined) throw new Error(`their yard has no ${table} to reach for`);
    theirs[param] = rows[0].id;
  }
  secrets = await whatTheyKnow();
  browser = await service.signedIn(mine.owner);
  key =
    /class="secret">(axlebook_[\w-]+)</.exec((await browser.post('/people/keys', { keyName: 'walk' })).body)?.[1] ?? '';
}, FILLING_MS);
afterAll(async () => {
  await owner.end();
  await service.close();
});

/** What the demo has none of: an invitation, a key, a notice and a photo. */
async function fillTheRest(password: string): Promise<void> {
  const their = service.browser();
  await their.post('/sign-in', { email: 'ines@harrowcreek.example', password });
  await their.post('/people/invitations', { email: 'guest@harrowcreek.example', role: 'viewer' });
  await their.post('/people/keys', { keyName: 'their scale' });
  await owner.query(
    `insert into check_photo (id, yard_id, check_record_id, media_type, bytes)
     select gen_random_uuid(), yard_id, id, 'image/png', '\\x89504e47'::bytea from check_record where yard_id = $1 limit 1`,
    [theirYard],
  );
}

async function whatTheyKnow(): Promise<readonly string[]> {
  const { rows } = await owner.query<{ secret: string }>(
    `select name as secret from membership where yard_id = $1
     union select email from membership where yard_id = $1
     union select name from yard where id = $1
     union select name from trailer where yard_id = $1 and name is not null
     union select vin from trailer where yard_id = $1 and vin is not null
     union select name from machine where yard_id = $1
     union select name from job where yard_id = $1
     union select reason from hold where yard_id = $1
     union select customer from handover where yard_id = $1
     union select email from invitation where yard_id = $1`,
    [theirYard],
  );
  return rows.map(({ secret }) => secret);
}

async function tablesWithYards(): Promise<readonly string[]> {
  const { rows } = await owner.query<{ table: string }>(
    `select table_name as table from information_schema.columns
     where table_schema = 'public' and column_name = 'yard_id' and table_name <> 'session' order by 1`,
  );
  return rows.map(({ table }) => table);
}

/** One line for all that a yard keeps: any change of any row changes it. */
async function fingerprint(yardId: string): Promise<Record<string, string>> {
  const prints: Record<string, string> = {};
  for (const table of await tablesWithYards()) {
    const { rows } = await owner.query(
      `select count(*) || ' ' || coalesce(md5(string_agg(md5(t::text), '' order by md5(t::text))), '') as print
       from ${table} t where yard_id = $1`,
      [yardId],
    );
    prints[table] = rows[0].print;
  }
  return prints;
}

function paramsOf({ path }: Route): readonly string[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => {
    if (name === 'id') return path.includes('/keys/') ? 'keyId' : 'invitationId';
    return name ?? '';
  });
}

/** Their id everywhere, and then for each nested id mine in front of it: my trailer, their trip. */
function addressesOf(route: Route): readonly string[] {
  const params = paramsOf(route);
  const fill = (idOf: (param: string, place: number) => string) => {
    let place = -1;
    return route.path.replace(/:\w+/g, () => {
      place += 1;
      return idOf(params[place] ?? '', place);
    });
  };
  const all = fill((param) => theirs[param] ?? '');
  if (params.length < 2) return [all];
  return [all, fill((param, place) => (place === 0 && param === 'trailerId' ? myTrailer : (theirs[param] ?? '')))];
}

/** Every field that may name a row, naming one of theirs. */
const REFERENCES = [
  ...[
    'trailerId',
    'machineId',
    'jobId',
    'checkKindId',
    'checkRecordId',
    'towVehicleId',
    'personId',
    'tripId',
    'partId',
  ],
  ...['holdId', 'handoverId', 'buildSheetId', 'readingId', 'noticeId'],
];

function body(): Record<string, string> {
  const fields: Record<string, string> = {
    yardId: theirYard,
    name: 'From next door',
    reason: 'Reached over the fence',
  };
  for (const name of REFERENCES) fields[name] = theirs[name] ?? '';
  for (const name of ['haulerPersonId', 'ownerPersonId', 'backupPersonId']) fields[name] = theirs.personId ?? '';
  return { ...fields, replacesMachineId: theirs.machineId ?? '', correctsId: theirs.tripId ?? '' };
}

async function ask({ method }: Route, url: string): Promise<{ status: number; body: string }> {
  const isApi = url.startsWith('/api/');
  if (!isApi) return method === 'GET' ? browser.get(url) : browser.post(url, body());
  const answer = await service.app.inject({
    method: method as 'GET',
    url,
    headers: { authorization: `Bearer ${key}` },
    ...(method === 'GET' ? {} : { payload: body() }),
  });
  return { status: answer.statusCode, body: answer.body };
}

function closedRoutes(): readonly Route[] {
  // A computation belongs to no yard: it reads what is sent and nothing else.
  return routesOf(service.app).filter((route) => !route.open && !route.path.startsWith('/api/calc'));
}

test('every parameter of every route is one the walk knows', () => {
  const unknown = closedRoutes()
    .flatMap(paramsOf)
    .filter((param) => !(param in TABLE_OF));
  expect(unknown).toEqual([]);
});

test('no route shows or changes anything of another yard, whatever ids it is handed', async () => {
  const before = await fingerprint(theirYard);
  const wrong: string[] = [];
  let asked = 0;
  for (const route of closedRoutes()) {
    for (const url of addressesOf(route)) {
      const answer = await ask(route, url);
      asked += 1;
      const told = `${route.method} ${route.path} answered ${answer.status}`;
      const named = route.path.includes(':');
      if (answer.status >= 500) wrong.push(told);
      else if (named && route.method === 'GET' && answer.status !== 404) wrong.push(told);
      else if (named && answer.status < 400) wrong.push(told);
      const shown = secrets.filter((secret) => answer.body.includes(secret));
      if (shown.length > 0) wrong.push(`${told} and showed ${shown.join(', ')}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(asked).toBeGreaterThan(100);
  expect(await fingerprint(theirYard)).toEqual(before);
});

test('lists that take an id to narrow them show nothing of another yard', async () => {
  const query = new URLSearchParams(body()).toString();
  for (const route of closedRoutes().filter(({ method, path }) => method === 'GET' && !path.includes(':'))) {
    const answer = await ask(route, `${route.path}?${query}`);
    expect(answer.status, route.path).toBeLessThan(500);
    expect(
      secrets.filter((secret) => answer.body.includes(secret)),
      route.path,
    ).toEqual([]);
  }
});

test('after the walk nothing in my yard names a row of theirs', async () => {
  const ids = Object.values(theirs);
  for (const table of await tablesWithYards()) {
    const { rows } = await owner.query(
      `select t::text as row from ${table} t where yard_id = $1 and exists (select from unnest($2::text[]) id where t::text like '%' || id || '%')`,
      [mine.yardId, ids],
    );
    expect(rows, table).toEqual([]);
  }
});

test('a key opens its own yard alone, and the session of one yard does not follow into another', async () => {
  const answer = await service.app.inject({ url: '/api/trailers', headers: { authorization: `Bearer ${key}` } });
  expect(answer.statusCode).toBe(200);
  expect(answer.body).toContain('M-1');
  expect((await browser.post('/people/switch-yard', { yardId: theirYard })).status).toBe(404);
  expect((await browser.get('/people')).body).toContain('owner of Mine');
});
