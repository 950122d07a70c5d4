import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEMO_PEOPLE } from '../../seeds/demo/people.js';
import { firstStart } from '../../src/first-start.js';
import { Database } from '../../src/store/database.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { startApp, type TestApp } from '../support/app.js';

let service: TestApp;
let said: string[];

/** Filling the demo yard takes seconds, on a machine busy with other tests minutes. */
const FILLING_MS = 300_000;

beforeAll(async () => {
  service = await startApp();
  // Two copies of the service that come up on one empty database.
  said = [];
  await Promise.all([1, 2].map(() => firstStart(service.app, service.databaseUrl, (line) => void said.push(line))));
}, FILLING_MS);
afterAll(() => service.close());

test('two copies starting at once make one demo yard and show its password once', async () => {
  expect(await service.app.get(Database).yardIds()).toHaveLength(1);
  expect(said.filter((line) => line.includes('password: '))).toHaveLength(1);
});

test('everybody of the demo yard signs in with what the terminal showed, each in their role', async () => {
  const password = /password: (\S+)/.exec(said.join('\n'))?.[1] ?? '';
  expect(password).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/);
  for (const { name, email, role } of DEMO_PEOPLE) {
    const browser = service.browser();
    expect((await browser.post('/sign-in', { email, password })).status, email).toBe(303);
    expect((await browser.get('/people')).body).toContain(`${name}, ${role}`);
  }
});

test('a later start says nothing, keeps the password and adds nothing', async () => {
  const [yardId = ''] = await service.app.get(Database).yardIds();
  const count = () =>
    service.app.get(Database).inYard(yardId, async (tx) => ({
      trailers: (await service.app.get(TrailerStore).list(tx)).length,
      trips: await tx.trip.count(),
      jobs: await tx.job.count(),
      checks: await tx.checkRecord.count(),
    }));
  const before = await count();
  expect(before.trailers).toBeGreaterThanOrEqual(12);
  const again: string[] = [];
  await firstStart(service.app, service.databaseUrl, (line) => void again.push(line));
  expect(again).toEqual([]);
  expect(await count()).toEqual(before);
  const password = /password: (\S+)/.exec(said.join('\n'))?.[1] ?? '';
  const owner = DEMO_PEOPLE[0];
  expect((await service.browser().post('/sign-in', { email: owner?.email ?? '', password })).status).toBe(303);
});

test('the demo does not stand in the way of the first real yard', async () => {
  expect((await service.browser().get('/first-run')).body).toContain('Set up the yard');
});
