import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { FitRemedy } from '../../../src/rules/fit/fit.js';
import { miles } from '../../../src/rules/units/distance.js';
import { toLbf } from '../../../src/rules/units/force.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { CheckFit } from '../../../src/use-cases/assessments/check-fit.js';
import { AddMachine } from '../../../src/use-cases/machines/add-machine.js';
import { ReplaceMachine } from '../../../src/use-cases/machines/replace-machine.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { RecordTrip } from '../../../src/use-cases/trips/record-trip.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const TODAY = day('2025-06-16');

describe('Outgrown: trailer Q-2, plate 14,000, weighed empty 3,900, and a heavier machine', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;
  let loaderId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ name: 'Quill Grading' });
    const shop = yard.as('shop', TODAY);
    ({ trailerId } = await must(
      service.get(AddTrailer).run(shop, {
        yardNumber: 'Q-2',
        build: aBuild({ plate: 14_000, empty: 3_900 }),
        builtSince: '2023-04-01',
        parts: tiresOn(2, { maxLoad: 3_520 }),
      }),
    ));
    const { machineId } = await must(
      service.get(AddMachine).run(shop, { name: 'Skid steer', massKg: lb(7_200), basis: 'weighed' }),
    );
    await must(
      service.get(RecordTrip).run(yard.as('hand', TODAY), {
        trailerId,
        startedOn: day('2025-05-20'),
        endedOn: day('2025-05-20'),
        distanceKm: miles(30),
        machineId,
      }),
    );
    ({ machineId: loaderId } = await must(
      service.get(ReplaceMachine).run(shop, {
        machineId,
        replacedOn: '2025-06-02',
        by: { name: 'Track loader', massKg: lb(9_920), basis: 'stated' },
      }),
    ));
  });

  afterAll(() => service.close());

  const load = () => ({
    cargo: [
      cargo('track loader, standard bucket', 9_920, { basis: 'stated', machineId: loaderId }),
      cargo('grapple', 1_050, { basis: 'stated', remedy: 'leave-off' }),
      cargo('larger bucket, over the standard one', 310, { basis: 'stated', remedy: 'swap' }),
      cargo('mud', 200, { basis: 'assumed', remedy: 'wash' }),
      cargo('chains', 160, { basis: 'stated' }),
    ],
  });

  const ask = () =>
    must(
      service.get(CheckFit).run(yard.as('owner', TODAY), {
        trailerId,
        startsOn: day('2025-06-19'),
        endsOn: day('2025-06-19'),
        machineId: loaderId,
        load: load(),
      }),
    );

  it('the answer is no: 15,540 in all, 1,540 over the plate', async () => {
    const fit = await ask();
    expect(fit.verdict).toBe('no-go');
    expect(toLb(fit.loadCheck.grossKg ?? lb(0))).toBeCloseTo(15_540, 6);
    const over = fit.reasons.find((reason) => reason.kind === 'over' && reason.comparison.limit.kind === 'plate');
    if (over?.kind !== 'over') throw new Error('nothing over the plate');
    expect(toLbf(over.comparison.marginN)).toBeCloseTo(-1_540, 6);
  });

  it('without the grapple still 490 over, with the standard bucket 180, washed 20 under: weigh it first', async () => {
    const fit = await ask();
    const lighter = fit.remedies.filter(
      (remedy): remedy is FitRemedy & { kind: 'lighten' } => remedy.kind === 'lighten',
    );
    expect(
      lighter.map(({ grossKg, overKg, standing }) => [Math.round(toLb(grossKg)), Math.round(toLb(overKg)), standing]),
    ).toEqual([
      [14_490, 490, 'over'],
      [14_180, 180, 'over'],
      [13_980, -20, 'near'],
    ]);
    expect(lighter.map(({ items }) => items.length)).toEqual([1, 2, 3]);
    expect(fit.remedies).toContainEqual({ kind: 'weigh' });
  });

  it('once it was hauled so, the trailer is flagged as used beyond its class, and the new machine is named', async () => {
    await must(
      service.get(RecordTrip).run(yard.as('hand', TODAY), {
        trailerId,
        startedOn: day('2025-06-12'),
        endedOn: day('2025-06-12'),
        distanceKm: miles(25),
        machineId: loaderId,
        load: load(),
      }),
    );
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    const flags = kept?.flags ?? [];
    const over = flags.find((flag) => flag.rule === 'over-plate');
    expect(over?.severity).toBe('limit');
    const outgrown = flags.find((flag) => flag.rule === 'outgrown');
    expect(outgrown?.evidence).toMatchObject({ kind: 'outgrown', machineId: loaderId });
  });
});
