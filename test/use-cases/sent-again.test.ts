import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/civil-date.js';
import { miles } from '../../src/rules/units/distance.js';
import { JobStore } from '../../src/store/job-store.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { CorrectTrip } from '../../src/use-cases/trips/correct-trip.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { aBuild, cargo, TODAY, tiresOn } from '../support/trailers.js';
import { must, refusedFields, startUseCases, type UseCases, type Yard } from '../support/yard.js';

const SENDING = '018f6f2e-6b1a-7c55-9d2e-0f6a5b1c2d3e';

describe('a form whose button was pressed twice', () => {
  let service: UseCases;
  let yard: Yard;
  let numbers = 0;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ checkKinds: [] });
  });
  afterAll(() => service.close());

  const aTrailer = async () => {
    numbers += 1;
    const added = await must(
      service.get(AddTrailer).run(yard.as('shop'), { yardNumber: `S-${numbers}`, build: aBuild(), parts: tiresOn(2) }),
    );
    return added.trailerId;
  };
  const haul = (trailerId: string, far = 40) => ({
    trailerId,
    startedOn: addDays(TODAY, -3),
    endedOn: addDays(TODAY, -3),
    distanceKm: miles(far),
    load: { cargo: [cargo('crate', 7_000)] },
    sendId: SENDING,
  });
  const tripsOf = async (trailerId: string) =>
    (await yard.inYard((tx) => new TrailerStore().findFacts(tx, trailerId)))?.trips ?? [];

  it('records one trip, also when both arrive at once', async () => {
    const trailerId = await aTrailer();
    const record = () => must(service.get(RecordTrip).run(yard.as('hand'), haul(trailerId)));
    const [first, second] = await Promise.all([record(), record()]);
    expect(second.tripId).toBe(first.tripId);
    expect((await tripsOf(trailerId)).length).toBe(1);
  });

  it('records what else is said on a form that was taken back', async () => {
    const trailerId = await aTrailer();
    await must(service.get(RecordTrip).run(yard.as('hand'), haul(trailerId, 40)));
    await must(service.get(RecordTrip).run(yard.as('hand'), haul(trailerId, 55)));
    expect((await tripsOf(trailerId)).map((trip) => trip.distanceKm).sort()).toEqual([miles(40), miles(55)].sort());
  });

  it('a trip mended since then stays mended, and the late sending is a trip of its own', async () => {
    const trailerId = await aTrailer();
    const { sendId: _, ...mended } = haul(trailerId, 50);
    const { tripId } = await must(service.get(RecordTrip).run(yard.as('hand'), haul(trailerId)));
    await must(service.get(CorrectTrip).run(yard.as('hand'), { ...mended, tripId }));
    await must(service.get(RecordTrip).run(yard.as('hand'), haul(trailerId)));
    expect((await tripsOf(trailerId)).length).toBe(2);
  });

  it('books one job', async () => {
    const trailerId = await aTrailer();
    const day = addDays(TODAY, 4);
    const input = {
      name: 'Sent twice',
      trailerId,
      startsOn: day,
      endsOn: day,
      load: { cargo: [cargo('crate', 7_000)] },
    };
    const book = () => must(service.get(BookJob).run(yard.as('hand'), { ...input, sendId: SENDING }));
    const first = await book();
    expect((await book()).jobId).toBe(first.jobId);
    const jobs = await yard.inYard((tx) => new JobStore().list(tx, { trailerId }));
    expect(jobs.length).toBe(1);
  });

  it('an empty trip is refused with what to enter', async () => {
    const trailerId = await aTrailer();
    const { startedOn, endedOn } = haul(trailerId);
    const fields = await refusedFields(service.get(RecordTrip).run(yard.as('hand'), { trailerId, startedOn, endedOn }));
    expect(fields.distanceKm).toMatch(/how far it went, or what it carried/);
    expect(await tripsOf(trailerId)).toEqual([]);
  });
});
