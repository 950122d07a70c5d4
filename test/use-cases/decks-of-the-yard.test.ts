import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import type { DeckLife } from '../../src/rules/facts/deck-life.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import { km, miles } from '../../src/rules/units/distance.js';
import { TrailerStore } from '../../src/store/trailer-store.js';
import { RebuildResults } from '../../src/use-cases/assessments/rebuild-results.js';
import { WakeTrailers } from '../../src/use-cases/notices/wake-trailers.js';
import { RecordReading } from '../../src/use-cases/readings/record-reading.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { CorrectPart } from '../../src/use-cases/trailers/correct-part.js';
import { FitPart } from '../../src/use-cases/trailers/fit-part.js';
import { RemovePart } from '../../src/use-cases/trailers/remove-part.js';
import { ReviseBuildSheet } from '../../src/use-cases/trailers/revise-build-sheet.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { aBuild, TODAY, tiresOn } from '../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../support/yard.js';

const LAID = day('2019-04-01');

let service: UseCases;
let yard: Yard;
let pine: string;
let otherPine: string;
let oak: string;

beforeAll(async () => {
  service = await startUseCases();
});
afterAll(() => service.close());

/** Two trailers with pine decks and one with oak, all laid on one day. */
beforeEach(async () => {
  yard = await service.makeYard();
  pine = await add('P-1', 'pine');
  otherPine = await add('P-2', 'pine');
  oak = await add('O-1', 'oak');
  await wake();
});

async function add(yardNumber: string, material: 'pine' | 'oak' | null, fittedOn: CivilDate | null = LAID) {
  const { trailerId } = await must(
    service.get(AddTrailer).run(yard.as('shop'), {
      yardNumber,
      stored: 'open',
      build: { ...aBuild(), deck: { ...aBuild().deck, material, wood: 'southern-pine', treated: true } },
      builtSince: '2018-01-01',
      parts: [...tiresOn(2), { kind: 'deck', fittedOn }],
    }),
  );
  return trailerId;
}

/** The timer's work, after which nothing may be left to be done. */
async function wake(): Promise<void> {
  await must(service.get(WakeTrailers).run({ ...yard.as('owner'), door: 'job' }));
  expect(await waiting()).toEqual([]);
}

/** Trailers whose kept results may be stale. */
async function waiting(): Promise<readonly string[]> {
  const rows = await service.sql<{ id: string }>(
    'select trailer_id as id from trailer_result where yard_id = $1 and wake_on <= $2 order by trailer_id',
    [yard.yardId, TODAY],
  );
  return rows.map(({ id }) => id);
}

async function factsOf(trailerId: string): Promise<TrailerFacts> {
  const facts = await yard.inYard((tx) => new TrailerStore().findFacts(tx, trailerId));
  if (facts === null) throw new Error('no such trailer');
  return facts;
}

async function deckOf(trailerId: string): Promise<string> {
  return (await factsOf(trailerId)).parts.find((part) => part.kind === 'deck' && part.removedOn === null)?.id ?? '';
}

const told = (decks: readonly DeckLife[]) =>
  decks.map(({ trailerId, laidOn, endedOn, wornOut, material }) => ({ trailerId, laidOn, endedOn, wornOut, material }));

const lies = (trailerId: string, material: 'pine' | 'oak' | null) => ({
  trailerId,
  laidOn: LAID,
  endedOn: null,
  wornOut: false,
  material,
});

