import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { CheckFit } from '../../../src/use-cases/assessments/check-fit.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { AddTowVehicle } from '../../../src/use-cases/machines/add-tow-vehicle.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const TODAY = day('2025-06-16');

describe('Licence line: driver Theo holds no commercial licence, his truck is rated 11,200', () => {
  let service: UseCases;
  let yard: Yard;
  let towVehicleId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({
      checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => kind.code === 'annual-inspection'),
    });
    ({ towVehicleId } = await must(
      service.get(AddTowVehicle).run(yard.as('shop', TODAY), { name: 'The white truck', gvwrKg: lb(11_200) }),
    ));
  });

  afterAll(() => service.close());

  const addTrailer = async (plate: number, axle: number) => {
    const { trailerId } = await must(
      service.get(AddTrailer).run(yard.as('shop', TODAY), {
        yardNumber: `L-${plate}`,
        build: aBuild({ plate, axle, empty: 3_900 }),
        builtSince: '2024-01-01',
        parts: tiresOn(2, { maxLoad: 4_080 }),
      }),
    );
    return trailerId;
  };

  const ask = (trailerId: string, pounds: number) =>
    must(
      service.get(CheckFit).run(yard.as('hand', TODAY), {
        trailerId,
        startsOn: day('2025-06-19'),
        endsOn: day('2025-06-19'),
        commercial: true,
        towVehicleId,
        haulerPersonId: yard.idOf('hand'),
        load: { cargo: [cargo('load', pounds)] },
      }),
    );

  it('with the 14,000 trailer it is 25,200: his licence serves, commercial rules apply, the annual is needed', async () => {
    const trailerId = await addTrailer(14_000, 7_000);
    const fit = await ask(trailerId, 5_000);
    expect(fit.reasons.some((reason) => reason.kind === 'licence')).toBe(false);
    const commercial = fit.reasons.find((reason) => reason.kind === 'commercial-rules');
    if (commercial?.kind !== 'commercial-rules') throw new Error('commercial rules were not named');
    expect(toLb(commercial.combinationKg)).toBeCloseTo(25_200, 6);
    expect(toLb(commercial.thresholdKg)).toBeCloseTo(10_001, 6);
    expect(fit.reasons).toContainEqual(
      expect.objectContaining({ kind: 'never-proven', checkKindId: yard.checkKindId('annual-inspection') }),
    );
    expect(fit.verdict).toBe('go-after');

    await must(
      service.get(RecordCheck).run(yard.as('shop', TODAY), {
        trailerId,
        checkKindId: yard.checkKindId('annual-inspection'),
        doneOn: day('2025-05-12'),
        outcome: 'pass',
        proofOnTrailer: true,
      }),
    );
    expect((await ask(trailerId, 5_000)).verdict).toBe('go');
  });

  it('with the 15,400 trailer it is 26,600: not Theo, even empty', async () => {
    const trailerId = await addTrailer(15_400, 8_000);
    const fit = await ask(trailerId, 0);
    expect(fit.verdict).toBe('no-go');
    const licence = fit.reasons.find((reason) => reason.kind === 'licence');
    if (licence?.kind !== 'licence') throw new Error('the licence was not named');
    expect(licence).toMatchObject({ threshold: 'cdl-a', driverHolds: 'none' });
    expect(toLb(licence.combinationKg)).toBeCloseTo(26_600, 6);
    expect(toLb(licence.thresholdKg)).toBeCloseTo(26_001, 6);
    expect(fit.remedies).toContainEqual({ kind: 'another-driver' });
  });
});
