import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Browser, startApp, type TestApp } from '../support/app.js';
import { type Route, routesOf } from '../support/routes.js';
import { tableSums } from '../support/table-sums.js';
import { type YardByApi, yardByApi } from '../support/yard-by-api.js';

/** In every name of the other yard, and in nothing of mine. */
const MARK = 'Kestrel';

let service: TestApp;
let theirs: YardByApi;
let their: Browser;
let my: Browser;
/** Ids of theirs by the names of the routes' parameters. */
let ids: Readonly<Record<string, string>>;

beforeAll(async () => {
  service = await startApp();
  theirs = await yardByApi(service, MARK);
  const mine = await service.makeYard('Heron');
  their = await service.signedIn(theirs.yard.owner);
  await their.post('/people/invitations', { email: `guest@${MARK}.example`, role: 'viewer' });
  const people = (await their.get('/people')).body;
  ids = {
    ...theirs.ids,
    invitation: /\/people\/invitations\/([0-9a-f-]+)\/revoke/.exec(people)?.[1] ?? '',
    key: /\/people\/keys\/([0-9a-f-]+)\/revoke/.exec(people)?.[1] ?? '',
  };
  my = await service.signedIn(mine.owner);
});
afterAll(() => service.close());

test('every form of another yard, sent as its own people would fill it in, is refused and changes nothing', async () => {
  const before = await tableSums(service.databaseUrl, theirs.yard.yardId);
  const wrong: string[] = [];
  let filledIn = 0;
  for (const route of pageRoutes('POST').filter(({ path }) => path.includes(':'))) {
    const path = addressOf(route);
    const form = fieldsOf((await their.get(path)).body);
    if (form.length > 1) filledIn += 1;
    // Without their text: a form shown again quotes what was typed into it.
    const sent = [...form, ['reason', 'a reason']].map(([name, value]) => [name, value?.replaceAll(MARK, 'Heron')]);
    const answer = await my.post(path, sent as [string, string][]);
    const told = `${route.path} answered ${answer.status}`;
    if (![403, 404, 422].includes(answer.status)) wrong.push(told);
    if (answer.body.includes(MARK)) wrong.push(`${told} and told of theirs`);
  }
  expect(wrong).toEqual([]);
  expect(filledIn).toBeGreaterThan(12);
  expect(await tableSums(service.databaseUrl, theirs.yard.yardId)).toEqual(before);
});

test('a form of my own that names what is theirs is shown again, and shows nothing of it', async () => {
  const before = await tableSums(service.databaseUrl, theirs.yard.yardId);
  for (const path of ['/jobs/new', '/fit']) {
    const form = fieldsOf((await my.get(path)).body).filter(([name]) => !(name in NAMING_THEIRS));
    const named = Object.entries(NAMING_THEIRS).map(([name, id]) => [name, id(ids, theirs)] as const);
    const filled = [...form.filter(([name]) => name !== 'name' && name !== 'endsOn'), ...named];
    const answer = await my.post(path, [...filled, ['name', 'Over the fence'], ['endsOn', '2026-03-04']] as const);
    expect([path, answer.status]).toEqual([path, 422]);
    expect(answer.body, path).not.toContain(MARK);
  }
  expect(await tableSums(service.databaseUrl, theirs.yard.yardId)).toEqual(before);
});

test('a load check of my own that names what is theirs shows nothing of it', async () => {
  const named = `machine=${ids.machineId}&tow=${ids.towVehicleId}&mass=7400`;
  for (const trailer of ['', 'T-none', 'T-01']) {
    const answer = await my.get(`/load?trailer=${trailer}&${named}`);
    expect([trailer, answer.status]).toEqual([trailer, trailer === '' ? 200 : 422]);
    expect(answer.body).not.toContain(MARK);
  }
});

test('somebody who left sees no page of the yard, and sends no form', async () => {
  const left = await service.signedIn(theirs.yard.hand);
  expect((await left.get('/')).body).toContain(MARK);
  expect((await their.post(`/people/${theirs.yard.hand.id}/left`)).status).toBe(303);
  const before = await tableSums(service.databaseUrl, theirs.yard.yardId);
  for (const method of ['GET', 'POST'] as const) {
    for (const route of pageRoutes(method)) {
      const path = addressOf(route);
      const answer = method === 'GET' ? await left.get(path) : await left.post(path, { reason: 'a reason' });
      expect([`${method} ${route.path}`, answer.status]).toEqual([`${method} ${route.path}`, 303]);
      expect(answer.location, route.path).toBe('/first-run');
      expect(answer.body, route.path).not.toContain(MARK);
    }
  }
  expect(await tableSums(service.databaseUrl, theirs.yard.yardId)).toEqual(before);
});

const NAMING_THEIRS: Readonly<Record<string, (of: Readonly<Record<string, string>>, full: YardByApi) => string>> = {
  trailerNumber: () => 'T-none',
  machineId: (of) => of.machineId ?? '',
  towVehicleId: (of) => of.towVehicleId ?? '',
  haulerPersonId: (_, full) => full.yard.hand.id,
};

function pageRoutes(method: 'GET' | 'POST'): readonly Route[] {
  return routesOf(service.app).filter(
    (route) => route.method === method && !route.open && !route.path.startsWith('/api/'),
  );
}

/** A route with their ids in it. Whoever gives a route a parameter of a new name says here what stands for it. */
function addressOf({ path }: Route): string {
  return path.replace(/:(\w+)/g, (_, name: string) => {
    const id = name === 'id' ? (path.includes('/keys/') ? ids.key : ids.invitation) : ids[name];
    if (id === undefined || id === '') throw new Error(`${path}: nobody said what of theirs to put for :${name}`);
    return id;
  });
}

/** What the first form in the main part of a page holds, as a browser would send it untouched. */
function fieldsOf(page: string): readonly (readonly [string, string])[] {
  const main = /<main.*<\/main>/s.exec(page)?.[0] ?? '';
  const inside = /<form[^>]*>(.*?)<\/form>/s.exec(main)?.[1] ?? '';
  const inputs = [...inside.matchAll(/<input([^>]*)>/g)].flatMap(([, tag = '']) => {
    const type = attribute(tag, 'type') ?? 'text';
    if ((type === 'radio' || type === 'checkbox') && !/\bchecked\b/.test(tag)) return [];
    return type === 'file' || type === 'submit' ? [] : [[attribute(tag, 'name'), attribute(tag, 'value') ?? '']];
  });
  const areas = [...inside.matchAll(/<textarea([^>]*)>(.*?)<\/textarea>/gs)].map(([, tag = '', text = '']) => [
    attribute(tag, 'name'),
    text,
  ]);
  const selects = [...inside.matchAll(/<select([^>]*)>(.*?)<\/select>/gs)].map(([, tag = '', options = '']) => [
    attribute(tag, 'name'),
    /<option(?=[^>]*\bselected\b)[^>]*value="([^"]*)"/.exec(options)?.[1] ?? '',
  ]);
  return [...inputs, ...areas, ...selects].filter((field): field is [string, string] => field[0] !== null);
}

function attribute(tag: string, name: string): string | null {
  return new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? null;
}
