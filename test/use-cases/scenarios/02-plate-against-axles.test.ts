import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { toLbf } from '../../../src/rules/units/force.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { CheckFit } from '../../../src/use-cases/assessments/check-fit.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const TODAY = day('2025-06-16');

describe('Plate against axles: plate 9,990 on two 7,000 lb axles, empty 2,980', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ name: 'Ostrow Fencing' });
    ({ trailerId } = await must(
      service.get(AddTrailer).run(yard.as('owner', TODAY), {
        yardNumber: 'O-1',
        build: aBuild({ plate: 9_990, axle: 7_000, empty: 2_980 }),
        builtSince: '2024-01-01',
        parts: tiresOn(2, { maxLoad: 3_520 }),
      }),
    ));
  });

  afterAll(() => service.close());

  it('an excavator of 7,650 with its buckets and chains makes 11,090: not this trailer, 1,100 over the plate', async () => {
    const fit = await must(
      service.get(CheckFit).run(yard.as('owner', TODAY), {
        trailerId,
        startsOn: day('2025-06-19'),
        endsOn: day('2025-06-19'),
        load: { cargo: [cargo('excavator', 7_650), cargo('bucket set', 340), cargo('chains', 120)] },
      }),
    );
    expect(fit.verdict).toBe('no-go');
    expect(toLb(fit.loadCheck.grossKg ?? lb(0))).toBeCloseTo(11_090, 6);
    const plate = fit.loadCheck.comparisons.find((comparison) => comparison.limit.kind === 'plate');
    expect(plate?.standing).toBe('over');
    expect(plate && toLbf(plate.marginN)).toBeCloseTo(-1_100, 6);
  });

  it('the payload is 7,010, and the 14,000 of the axles stands beside the plate without raising it', async () => {
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    const ratings = kept?.ratings;
    expect(ratings?.governing?.kind).toBe('plate');
    expect(toLb(ratings?.payloadKg ?? lb(0))).toBeCloseTo(7_010, 6);
    expect(toLb(ratings?.axleSumKg ?? lb(0))).toBeCloseTo(14_000, 6);
  });
});
