import { gzipSync } from 'node:zlib';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { stylesheet } from '../../src/pages/assets/stylesheet.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import { type Browser, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { fillFleet } from '../support/fleet.js';

/** The day of the service's standing clock. */
const TODAY = day('2026-03-02');
const TRAILERS = 300;

let service: TestApp;
let owner: pg.Pool;
let yard: YardOfTest;
let hand: Browser;

beforeAll(async () => {
  service = await startApp();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 1 });
  yard = await service.makeYard('Fleet');
  await fillFleet(owner, yard.yardId, TRAILERS, TODAY);
  hand = await service.signedIn(yard.hand);
});
afterAll(async () => {
  await owner.end();
  await service.close();
});

async function page(path: string): Promise<string> {
  const answer = await hand.get(path);
  expect([path, answer.status]).toEqual([path, 200]);
  return answer.body;
}

/** The numbers painted on the trailers of the main part, in the order they stand. */
function numbersOn(body: string): readonly string[] {
  const main = /<main.*<\/main>/s.exec(body)?.[0] ?? '';
  return [...main.matchAll(/<a class="plate-no"[^>]*>([^<]+)</g)].map(([, number = '']) => number);
}

/** The count beside a heading. */
function countOf(body: string, heading: string): number {
  return Number(
    new RegExp(`id="${heading}"[^>]*>[^<]*<span class="count">([\\d,]+)<`).exec(body)?.[1]?.replace(',', ''),
  );
}

/** The count of trailers in a state of readiness. */
function tallyOf(body: string, word: string): number {
  return Number(new RegExp(`<b>(\\d+)</b>\\s*${word}`).exec(body)?.[1]);
}

