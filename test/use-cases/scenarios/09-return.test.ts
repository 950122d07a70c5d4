import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { lbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { HandOut } from '../../../src/use-cases/handovers/hand-out.js';
import { TakeBack } from '../../../src/use-cases/handovers/take-back.js';
import { BookJob } from '../../../src/use-cases/jobs/book-job.js';
import { ReadTrailer } from '../../../src/use-cases/read/read-trailer.js';
import { ReadTrailerFacts } from '../../../src/use-cases/read/read-trailer-facts.js';
import { ShowHandover } from '../../../src/use-cases/show/show-handover.js';
import { ShowPhoto } from '../../../src/use-cases/show/show-photo.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

// Worked by hand: the weakest tire sets the group, 4 × 3,000 = 12,000 lb where 4 × 3,420 were 13,680.
const FRIDAY = day('2026-04-10');
const MONDAY = day('2026-04-13');
const TUESDAY = day('2026-04-14');
const WHEELS = ['1L', '1R', '2L', '2R'];

/** What a PNG starts with, and a byte to tell one from another. */
const picture = (which: number) => new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, which]);

type Condition = 'sound' | 'bent' | 'stiff';
const thing = (name: 'ramp' | 'coupler', position: string | null, condition: Condition) => ({
  ...{ thing: name, position, condition },
});
const tire = (position: string) => ({ thing: 'tire' as const, position, condition: 'sound' as const });
const ofRamp = (which: number) => ({
  ...{ thing: 'ramp' as const, position: 'right', mediaType: 'image/png', bytes: picture(which) },
});

