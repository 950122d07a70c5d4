import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lb } from '../../src/rules/units/mass.js';
import { type ApiClient, clientOf } from '../support/api-client.js';
import { startApp, type TestApp } from '../support/app.js';
import { aBuild, cargo, tiresOn } from '../support/trailers.js';

let service: TestApp;
let shop: ApiClient;
let trailerId: string;
let at: string;

interface Told {
  readonly rows: readonly { readonly fact: unknown; readonly standing: boolean; readonly [key: string]: unknown }[];
  readonly total: number;
}

beforeAll(async () => {
  service = await startApp();
  const yard = await service.makeYard('Heron');
  shop = await clientOf(service, yard, yard.owner);
  const trailer = { yardNumber: 'T-07', build: aBuild(), parts: tiresOn(2) };
  ({ trailerId } = await shop.must<{ trailerId: string }>('POST', '/api/trailers', trailer));
  at = `/api/trailers/${trailerId}`;
});
afterAll(() => service.close());

const readiness = async () => (await shop.must<{ assessment: { readiness: string } }>('GET', at)).assessment.readiness;

describe('told through the API', () => {
  test('a trip corrected and then taken back stays in the history, and counts no more', async () => {
    const trip = {
      startedOn: '2026-02-20',
      endedOn: '2026-02-20',
      distanceKm: 80,
      load: { cargo: [cargo('rock', 6_000)] },
    };
    const { tripId } = await shop.must<{ tripId: string }>('POST', `${at}/trips`, trip);
    const better = await shop.must<{ tripId: string }>('POST', `${at}/trips/${tripId}/correct`, {
      ...trip,
      distanceKm: 90,
    });
    await shop.must('POST', `${at}/trips/${better.tripId}/withdraw`, { reason: 'it was T-08' });
    const { rows, total } = await shop.must<Told>('GET', `${at}/trips`);
    expect(total).toBe(3);
    expect(
      rows.map(({ fact, standing, door }) => [(fact as { distanceKm?: number } | null)?.distanceKm, standing, door]),
    ).toEqual(
      expect.arrayContaining([
        [80, false, 'api'],
        [90, false, 'api'],
        [undefined, false, 'api'],
      ]),
    );
    expect((await shop.must<{ trips: unknown[] }>('GET', `${at}/facts`)).trips).toEqual([]);
    expect((await shop.send('POST', `${at}/trips/${tripId}/correct`, trip)).status).toBe(404);
  });

  test('an overload puts a flag up at once, in the answer and in the list', async () => {
    const { raised } = await shop.must<{ raised: { rule: string }[] }>('POST', `${at}/trips`, {
      startedOn: '2026-02-24',
      endedOn: '2026-02-24',
      load: { cargo: [cargo('roller', 12_000)], scale: { grossKg: lb(15_900) } },
    });
    expect(raised.map((flag) => flag.rule)).toContain('over-plate');
    const flags = await shop.must<{ rows: { trailer: { number: string } }[] }>('GET', '/api/flags?rule=over-plate');
    expect(flags.rows.map((row) => row.trailer.number)).toEqual(['T-07']);
  });

  test('a hold keeps the trailer down until somebody says why it may go', async () => {
    const { holdId } = await shop.must<{ holdId: string }>('POST', `${at}/holds`, { reason: 'ramp bent' });
    expect(await readiness()).toBe('down');
    const silent = await shop.send('POST', `${at}/holds/${holdId}/lift`, {});
    expect(silent).toMatchObject({ status: 422, json: { problem: { fields: [{ field: 'reason' }] } } });
    await shop.must('POST', `${at}/holds/${holdId}/lift`, { reason: 'straightened and tried' });
    expect(await readiness()).not.toBe('down');
    expect(await shop.send('POST', `${at}/holds/${holdId}/lift`, { reason: 'again' })).toMatchObject({
      status: 409,
      json: { problem: { kind: 'conflict' } },
    });
  });

  test('a job is booked, moved, finished, and its trip stands in its place', async () => {
    const job = { name: 'Hollow Rd', trailerId, startsOn: '2026-03-02', endsOn: '2026-03-03', distanceKm: 60 };
    const { jobId } = await shop.must<{ jobId: string }>('POST', '/api/jobs', job);
    await shop.must('PATCH', `/api/jobs/${jobId}`, { endsOn: '2026-03-04' });
    const read = await shop.must<{ job: object; fit: { verdict: string } }>('GET', `/api/jobs/${jobId}`);
    expect(read).toMatchObject({ job: { endsOn: '2026-03-04', distanceKm: 60 }, fit: { verdict: expect.any(String) } });
    const { tripId } = await shop.must<{ tripId: string }>('POST', `/api/jobs/${jobId}/finish`, {});
    const { trips } = await shop.must<{ trips: object[] }>('GET', `${at}/facts`);
    expect(trips).toContainEqual(expect.objectContaining({ id: tripId, jobId, distanceKm: 60 }));
    expect((await shop.must<{ job: object }>('GET', `/api/jobs/${jobId}`)).job).toMatchObject({ state: 'done' });
  });

  test('what is kept and answered is what the same facts come to when built anew', async () => {
    const kept = await shop.must('GET', at);
    expect(await shop.must('POST', '/api/results/rebuild', {})).toEqual({ rebuilt: 1 });
    expect(await shop.must('GET', at)).toEqual(kept);
  });

  test('every change is in the trailer’s history under the name of whose key it was', async () => {
    const { rows } = await shop.must<{ rows: { who: string; door: string; action: string }[] }>('GET', `${at}/history`);
    expect(rows.every(({ who, door }) => who === 'owner of Heron' && door === 'api')).toBe(true);
    expect(rows.map(({ action }) => action)).toEqual(
      expect.arrayContaining(['add-trailer', 'correct-trip', 'withdraw-trip', 'lift-hold', 'finish-job']),
    );
  });
});
