import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { civilDateIn } from '../../src/http/clock.js';
import { day } from '../../src/rules/calendar/civil-date.js';
import { CheckKindStore } from '../../src/store/check-kind-store.js';
import { Database } from '../../src/store/database.js';
import type { Caller } from '../../src/use-cases/caller.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { PlanYardDay } from '../../src/use-cases/notices/plan-yard-day.js';
import type { Outcome } from '../../src/use-cases/outcome.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { type Browser, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { aBuild } from '../support/trailers.js';

// A letter asks for a repack due on 10 March; the next job is on 9 March. Today is 2 March 2026.

let service: TestApp;
let yard: YardOfTest;
let shop: Browser;
let link: string;

beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

beforeEach(async () => {
  yard = await service.makeYard('Ostrow Fencing');
  const { app } = service;
  const kind = await app.get(Database).inYard(yard.yardId, async (tx) => {
    const found = await app.get(CheckKindStore).findByCode(tx, 'hub-repack');
    if (found === null) throw new Error('no hub repack');
    await app.get(CheckKindStore).save(tx, { ...found, ownerPersonId: yard.shop.id });
    return found;
  });
  const { trailerId } = value(
    await app.get(AddTrailer).run(caller(), {
      yardNumber: 'T-07',
      name: 'the long black one',
      boughtOn: day('2024-01-01'),
      build: aBuild(),
    }),
  );
  const record = { trailerId, checkKindId: kind.id, doneOn: day('2025-03-10'), outcome: 'pass' as const };
  value(await app.get(RecordCheck).run(caller(), record));
  const on = day('2026-03-09');
  value(await app.get(BookJob).run(caller(), { trailerId, name: 'Hollow Rd', startsOn: on, endsOn: on }));
  value(await app.get(PlanYardDay).run(caller()));
  const found = await app
    .get(Database)
    .inYard(yard.yardId, (tx) =>
      tx.notice.findMany({ where: { personId: yard.shop.id, kind: 'day' }, select: { bodyText: true } }),
    );
  link = /https?:\/\/yard\.test(\/answer\?item=\S+)/.exec(found[0]?.bodyText ?? '')?.[1] ?? '';
  expect(link).toContain(trailerId);
  shop = await service.signedIn(yard.shop);
});

test('the letter leads to a page that asks, and a visit alone answers nothing', async () => {
  const page = await shop.get(link);
  expect(page.status).toBe(200);
  expect(page.body).toContain('T-07');
  expect(page.body).toContain('Due Tue 10 Mar 2026');
  expect(page.body).toContain('Record it on its sheet');
  expect(await answers()).toEqual([]);
});

test('without an answer chosen the page says so and keeps what was typed', async () => {
  const page = await answer({ reason: 'waiting for seals' });
  expect(page.status).toBe(422);
  expect(page.body).toContain('Choose an answer');
  expect(page.body).toContain('waiting for seals');
});

test('put off past the next job: refused with the last day that would do; that day is taken', async () => {
  const late = await answer({ answer: 'later', until: '2026-03-09', reason: 'seals come Friday' });
  expect(late.status).toBe(422);
  expect(late.body).toContain('2026-03-08 at the latest');
  expect(await answers()).toEqual([]);
  const taken = await answer({ answer: 'later', until: '2026-03-08', reason: 'seals come Friday' });
  expect(taken.status).toBe(303);
  expect((await shop.get(taken.location ?? '')).body).toContain('Your answer is kept');
  expect(await answers()).toEqual([{ answer: 'later', until: '2026-03-08' }]);
});

test('done: taken, and the letter then has nothing left to ask', async () => {
  expect((await answer({ answer: 'done' })).status).toBe(303);
  const again = await shop.get(link);
  expect(again.status).toBe(200);
  expect(again.body).toContain('nothing left to answer');
  expect(again.body).not.toContain('name="answer"');
});

test('already done on a day to come is refused in words', async () => {
  const page = await answer({ answer: 'already-done', doneOn: '2026-03-03' });
  expect(page.status).toBe(422);
  expect(page.body).toContain('today or before');
});

test('a viewer reads it and cannot answer; another yard, and nobody, sees nothing', async () => {
  const viewer = await service.signedIn(yard.viewer);
  expect((await viewer.get(link)).body).not.toContain('name="answer"');
  const other = await service.signedIn((await service.makeYard('Elsewhere')).owner);
  expect((await other.get(link)).status).toBe(404);
  const nobody = await service.browser().get(link);
  expect(nobody.status).toBe(303);
  expect(nobody.location).toContain('/sign-in');
  expect(await answers()).toEqual([]);
});

test('an owner marks an address as failed, and the page says what follows', async () => {
  const owner = await service.signedIn(yard.owner);
  const path = `/people/${yard.shop.id}`;
  expect((await owner.post(`${path}/bounced`, { note: '' })).status).toBe(422);
  const told = await owner.post(`${path}/bounced`, { note: 'mailbox does not exist' });
  expect(told.status).toBe(303);
  expect((await owner.get(told.location ?? '')).body).toContain('Nothing more is sent to that address');
  expect((await owner.get(path)).body).toContain('came back');
});

function answer(fields: Readonly<Record<string, string>>) {
  const item = new URL(link, 'http://yard.test').searchParams.get('item') ?? '';
  return shop.post('/answer', { item, ...fields });
}

function answers() {
  return service.app.get(Database).inYard(yard.yardId, async (tx) => {
    const rows = await tx.noticeAnswer.findMany({ select: { answer: true, untilOn: true } });
    return rows.map(({ answer: kept, untilOn }) => ({ answer: kept, until: untilOn?.toISOString().slice(0, 10) }));
  });
}

function caller(): Caller {
  const now = service.clock.now();
  return {
    yardId: yard.yardId,
    personId: yard.owner.id,
    name: yard.owner.name,
    role: 'owner',
    door: 'page',
    timeZone: 'America/Chicago',
    now,
    today: civilDateIn('America/Chicago', now),
  };
}

function value<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(JSON.stringify(outcome.problem));
}
