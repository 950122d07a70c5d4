import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../src/rules/calendar/civil-date.js';
import { lb } from '../../src/rules/units/mass.js';
import { type ApiClient, clientOf } from '../support/api-client.js';
import { type Browser, startApp, type TestApp } from '../support/app.js';
import { aBuild, tiresOn } from '../support/trailers.js';

let service: TestApp;
let owner: Browser;
let viewer: Browser;
let client: ApiClient;
let today: Parameters<typeof addDays>[0];
const ids = new Map<string, string>();

/** Plates in pounds; each is 3,900 empty, and its axles, coupler and tires never come first. */
const PLATES = { 'P-8': 7_900, 'P-10': 13_900, 'P-14': 17_900, 'P-20': 23_900 };

beforeAll(async () => {
  service = await startApp();
  const yard = await service.makeYard('Ranking Field');
  owner = await service.signedIn(yard.owner);
  viewer = await service.signedIn(yard.viewer);
  client = await clientOf(service, yard, yard.owner);
  ({ today } = await client.must<{ today: typeof today }>('GET', '/api/me'));
  for (const [yardNumber, plate] of Object.entries(PLATES)) {
    const build = aBuild({ plate, axle: 15_000, coupler: 30_000 });
    const parts = tiresOn(2, { maxLoad: 7_500 });
    const { trailerId } = await add('trailers', { yardNumber, build, parts });
    ids.set(yardNumber, trailerId ?? '');
  }
});
afterAll(() => service.close());

const add = (what: string, body: object) => client.must<Record<string, string>>('POST', `/api/${what}`, body);
const roller = { 'load.cargo.0.name': 'Roller', 'load.cargo.0.mass': '10,500' };

/** The numbers of the cards, in the order they stand. */
function cardsIn(body: string): readonly (string | undefined)[] {
  const list = /<ol class="plain job-cards">(.*?)<\/ol>/s.exec(body)?.[1] ?? '';
  return [...list.matchAll(/class="plate-no"[^>]*>([^<]+)</g)].map(([, number]) => number);
}

test('Check fit without a trailer names those that could, the rest by reason', async () => {
  const { status, body } = await owner.post('/fit', { startsOn: today, ...roller });
  expect(status).toBe(200);
  expect(cardsIn(body)).toEqual(['P-14', 'P-20', 'P-10']);
  expect(body).toMatch(/Tightest: Plate \(GVWR\), 14,400 lb against 17,900 lb, 3,500 lb to spare/);
  expect(body).toContain('Passed over by what is on file: 1 too small.');
  expect(body).toContain('This is arithmetic on what was entered');
});

test('asked of the whole yard with a trailer named, it answers for the whole yard', async () => {
  const asked = { trailerNumber: 'P-10', startsOn: today, ...roller };
  expect(cardsIn((await owner.post('/fit', asked)).body)).toEqual([]);
  expect(cardsIn((await owner.post('/fit', { ...asked, ask: 'yard' })).body)).toEqual(['P-14', 'P-20', 'P-10']);
  const unknown = await owner.post('/fit', { ...asked, trailerNumber: 'P-99', ask: 'yard' });
  expect(unknown.status).toBe(422);
  expect(unknown.body).toContain('No trailer in service here has the number P-99');
});

test('a job that may not go on its trailer shows who could take it, and leads to a form with that one filled in', async () => {
  const trailerId = ids.get('P-10');
  const load = { cargo: [{ name: 'Roller', massKg: lb(10_500), basis: 'weighed' }] };
  const days = { startsOn: addDays(today, 3), endsOn: addDays(today, 4) };
  const { jobId } = await add('jobs', { name: 'Culvert', trailerId, ...days, load });
  const { body } = await owner.get(`/jobs/${jobId}`);
  expect(cardsIn(body)).toEqual(['P-14', 'P-20']);
  expect(body).toContain(`href="/jobs/${jobId}/trailers"`);
  expect(cardsIn((await owner.get(`/jobs/${jobId}/trailers`)).body)).toEqual(['P-14', 'P-20', 'P-10']);
  const change = `/jobs/${jobId}/change?trailer=P-14`;
  expect(body).toContain(`href="${change}"`);
  expect((await owner.get(change)).body).toMatch(/name="trailerNumber"[^>]*value="P-14"/);
  expect((await viewer.get(`/jobs/${jobId}/trailers`)).body).not.toContain('Give it the job');

  await add(`trailers/${trailerId}/holds`, { reason: 'hub is hot' });
  const held = (await owner.get(`/trailers/${trailerId}`)).body;
  expect(held).toContain('It breaks');
  expect(cardsIn(held)).toEqual(['P-14', 'P-20']);

  await add(`jobs/${jobId}/cancel`, {});
  expect((await owner.get(`/jobs/${jobId}/trailers`)).status).toBe(409);
});

test('a trailer outgrown by its machine leads to the one that should do its work', async () => {
  const trailerId = ids.get('P-8');
  const { machineId } = await add('machines', { name: 'Track loader', massKg: lb(9_000), basis: 'weighed' });
  await add(`trailers/${trailerId}/trips`, { startedOn: today, endedOn: today, machineId });
  const link = /href="([^"]*\/better\?flag=outgrown[^"]*)"/.exec((await owner.get(`/trailers/${trailerId}`)).body)?.[1];
  expect((await owner.get('/flags')).body).toContain(link);
  const { status, body } = await viewer.get(link ?? '');
  expect(status).toBe(200);
  expect(body).toContain('Outgrown by Track loader');
  expect(body).toContain('By weight, P-14 should do this work.');
  expect(cardsIn(body)[0]).toBe('P-14');
  const stale = await viewer.get(`/trailers/${trailerId}/better?flag=no-such-flag`);
  expect([stale.status, stale.body.includes('No such flag is up')]).toEqual([200, true]);
});