describe('what a trailer knows of decks', () => {
  it('are those of its own material, and each is told with the build of the day on which it was laid', async () => {
    const { decks } = await factsOf(pine);
    expect(told(decks)).toEqual([lies(pine, 'pine'), lies(otherPine, 'pine')]);
    expect(decks[0]).toMatchObject({ wood: 'southern-pine', treated: true, stored: 'open' });
    expect(told((await factsOf(oak)).decks)).toEqual([lies(oak, 'oak')]);
  });

  it('is no deck of which nobody knows when it was laid', async () => {
    const bare = await add('P-3', 'pine', null);
    expect(told((await factsOf(bare)).decks)).toEqual([lies(pine, 'pine'), lies(otherPine, 'pine')]);
  });

  it('is its own deck alone where nobody said what it is made of, and nobody else learns of that', async () => {
    const unknown = await add('U-1', null);
    expect(told((await factsOf(unknown)).decks)).toEqual([lies(unknown, null)]);
    expect(told((await factsOf(pine)).decks)).toHaveLength(2);
  });

  it('is nothing of another yard', async () => {
    const others = await service.makeYard({ name: 'Next Door' });
    const ours = yard;
    yard = others;
    const theirs = await add('P-1', 'pine');
    expect(told((await factsOf(theirs)).decks)).toEqual([lies(theirs, 'pine')]);
    yard = ours;
    expect(told((await factsOf(pine)).decks)).toHaveLength(2);
  });

  it.each([
    ['worn-out', true],
    ['damaged', true],
    ['precaution', false],
    ['moved', false],
    [null, false],
  ] as const)('a deck that came off, reason %s, has told how long it lasts: %s', async (removedFor, wornOut) => {
    const partId = await deckOf(pine);
    await must(
      service
        .get(RemovePart)
        .run(yard.as('shop'), { trailerId: pine, partId, removedOn: day('2025-02-28'), removedFor }),
    );
    expect(told((await factsOf(otherPine)).decks)[0]).toEqual({
      ...lies(pine, 'pine'),
      endedOn: '2025-02-28',
      wornOut,
    });
  });

  it('a deck laid before the build was changed stays of the wood it was', async () => {
    await must(
      service.get(FitPart).run(yard.as('shop'), {
        trailerId: pine,
        kind: 'deck',
        fittedOn: day('2024-06-01'),
        replacedFor: 'worn-out',
      }),
    );
    await must(
      service.get(ReviseBuildSheet).run(yard.as('shop'), {
        trailerId: pine,
        build: { ...aBuild(), deck: { ...aBuild().deck, material: 'oak' } },
        effectiveFrom: day('2024-06-01'),
      }),
    );
    const { decks } = await factsOf(pine);
    expect(told(decks)).toEqual([
      { ...lies(pine, 'pine'), endedOn: '2024-06-01', wornOut: true },
      lies(otherPine, 'pine'),
      lies(oak, 'oak'),
      { ...lies(pine, 'oak'), laidOn: '2024-06-01' },
    ]);
  });

  it('of a trailer that was sold is what was seen of its deck until the last trip, reading or check', async () => {
    await must(
      service.get(RecordTrip).run(yard.as('hand'), {
        trailerId: pine,
        startedOn: day('2025-03-01'),
        endedOn: day('2025-03-02'),
        distanceKm: miles(40),
      }),
    );
    await must(
      service
        .get(RecordReading)
        .run(yard.as('hand'), { trailerId: pine, takenOn: day('2025-04-05'), shownKm: km(900) }),
    );
    await must(service.get(UpdateTrailer).run(yard.as('owner'), { trailerId: pine, status: 'sold' }));
    expect(told((await factsOf(otherPine)).decks)[0]).toEqual({ ...lies(pine, 'pine'), endedOn: '2025-04-05' });
  });
});

