import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, day } from '../../src/rules/calendar/civil-date.js';
import { miles } from '../../src/rules/units/distance.js';
import { feet } from '../../src/rules/units/length.js';
import { lb, toLb } from '../../src/rules/units/mass.js';
import { FindBetterTrailer } from '../../src/use-cases/assessments/find-better-trailer.js';
import { RankTrailers } from '../../src/use-cases/assessments/rank-trailers.js';
import { OpenHold } from '../../src/use-cases/holds/open-hold.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { AddMachine } from '../../src/use-cases/machines/add-machine.js';
import { ReplaceMachine } from '../../src/use-cases/machines/replace-machine.js';
import { ShowJob } from '../../src/use-cases/show/show-job.js';
import { ShowTrailer } from '../../src/use-cases/show/show-trailer.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { aBuild, type BuildWish, cargo, TODAY, tiresOn } from '../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../support/yard.js';

const [FIRST_DAY, LAST_DAY] = [addDays(TODAY, 3), addDays(TODAY, 4)];

/** Plates in pounds; each is 3,900 empty, and its axles, coupler and tires never come first. */
const YARD = { 'R-10': 13_900, 'R-14': 17_900, 'R-15': 17_900, 'R-20': 23_900, 'R-HELD': 23_900, 'R-OUT': 23_900 };

