import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ApiClient, clientOf } from '../support/api-client.js';
import { startApp, type TestApp } from '../support/app.js';
import { routesOf } from '../support/routes.js';
import { tableSums } from '../support/table-sums.js';
import { pathOf, type YardByApi, yardByApi } from '../support/yard-by-api.js';

/** In every name of the other yard, and in nothing of mine. */
const MARK = 'Kestrel';

let service: TestApp;
let theirs: YardByApi;
let mine: YardByApi;
let before: Record<string, string>;

beforeAll(async () => {
  service = await startApp();
  theirs = await yardByApi(service, MARK);
  mine = await yardByApi(service, 'Heron');
  before = await tableSums(service.databaseUrl, theirs.yard.yardId);
});
afterAll(() => service.close());

const apiRoutes = () => routesOf(service.app).filter(({ path }) => path.startsWith('/api/'));
const readings = () => apiRoutes().filter(({ method, path, open }) => method === 'GET' && !open && !isOfNoYard(path));

/** A computation belongs to no yard: it reads what is sent and nothing else. */
const isOfNoYard = (path: string) => path.startsWith('/api/calc');

/** What was answered, when it may not be: anything but a refusal, or a refusal that tells of theirs. */
function wrongIn(route: string, answer: { status: number; text: string }, refusals: readonly number[]): string[] {
  const told = `${route} answered ${answer.status}: ${answer.text.slice(0, 200)}`;
  return refusals.includes(answer.status) && !answer.text.includes(MARK) ? [] : [told];
}

describe('with a key of one yard', () => {
  test('nothing of another is read, by any of its ids', async () => {
    const wrong: string[] = [];
    let asked = 0;
    for (const { path } of readings().filter(({ path }) => path.includes(':'))) {
      asked += 1;
      wrong.push(...wrongIn(path, await mine.owner.send('GET', pathOf(path, theirs.ids)), [404]));
    }
    expect(wrong).toEqual([]);
    expect(asked).toBeGreaterThan(10);
  });

  test('no list shows anything of another', async () => {
    for (const { path } of readings().filter(({ path }) => !path.includes(':'))) {
      const answer = await mine.owner.send('GET', path);
      expect(answer.status, path).toBe(200);
      expect(answer.text, path).not.toContain(MARK);
    }
  });

  test('an id of another yard is answered as one that nobody has', async () => {
    const nobody = Object.fromEntries(
      Object.keys(theirs.ids).map((name) => [name, '0197a000-0000-7000-8000-000000000000']),
    );
    for (const { path } of readings().filter(({ path }) => path.includes(':'))) {
      const answers = [theirs.ids, nobody].map((ids) => mine.owner.send('GET', pathOf(path, ids)));
      const [their, none] = await Promise.all(answers);
      expect([their?.status, their?.text], path).toEqual([none?.status, none?.text]);
    }
  });

  test('nothing of another is changed, by a request that its own owner could make', async () => {
    const wrong: string[] = [];
    const routes = new Set<string>();
    for (const { method, route, params, body } of theirs.writings) {
      if (isOfNoYard(route)) continue;
      const names = JSON.stringify({ ...params, ...body });
      if (!Object.values(theirs.ids).some((id) => names.includes(id)) && Object.keys(params).length === 0) continue;
      routes.add(`${method} ${route}`);
      // Their text is in what I send, and a refusal may quote it back to me; so it is sent without.
      const sent = JSON.parse(JSON.stringify(body).replaceAll(MARK, 'Heron')) as object;
      wrong.push(
        ...wrongIn(`${method} ${route}`, await mine.owner.send(method, pathOf(route, params), sent), [404, 422]),
      );
    }
    expect(wrong).toEqual([]);
    const named = apiRoutes().filter(({ method, path }) => method !== 'GET' && path.includes(':') && !isOfNoYard(path));
    expect([...routes]).toEqual(expect.arrayContaining(named.map(({ method, path }) => `${method} ${path}`)));
    expect(await tableSums(service.databaseUrl, theirs.yard.yardId)).toEqual(before);
  });

  test('nothing of mine comes to name anything of theirs', async () => {
    const wrong: string[] = [];
    for (const { method, route, params, body } of mine.writings) {
      for (const [field, foreign] of withTheirIds(body)) {
        const answer = await mine.owner.send(method, pathOf(route, params), foreign);
        wrong.push(...wrongIn(`${method} ${route} with their ${field}`, answer, [404, 422]));
      }
    }
    expect(wrong).toEqual([]);
    expect(await tableSums(service.databaseUrl, theirs.yard.yardId)).toEqual(before);
  });
});