describe('the trailers whose results a deck concerns', () => {
  it('are those with decks of its material, woken by the timer, and no others', async () => {
    const partId = await deckOf(pine);
    const removal = { trailerId: pine, partId, removedOn: TODAY, removedFor: 'worn-out' };
    await must(service.get(RemovePart).run(yard.as('shop'), removal));
    expect(await waiting()).toEqual([otherPine]);
    await wake();
  });

  it('are woken too when it turns out why it came off, or that it never was', async () => {
    const partId = await deckOf(pine);
    await must(service.get(RemovePart).run(yard.as('shop'), { trailerId: pine, partId, removedOn: TODAY }));
    await wake();
    const deck = { trailerId: pine, kind: 'deck' as const, fittedOn: LAID };
    const corrected = await must(
      service
        .get(CorrectPart)
        .run(yard.as('shop'), { ...deck, partId, removedOn: day('2025-01-31'), removedFor: 'worn-out' }),
    );
    expect(await waiting()).toEqual([otherPine]);
    await wake();
    const never = { trailerId: pine, partId: corrected.partId ?? '', neverFitted: true } as const;
    await must(service.get(CorrectPart).run(yard.as('shop'), never));
    expect(await waiting()).toEqual([otherPine]);
  });

  it('are of both materials when it turns out to be another wood', async () => {
    await must(
      service.get(ReviseBuildSheet).run(yard.as('shop'), {
        trailerId: pine,
        build: { ...aBuild(), deck: { ...aBuild().deck, material: 'oak' } },
        effectiveFrom: day('2018-06-01'),
      }),
    );
    expect(await waiting()).toEqual([otherPine, oak].sort());
  });

  it('are woken by where it is stored, and by its trailer going', async () => {
    await must(service.get(UpdateTrailer).run(yard.as('owner'), { trailerId: pine, stored: 'cover' }));
    expect(await waiting()).toEqual([otherPine]);
    await wake();
    await must(service.get(UpdateTrailer).run(yard.as('owner'), { trailerId: pine, status: 'scrapped' }));
    expect(await waiting()).toEqual([otherPine]);
  });

  it('are let sleep by everything else: an ordinary day wakes nobody', async () => {
    const trip = { trailerId: pine, startedOn: TODAY, endedOn: TODAY, distanceKm: miles(40) };
    await must(service.get(RecordTrip).run(yard.as('hand'), trip));
    await must(service.get(RecordReading).run(yard.as('hand'), { trailerId: pine, takenOn: TODAY, shownKm: km(900) }));
    await must(service.get(FitPart).run(yard.as('shop'), { trailerId: pine, kind: 'battery', fittedOn: TODAY }));
    expect(await waiting()).toEqual([]);
  });

  it('read the same after a rebuild, and after all was thrown away', async () => {
    const partId = await deckOf(pine);
    const removal = { trailerId: pine, partId, removedOn: TODAY, removedFor: 'damaged' };
    await must(service.get(RemovePart).run(yard.as('shop'), removal));
    await wake();
    const kept = await everything();
    await must(service.get(RebuildResults).run(yard.as('owner')));
    expect(await everything()).toEqual(kept);
    for (const table of ['flag_result', 'due_result', 'trailer_result']) {
      await service.sql(`delete from ${table} where yard_id = $1`, [yard.yardId]);
    }
    await must(service.get(RebuildResults).run(yard.as('owner')));
    expect(await everything()).toEqual(kept);
    expect(await waiting()).toEqual([]);
  });

  it('keep no result made from the decks of before, when two people write at once', async () => {
    const shop = yard.as('shop');
    await Promise.all([
      ...[pine, otherPine].map(async (trailerId) =>
        must(
          service
            .get(RemovePart)
            .run(shop, { trailerId, partId: await deckOf(trailerId), removedOn: TODAY, removedFor: 'worn-out' }),
        ),
      ),
      ...[otherPine, oak].map((trailerId) =>
        must(service.get(RecordTrip).run(shop, { trailerId, startedOn: TODAY, endedOn: TODAY, distanceKm: miles(12) })),
      ),
    ]);
    await wake();
    const kept = await everything();
    await must(service.get(RebuildResults).run(yard.as('owner')));
    expect(await everything()).toEqual(kept);
  });
});

async function everything(): Promise<readonly object[]> {
  return service.sql('select to_jsonb(kept) as kept from trailer_result kept where yard_id = $1 order by trailer_id', [
    yard.yardId,
  ]);
}