describe('the trailers of a yard for a haul', () => {
  let service: UseCases;
  let yard: Yard;
  let loaderId: string;
  const ids = new Map<string, string>();
  const idOf = (number: string): string => ids.get(number) ?? number;

  const addTrailer = async (yardNumber: string, plate: number): Promise<void> => {
    const wish: BuildWish = { plate, axle: 15_000, coupler: 30_000 };
    const build = { ...aBuild(wish), rear: { ...aBuild(wish).rear, rampRatingKg: lb(30_000) } };
    const parts = tiresOn(2, { maxLoad: 7_500 });
    const { trailerId } = await must(service.get(AddTrailer).run(yard.as('shop'), { yardNumber, build, parts }));
    ids.set(yardNumber, trailerId);
  };

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard();
    for (const [yardNumber, plate] of Object.entries({ ...YARD, 'R-SOLD': 23_900 }))
      await addTrailer(yardNumber, plate);
    const owner = yard.as('owner');
    const { machineId } = await must(
      service.get(AddMachine).run(owner, { name: 'Skid steer', massKg: lb(7_200), basis: 'weighed' }),
    );
    await must(
      service.get(RecordTrip).run(owner, {
        trailerId: idOf('R-10'),
        startedOn: day('2025-05-20'),
        endedOn: day('2025-05-20'),
        distanceKm: miles(30),
        machineId,
      }),
    );
    // 10,800 lb: 800 more than R-10 carries, 3,200 less than R-14, 9,200 less than R-20.
    const by = { name: 'Track loader', massKg: lb(10_800), basis: 'weighed' as const, lengthM: feet(12) };
    const replaced = await must(service.get(ReplaceMachine).run(owner, { machineId, replacedOn: TODAY, by }));
    loaderId = replaced.machineId;
    await must(service.get(OpenHold).run(owner, { trailerId: idOf('R-HELD'), reason: 'ramp bent' }));
    const booked = { name: 'Hollow Rd', startsOn: LAST_DAY, endsOn: addDays(LAST_DAY, 2), trailerId: idOf('R-OUT') };
    await must(service.get(BookJob).run(owner, booked));
    await must(service.get(UpdateTrailer).run(owner, { trailerId: idOf('R-SOLD'), status: 'sold' }));
  });

  afterAll(() => service.close());

  const haul = () => ({ startsOn: FIRST_DAY, endsOn: LAST_DAY, machineId: loaderId });
  const book = async (number: string) =>
    must(service.get(BookJob).run(yard.as('hand'), { name: 'Culvert', ...haul(), trailerId: idOf(number) }));
  const numbers = (list: readonly { readonly yardNumber: string }[]) => list.map((one) => one.yardNumber);

  it('asks those worth asking, the smallest with room to spare first, and says why the others are passed over', async () => {
    const { ranked, passedOver, notAsked } = await must(service.get(RankTrailers).run(yard.as('viewer'), haul()));
    expect(numbers(ranked)).toEqual(['R-14', 'R-15', 'R-20', 'R-10']);
    expect(ranked[0]?.marginShare).toBeCloseTo(1 - 14_700 / 17_900, 9);
    expect(ranked[3]?.fit.verdict).toBe('no-go');
    expect(passedOver.counts).toEqual({ gone: 1, down: 1, booked: 1, 'too-small': 0 });
    expect(passedOver.nearest.map(({ yardNumber, why }) => [yardNumber, why.kind])).toEqual([
      ['R-OUT', 'booked'],
      ['R-HELD', 'down'],
    ]);
    const [out] = passedOver.nearest;
    expect(out?.why).toMatchObject({ clashes: [{ name: 'Hollow Rd', startsOn: LAST_DAY }] });
    expect(notAsked).toBe(0);
  });

  it('knows the machine on trailers that never carried it: one longer than the deck is said of each', async () => {
    const { machineId } = await must(
      service.get(AddMachine).run(yard.as('shop'), {
        name: 'Long one',
        massKg: lb(6_000),
        basis: 'weighed',
        lengthM: feet(40),
      }),
    );
    const { ranked } = await must(service.get(RankTrailers).run(yard.as('hand'), { ...haul(), machineId }));
    expect(ranked.length).toBe(4);
    for (const one of ranked) expect(one.fit.reasons.map(({ kind }) => kind)).toContain('too-long');
  });

  it('what is certainly too small by what is kept is passed over, with how much too small', async () => {
    const load = { cargo: [cargo('plates', 16_000)] };
    const answer = await must(service.get(RankTrailers).run(yard.as('hand'), { ...haul(), machineId: null, load }));
    expect(numbers(answer.ranked)).toEqual(['R-20']);
    expect(answer.passedOver.counts['too-small']).toBe(3);
    const small = answer.passedOver.nearest.find(({ why }) => why.kind === 'too-small');
    expect(small?.yardNumber).toBe('R-14');
    expect(small?.why.kind === 'too-small' && toLb(small.why.shortKg)).toBeCloseTo(
      16_000 - toLb(small?.why.kind === 'too-small' ? small.why.payloadKg : lb(0)),
      6,
    );
  });

  it('a booked job: its own booking is no clash', async () => {
    const { jobId } = await book('R-20');
    const { ranked } = await must(service.get(RankTrailers).run(yard.as('viewer'), { jobId }));
    expect(numbers(ranked)).toContain('R-20');
    const other = await must(service.get(RankTrailers).run(yard.as('viewer'), haul()));
    expect(numbers(other.ranked)).not.toContain('R-20');
  });

  it('a hold that breaks a booking names the first two that could take it', async () => {
    const { jobId } = await book('R-14');
    await must(service.get(OpenHold).run(yard.as('hand'), { trailerId: idOf('R-14'), reason: 'hub is hot' }));
    const { broken } = await must(service.get(ShowTrailer).run(yard.as('hand'), { trailerId: idOf('R-14') }));
    expect(broken?.job.id).toBe(jobId);
    // R-20 is booked on the same days by now.
    expect(numbers(broken?.substitutes ?? [])).toEqual(['R-15']);
    const { substitutes, fit } = await must(service.get(ShowJob).run(yard.as('hand'), { jobId }));
    expect(fit?.verdict).toBe('no-go');
    expect(numbers(substitutes)).toEqual(['R-15']);
  });

  it('outgrown by its new machine: the trailer that should do its work, and how the others would', async () => {
    const { flag, best, all } = await must(
      service.get(FindBetterTrailer).run(yard.as('viewer'), { trailerId: idOf('R-10'), flag: `outgrown:${loaderId}` }),
    );
    expect(flag?.rule).toBe('outgrown');
    expect(best?.yardNumber).toBe('R-14');
    // Held or booked today does not keep one from doing this work from now on.
    expect(numbers(all).toSorted()).toEqual(['R-14', 'R-15', 'R-20', 'R-HELD', 'R-OUT']);
    expect(all.find((one) => one.yardNumber === 'R-HELD')?.readiness).toBe('down');
    const unflagged = await must(service.get(FindBetterTrailer).run(yard.as('viewer'), { trailerId: idOf('R-20') }));
    expect(unflagged).toMatchObject({ flag: null, best: null, all: [] });
  });

  it('in a large yard only so many are read, and the rest is counted', async () => {
    await service.sql(
      `insert into trailer (id, yard_id, yard_number)
       select gen_random_uuid(), $1, 'X-' || n from generate_series(1, 300) n`,
      [yard.yardId],
    );
    // Nothing is known of them, so none could be said to take it, and every one is worth asking.
    const load = { cargo: [cargo('plates', 30_000)] };
    const answer = await must(service.get(RankTrailers).run(yard.as('hand'), { ...haul(), machineId: null, load }));
    expect(answer.ranked.length).toBe(100);
    expect(answer.notAsked).toBe(200);
  });
});