describe('the gate of a yard of three hundred', () => {
  test('counts what goes out, comes back and is held, and shows the first of each', async () => {
    const body = await page('/');
    // Every fifth of 300 leaves within seven days; T-5 n leaves on day n modulo 7, so nine of sixty leave today: n = 0 is
    // no trailer, and n = 7, 14 … 56 are eight.
    expect(countOf(body, 'out-today')).toBe(8);
    expect(countOf(body, 'out-week')).toBe(52);
    // Every tenth comes back within seven days, each out for four days already.
    expect(countOf(body, 'back')).toBe(30);
    expect(countOf(body, 'held')).toBe(7);
    expect(body.match(/class="sheet job-card /g)).toHaveLength(12);
    expect([tallyOf(body, 'Ready'), tallyOf(body, 'Fix first'), tallyOf(body, 'Down')]).toEqual([195, 98, 7]);
  });

  test('works out no more fits than it shows, and turns the page for the rest', async () => {
    const last = await page('/?page=5');
    expect(last.match(/class="sheet job-card /g)).toHaveLength(12);
    expect(await page('/?page=6')).not.toContain('class="sheet job-card ');
    expect(countOf(last, 'out-today')).toBe(8);
    expect(last).toContain('They are on another page.');
  });

  test('is found by number, plate, class and readiness, each list alike', async () => {
    const number = await page('/?text=t-35');
    expect(countOf(number, 'found')).toBe(1);
    expect(countOf(number, 'out-week') + countOf(number, 'out-today')).toBe(1);
    expect(number).toContain('Out 35');
    expect(numbersOn(await page('/?text=PL+1042'))).toContain('T-42');
    const down = await page('/?readiness=down');
    expect(countOf(down, 'found')).toBe(7);
    expect(countOf(down, 'held')).toBe(7);
    // Trailers on hold are every fortieth, and all of these have a job.
    expect(countOf(down, 'out-today') + countOf(down, 'out-week')).toBe(7);
    const heavy = await page('/?class=heavy');
    expect(countOf(heavy, 'found')).toBe(100);
    expect(tallyOf(heavy, 'Ready') + tallyOf(heavy, 'Fix first') + tallyOf(heavy, 'Down')).toBe(100);
    expect(await page('/?text=100%25')).toContain('No trailer is like that');
  });

  test('a filter nobody offered, and a page that is none, show the whole yard', async () => {
    const body = await page('/?class=feather&readiness=perfect&page=-3');
    expect(countOf(body, 'out-week')).toBe(52);
    expect(body).not.toContain('id="found"');
  });

  test('the first view stays small', async () => {
    for (const path of ['/', '/trailers', '/timeline?show=all&weeks=4']) {
      const sent = gzipSync(await page(path)).length + gzipSync(stylesheet().body).length;
      expect([path, sent < 60_000]).toEqual([path, true]);
    }
  });
});

describe('the trailers of a yard of three hundred', () => {
  test('stand fifty to a page in the order of their numbers', async () => {
    expect(numbersOn(await page('/trailers')).slice(0, 3)).toEqual(['T-1', 'T-2', 'T-3']);
    expect(numbersOn(await page('/trailers?page=6'))).toEqual(Array.from({ length: 50 }, (_, n) => `T-${251 + n}`));
  });

  test('the counts are of those like the search, whatever their readiness', async () => {
    // T-3, T-30 to T-39 and T-300: of these 3, 30, 33, 36, 39, 300 are due, none is a fortieth.
    const body = await page('/trailers?text=T-3&class=light&readiness=due');
    expect(numbersOn(body)).toContain('T-3');
    expect(tallyOf(body, 'Fix first')).toBeGreaterThan(0);
    expect(tallyOf(body, 'Ready')).toBe(0);
    expect(new Set(numbersOn(body)).size).toBe(tallyOf(body, 'Fix first'));
  });
});

describe('the time line', () => {
  test('shows trailers with a job or a hold, twenty to a page, and all when asked', async () => {
    const busy = await page('/timeline');
    expect(busy.match(/<tbody/g)).toHaveLength(20);
    // Every fifth and the neighbour of every tenth; those on hold are among the first.
    expect(numbersOn(busy).slice(0, 3)).toEqual(['T-1', 'T-5', 'T-10']);
    expect(busy).toContain('Page 1 of 5');
    expect(await page('/timeline?show=all')).toContain('Page 1 of 15');
  });

  test('a job lies on its days, and one booked on the same days stands below it and says so', async () => {
    const id = (await owner.query(`select id from trailer where yard_number = 'T-5'`)).rows[0].id;
    await owner.query(
      `insert into job (id, yard_id, trailer_id, name, starts_on, ends_on, scale_axle_n, door)
       values (gen_random_uuid(), $1, $2, 'Second on it', $3::date + 2, $3::date + 2, '{}', 'seed')`,
      [yard.yardId, id, TODAY],
    );
    const body = await page('/timeline?text=T-5');
    const lane = new RegExp(`<tbody data-trailer="${id}".*?</tbody>`, 's').exec(body)?.[0] ?? '';
    expect(lane.match(/<tr/g)?.length).toBeGreaterThanOrEqual(2);
    expect(lane).toContain('shares days with another job');
    // Out 5 starts tomorrow and takes three days.
    expect(lane).toMatch(/<td colspan="3"><a class="lane-job"[^>]*>Out 5</);
    await owner.query(`delete from job where name = 'Second on it'`);
  });

  test('other days and lengths have an address; nonsense means today and two weeks', async () => {
    expect((await page('/timeline?from=2026-03-16&weeks=3')).match(/<th scope="col"/g)).toHaveLength(22);
    expect((await page('/timeline?from=yesterday&weeks=300')).match(/<th scope="col"/g)).toHaveLength(15);
    expect((await page('/timeline?from=9026-03-16')).match(/<th scope="col"/g)).toHaveLength(15);
  });

  test('a viewer sees it, and is offered no move', async () => {
    const viewer = await service.signedIn(yard.viewer);
    const body = (await viewer.get('/timeline')).body;
    expect(body).toContain('class="lanes');
    expect(body).not.toContain('/move');
    expect(body).not.toContain('data-island="timeline"');
  });
});

describe('moving a job', () => {
  const jobOf = async (name: string) => {
    const { rows } = await owner.query(`select id, trailer_id from job where name = $1`, [name]);
    return rows[0] as { readonly id: string; readonly trailer_id: string };
  };
  const trailerOf = async (number: string) =>
    String((await owner.query(`select id from trailer where yard_number = $1`, [number])).rows[0]?.id);

  test('trailers are offered a few at a time, each with its answer', async () => {
    const job = await jobOf('Out 15');
    const body = await page(`/jobs/${job.id}/move?text=T-2`);
    expect(body.match(/class="sheet job-card /g)).toHaveLength(8);
    expect(body.match(/class="mark mark-/g)).toHaveLength(8);
    expect(await page(`/jobs/${job.id}/move?text=T-15`)).toContain('It has this job now');
  });

  test('to a free trailer it goes at once, and back to where it was asked from', async () => {
    const job = await jobOf('Out 15');
    const to = await trailerOf('T-17');
    const answer = await hand.post(`/jobs/${job.id}/move/${to}`, { back: '/timeline?weeks=3' });
    expect([answer.status, answer.location]).toEqual([303, '/timeline?weeks=3&said=job-moved']);
    expect((await jobOf('Out 15')).trailer_id).toBe(to);
  });

  test('to one that is out on the same days only after somebody has seen it and says so', async () => {
    const job = await jobOf('Out 25');
    const to = await trailerOf('T-60');
    const first = await hand.post(`/jobs/${job.id}/move/${to}`, { back: 'https://elsewhere.example/' });
    expect(first.status).toBe(409);
    expect(first.body).toContain('Booked on these days: Out 60');
    expect((await jobOf('Out 25')).trailer_id).toBe(await trailerOf('T-25'));
    const then = await hand.post(`/jobs/${job.id}/move/${to}`, { back: 'https://elsewhere.example/', despite: 'yes' });
    expect([then.status, then.location]).toEqual([303, `/jobs/${job.id}?said=job-moved`]);
    expect((await jobOf('Out 25')).trailer_id).toBe(to);
  });

  test('the answer asked for while dragging is the one of the page, and nobody may move what is not theirs to', async () => {
    const job = await jobOf('Out 45');
    const down = await trailerOf('T-40');
    const short = JSON.parse(await page(`/jobs/${job.id}/move/${down}/answer`));
    expect(short.verdict).toBe('no-go');
    expect(await page(`/jobs/${job.id}/move/${down}`)).toContain('Move it all the same');
    const viewer = await service.signedIn(yard.viewer);
    expect((await viewer.get(`/jobs/${job.id}/move/${down}`)).status).toBe(403);
    expect((await viewer.post(`/jobs/${job.id}/move/${down}`, { despite: 'yes' })).status).toBe(403);
  });

  test('on another trailer the load weighs the same, and where it sat is no longer said', async () => {
    const job = await jobOf('Out 55');
    await owner.query(
      `insert into job_cargo (yard_id, job_id, place, name, mass_kg, basis, from_coupler_m)
       values ($1, $2, 0, 'skid steer', 3000, 'stated', 4.5)`,
      [yard.yardId, job.id],
    );
    await owner.query(`update job set balance_point_m = 4.5, scale_gross_kg = 5000 where id = $1`, [job.id]);
    const to = await trailerOf('T-57');
    const answer = await hand.post(`/jobs/${job.id}/move/${to}`, { despite: 'yes' });
    expect(answer.status).toBe(303);
    const kept = await owner.query(
      `select j.balance_point_m, j.scale_gross_kg, c.mass_kg, c.from_coupler_m
       from job j join job_cargo c on c.job_id = j.id where j.id = $1`,
      [job.id],
    );
    expect(kept.rows).toEqual([{ balance_point_m: null, scale_gross_kg: null, mass_kg: 3000, from_coupler_m: null }]);
  });
});
