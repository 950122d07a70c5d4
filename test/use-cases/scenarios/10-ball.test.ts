import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { HandOut } from '../../../src/use-cases/handovers/hand-out.js';
import { TakeBack } from '../../../src/use-cases/handovers/take-back.js';
import { WithdrawHandover } from '../../../src/use-cases/handovers/withdraw-handover.js';
import { OpenHold } from '../../../src/use-cases/holds/open-hold.js';
import { BookJob } from '../../../src/use-cases/jobs/book-job.js';
import { ShowHandover } from '../../../src/use-cases/show/show-handover.js';
import { ShowHandovers } from '../../../src/use-cases/show/show-handovers.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, refusal, refusedFields, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const OUT = day('2026-05-01');
const BACK = day('2026-05-04');
const OWN = { sizeM: inch(2), ratingKg: lb(7_500) };
const OURS = { sizeM: inch(2.3125), ratingKg: lb(14_000) };
const SEEN = [{ thing: 'coupler' as const, position: null, condition: 'sound' as const }];

describe('Ball: the coupler takes 2-5/16, the customer comes with 2', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;
  let jobId: string;
  let numbers = 0;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ name: 'Brindle Hire' });
  });
  afterAll(() => service.close());

  beforeEach(async () => {
    numbers += 1;
    const shop = yard.as('shop', OUT);
    const build = aBuild({ plate: 14_000, empty: 3_900 });
    const added = { yardNumber: `B-${numbers}`, build, builtSince: day('2024-01-01'), parts: tiresOn(2) };
    ({ trailerId } = await must(service.get(AddTrailer).run(shop, added)));
    // 3,900 lb empty and 8,200 aboard are 12,100.
    const job = { name: 'Fence line', work: 'hire' as const, startsOn: OUT, endsOn: BACK, customer: 'Ada Brindle' };
    const load = { cargo: [cargo('loader', 8_200)] };
    ({ jobId } = await must(service.get(BookJob).run(shop, { ...job, trailerId, load })));
  });

  const handOut = (hitch: Partial<Parameters<HandOut['run']>[1]['hitch']>) =>
    service.get(HandOut).run(yard.as('hand', OUT), {
      ...{ trailerId, jobId, on: OUT, seen: SEEN },
      hitch: { ball: OWN, swappedTo: null, plug: 'lamps-and-brakes', ...hitch },
    });
  const takeBack = (more: object) =>
    service.get(TakeBack).run(yard.as('shop', BACK), { trailerId, on: BACK, seen: SEEN, ...more });
  const isOut = async () =>
    (await must(service.get(ShowHandovers).run(yard.as('viewer', BACK), { trailerId }))).outNow !== null;

  it('is not released on it, and says what would let it go', async () => {
    const fields = await refusedFields(handOut({}));
    expect(fields['hitch.ball.sizeM']).toMatch(/takes 2-5\/16 in and the ball is 2 in\. Put a 2-5\/16 in ball on/);
    expect(await isOut()).toBe(false);
  });

  it('is not released on a ball rated for less than the loaded trailer weighs, told by how much', async () => {
    const fields = await refusedFields(handOut({ swappedTo: { ...OURS, ratingKg: lb(10_000) } }));
    expect(fields['hitch.swappedTo.ratingKg']).toContain(
      'rated 10,000 lb and the loaded trailer weighs 12,100 lb, 2,100',
    );
    expect(await isOut()).toBe(false);
  });

  it('is not released on a plug that leaves its electric brakes dead', async () => {
    const fields = await refusedFields(handOut({ swappedTo: OURS, plug: 'lamps-only' }));
    expect(fields['hitch.plug']).toMatch(/electric brakes/);
  });

  it('goes out on the ball that the yard puts on, and the change is on record', async () => {
    const done = await must(handOut({ swappedTo: OURS }));
    expect(done.release.ball?.verdict).toBe('match');
    const { out } = await must(
      service.get(ShowHandover).run(yard.as('viewer', OUT), { trailerId, handoverId: done.handoverId }),
    );
    expect([out.customer, out.hitch]).toEqual([
      'Ada Brindle',
      { ball: OWN, swappedTo: OURS, plug: 'lamps-and-brakes' },
    ]);
    expect(await refusal(handOut({ swappedTo: OURS }))).toMatchObject({
      kind: 'conflict',
      message: expect.stringContaining('with Ada Brindle since 2026-05-01'),
    });
  });

  it('does not come back before Luis says that the customer’s ball is on again', async () => {
    await must(handOut({ swappedTo: OURS }));
    expect((await refusedFields(takeBack({}))).ballBack).toMatch(/own 2 in ball was taken off/);
    expect((await refusedFields(takeBack({ ballBack: false }))).ballBack).toMatch(/have the customer sign/);
    expect(await isOut()).toBe(true);
    const { handoverId, taken } = await must(takeBack({ ballBack: true }));
    expect(taken.owesBall).toBe(false);
    const { back } = await must(service.get(ShowHandover).run(yard.as('viewer', BACK), { trailerId, handoverId }));
    expect(back?.byName).toBe('Luis Ostrow');
    expect(back?.seen.at(-1)).toMatchObject({ thing: 'customer-ball', condition: 'sound', ballSizeM: inch(2) });
  });

  it('or the customer signs, and the ball stays owed', async () => {
    await must(handOut({ swappedTo: OURS }));
    const signature = { name: 'Ada Brindle', strokes: [] };
    expect((await must(takeBack({ signature }))).taken.owesBall).toBe(true);
    expect(await isOut()).toBe(false);
  });

  it('a ball whose rating is worn off is released with that said, and one nobody read is not', async () => {
    const fields = await refusedFields(handOut({ ball: { sizeM: null, ratingKg: null } as never }));
    expect(fields['hitch.ball.sizeM']).toMatch(/ball size/);
    const done = await must(handOut({ ball: { sizeM: inch(2.3125), ratingKg: null } }));
    expect(done.release.ball).toMatchObject({ verdict: 'cannot-say', lacks: ['ball-rating'] });
  });

  it('stays in while it is on hold, and is in the yard again once a mistaken way out is taken back', async () => {
    const { handoverId } = await must(handOut({ swappedTo: OURS }));
    const withdraw = { trailerId, handoverId, reason: 'another trailer' };
    await must(service.get(WithdrawHandover).run(yard.as('shop', OUT), withdraw));
    expect(await isOut()).toBe(false);
    await must(service.get(OpenHold).run(yard.as('shop', OUT), { trailerId, reason: 'lamp out' }));
    expect(await refusal(handOut({ swappedTo: OURS }))).toMatchObject({
      kind: 'conflict',
      message: expect.stringContaining('on hold: lamp out'),
    });
  });

  it('a way out that came back is taken back only after its return', async () => {
    const { handoverId } = await must(handOut({ swappedTo: OURS }));
    const { handoverId: backId } = await must(takeBack({ ballBack: true }));
    const withdraw = (id: string) =>
      service.get(WithdrawHandover).run(yard.as('shop', BACK), { trailerId, handoverId: id, reason: 'wrong' });
    expect(await refusal(withdraw(handoverId))).toMatchObject({ kind: 'conflict' });
    await must(withdraw(backId));
    expect(await isOut()).toBe(true);
    await must(withdraw(handoverId));
    expect(await isOut()).toBe(false);
  });

  it('a form sent twice hands it out once, and takes it back once', async () => {
    const sendId = '018f6f2e-6b1a-7c55-9d2e-0f6a5b1c2d3e';
    const hitch = { ball: OWN, swappedTo: OURS, plug: 'lamps-and-brakes' as const };
    const out = () =>
      must(service.get(HandOut).run(yard.as('hand', OUT), { trailerId, jobId, on: OUT, seen: SEEN, hitch, sendId }));
    const [first, second] = [await out(), await out()];
    expect(second.handoverId).toBe(first.handoverId);
    const returned = () => must(takeBack({ ballBack: true, sendId: '018f6f2e-6b1a-7c55-9d2e-0f6a5b1c2d3f' }));
    const [one, two] = [await returned(), await returned()];
    expect(two.handoverId).toBe(one.handoverId);
    const { handovers } = await must(service.get(ShowHandovers).run(yard.as('viewer', BACK), { trailerId }));
    expect(handovers.length).toBe(2);
  });
});