describe('Return: unit 118, out Friday on four 3,420 lb tires, back Monday with one of 3,000, a bent ramp, a stiff coupler', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;
  let other: string;
  let hireId: string;
  let back: Awaited<ReturnType<typeof takenBack>>;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ name: 'Brindle Hire' });
    const shop = yard.as('shop', FRIDAY);
    const add = (yardNumber: string, build: ReturnType<typeof aBuild>, maxLoad: number, loadRange: string) =>
      must(
        service.get(AddTrailer).run(shop, {
          ...{ yardNumber, build, builtSince: day('2024-01-01'), parts: tiresOn(2, { maxLoad, loadRange }) },
        }),
      ).then((added) => added.trailerId);
    trailerId = await add('118', aBuild({ plate: 14_000 }), 3_420, 'E');
    other = await add('121', aBuild({ plate: 16_000, axle: 8_000 }), 4_000, 'G');
    const hire = { work: 'hire' as const, load: { cargo: [cargo('loader', 9_900)] } };
    const weekend = { ...hire, name: 'Pool dig', customer: 'Brindle Pools', startsOn: FRIDAY, endsOn: MONDAY };
    ({ jobId: hireId } = await must(service.get(BookJob).run(shop, { ...weekend, trailerId })));
    await must(
      service.get(BookJob).run(shop, {
        ...{ name: 'Tuesday at 7:00', trailerId, startsOn: TUESDAY, endsOn: TUESDAY, work: 'hire' },
        load: {
          cargo: [cargo('loader', 9_900)],
          scale: { grossKg: lb(13_800), tongueN: lbf(1_300), axleN: [lbf(6_250), lbf(6_250)] },
        },
      }),
    );
    await must(
      service.get(HandOut).run(yard.as('hand', FRIDAY), {
        ...{ trailerId, jobId: hireId, on: FRIDAY },
        hitch: {
          ball: { sizeM: inch(2.3125), ratingKg: lb(14_000) },
          swappedTo: null,
          plug: 'lamps-and-brakes',
        },
        seen: [
          ...WHEELS.map(tire),
          thing('ramp', 'left', 'sound'),
          thing('ramp', 'right', 'sound'),
          thing('coupler', null, 'sound'),
        ],
        photos: [ofRamp(1)],
      }),
    );
    back = await takenBack();
  });
  afterAll(() => service.close());

  const takenBack = () =>
    must(
      service.get(TakeBack).run(yard.as('shop', MONDAY), {
        ...{ trailerId, on: MONDAY },
        seen: [
          ...WHEELS.filter((at) => at !== '2L').map(tire),
          { ...tire('2L'), tire: { loadRange: 'D', maxLoadSingleKg: lb(3_000), maxColdPressureKpa: psi(65) } },
          thing('ramp', 'left', 'sound'),
          thing('ramp', 'right', 'bent'),
          thing('coupler', null, 'stiff'),
        ],
        photos: [ofRamp(2)],
      }),
    );

  it('shows tire and ramp as chargeable and the coupler as to inspect, with the customer and both pictures', async () => {
    const caller = yard.as('viewer', MONDAY);
    const {
      taken,
      out,
      back: kept,
    } = await must(service.get(ShowHandover).run(caller, { trailerId, handoverId: back.handoverId }));
    expect(taken?.changes.map(({ thing: what, position, answer }) => [what, position, answer])).toEqual([
      ['tire', '2L', 'chargeable'],
      ['ramp', 'right', 'chargeable'],
      ['coupler', null, 'inspect'],
    ]);
    expect([out.customer, kept?.customer, kept?.byName]).toEqual(['Brindle Pools', 'Brindle Pools', 'Luis Ostrow']);
    const ramp = taken?.changes[1];
    const shown = [ramp?.was?.photoIds, ramp?.is.photoIds].map(async (ids) => {
      const { bytes } = await must(service.get(ShowPhoto).run(caller, { photoId: ids?.[0] ?? '' }));
      return bytes.at(-1);
    });
    expect(await Promise.all(shown)).toEqual([1, 2]);
  });

  it('is on hold for what changed, and down', async () => {
    const { assessment, holds } = await standing();
    expect(assessment.readiness).toBe('down');
    expect(holds.map(({ id, reason, openedByName }) => [id, reason, openedByName])).toEqual([
      [back.holdId, 'Came back with tire 2L swapped, right ramp bent, coupler stiff', 'Luis Ostrow'],
    ]);
    expect(back.raised.map(({ rule }) => rule)).toContain('on-hold');
  });

  it('has the tire found on that wheel from Monday, of which only what was read is known: 12,000 lb and no longer 13,680', async () => {
    const { assessment, parts } = await standing();
    const there = parts
      .filter(({ position }) => position === '2L')
      .map(({ id, fittedOn, removedOn, tire: marks }) => ({ id, fittedOn, removedOn, marks }));
    expect(there.find(({ removedOn }) => removedOn !== null)?.removedOn).toBe(MONDAY);
    const now = there.find(({ removedOn }) => removedOn === null);
    expect(back.fittedPartIds).toEqual([now?.id]);
    expect(now?.fittedOn).toBe(MONDAY);
    expect(now?.marks).toMatchObject({ loadRange: 'D', size: null, dateCode: null });
    expect(toLb(assessment.ratings?.axleGroupKg ?? lb(0))).toBeCloseTo(12_000, 6);
  });

  it('puts Tuesday’s hire at risk, and names the trailer of the yard that is ready to take it', () => {
    expect([back.atRisk?.name, back.atRisk?.fit.verdict]).toEqual(['Tuesday at 7:00', 'no-go']);
    expect(back.atRisk?.substitutes.map(({ trailerId: id, yardNumber }) => [id, yardNumber])).toEqual([[other, '121']]);
  });

  it('is in the audit, and cannot be taken back twice', async () => {
    const audited = await service.sql('select who from audit_entry where action = $1', ['take-back']);
    expect(audited).toEqual([{ who: 'Luis Ostrow' }]);
    const again = await service.get(TakeBack).run(yard.as('shop', MONDAY), {
      ...{ trailerId, on: MONDAY, seen: [tire('1L')] },
    });
    expect(again).toMatchObject({ ok: false, problem: { kind: 'conflict' } });
  });

  async function standing() {
    const caller = yard.as('viewer', MONDAY);
    const { assessment } = await must(service.get(ReadTrailer).run(caller, { trailerId }));
    const { holds, parts } = await must(service.get(ReadTrailerFacts).run(caller, { trailerId }));
    return { assessment, holds, parts };
  }
});