describe('a key that is none any more', () => {
  test('opens nothing once it is taken back, and once its person has left', async () => {
    const { yard } = theirs;
    const revoked = await clientOf(service, yard, yard.shop);
    const browser = await service.signedIn(yard.owner);
    const page = (await browser.get('/people')).body;
    const keyIds = [...page.matchAll(/\/people\/keys\/([0-9a-f-]+)\/revoke/g)].map(([, id]) => id);
    // The owner's own key is among them: it is taken back too, and is walked with below.
    for (const id of keyIds) expect((await browser.post(`/people/keys/${id}/revoke`)).status).toBe(303);
    const orphaned = await clientOf(service, yard, yard.hand);
    const left = await browser.post(`/people/${yard.hand.id}/left`);
    expect(left.status).toBe(303);
    const after = await tableSums(service.databaseUrl, yard.yardId);

    const made = ['axlebook_no-such-key', null].map((key) => new ApiClient(service.app, key));
    for (const client of [revoked, orphaned, theirs.owner, ...made]) {
      for (const { method, path, open } of apiRoutes()) {
        if (open) continue;
        const body = theirs.writings.find(({ route }) => route === path)?.body ?? {};
        const answer = await client.send(method, pathOf(path, theirs.ids), method === 'GET' ? undefined : body);
        expect([`${method} ${path}`, answer.status]).toEqual([`${method} ${path}`, 401]);
        expect(answer.text).not.toContain(MARK);
      }
    }
    expect(await tableSums(service.databaseUrl, yard.yardId)).toEqual(after);
  });

  test('a viewer’s key reads and changes nothing', async () => {
    const viewer = await clientOf(service, mine.yard, mine.yard.viewer);
    const sums = await tableSums(service.databaseUrl, mine.yard.yardId);
    for (const { method, route, params, body } of mine.writings) {
      const answer = await viewer.send(method, pathOf(route, params), body);
      // Asking whether a load fits, and working something out, keep nothing.
      const keepsNothing = route.startsWith('/api/fit') || isOfNoYard(route);
      expect([route, answer.status]).toEqual([route, keepsNothing ? 200 : 403]);
    }
    expect(await tableSums(service.databaseUrl, mine.yard.yardId)).toEqual(sums);
  });
});

/** The body with one of its ids at a time put to what is theirs of the same kind. */
function withTheirIds(body: Readonly<Record<string, unknown>>): readonly (readonly [string, object])[] {
  const ids: Readonly<Record<string, string>> = {
    ...theirs.ids,
    haulerPersonId: theirs.yard.hand.id,
    byPersonId: theirs.yard.shop.id,
    ownerPersonId: theirs.yard.shop.id,
    backupPersonId: theirs.yard.hand.id,
  };
  const own = Object.keys(body)
    .filter((field) => field.endsWith('Id'))
    .map((field) => {
      const id = ids[field];
      if (id === undefined) throw new Error(`nobody said what of theirs to put for ${field}`);
      return [field, { ...body, [field]: id }] as const;
    });
  const load = body.load as { readonly cargo: readonly object[] } | undefined;
  if (load === undefined) return own;
  const cargo = load.cargo.map((item, place) => (place === 0 ? { ...item, machineId: theirs.ids.machineId } : item));
  return [...own, ['load.cargo[0].machineId', { ...body, load: { ...load, cargo } }]];
}
