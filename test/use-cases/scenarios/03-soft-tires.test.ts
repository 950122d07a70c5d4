import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { lbf, toLbf } from '../../../src/rules/units/force.js';
import { lb } from '../../../src/rules/units/mass.js';
import { psi, toPsi } from '../../../src/rules/units/pressure.js';
import { CheckFit } from '../../../src/use-cases/assessments/check-fit.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { aBuild, cargo, tiresOn } from '../../support/trailers.js';
import { must, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const TODAY = day('2025-06-16');
const WHEELS = ['1L', '1R', '2L', '2R'];

describe('Soft tires: rated 14,000, four ST235/80R16 E on equalized springs, all at 50 psi cold', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({
      name: 'Fennimore Stone',
      checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => kind.code === 'tire-pressure'),
    });
    ({ trailerId } = await must(
      service.get(AddTrailer).run(yard.as('shop', TODAY), {
        yardNumber: 'F-3',
        build: aBuild({ plate: 14_000, platePsi: 80, suspension: 'slipper-spring' }),
        builtSince: '2024-01-01',
        parts: tiresOn(2, { maxLoad: 3_420 }),
      }),
    ));
    await foundAt(50);
  });

  afterAll(() => service.close());

  const foundAt = async (pounds: number) =>
    must(
      service.get(RecordCheck).run(yard.as('hand', TODAY), {
        trailerId,
        checkKindId: yard.checkKindId('tire-pressure'),
        doneOn: TODAY,
        lines: WHEELS.map((position) => ({
          code: 'pressure',
          position,
          result: null,
          measured: { quantity: 'cold-pressure-kpa' as const, value: psi(pounds) },
        })),
      }),
    );

  const ask = () =>
    must(
      service.get(CheckFit).run(yard.as('hand', TODAY), {
        trailerId,
        startsOn: day('2025-06-17'),
        endsOn: day('2025-06-17'),
        load: {
          cargo: [cargo('everything on the deck', 8_200)],
          scale: { grossKg: lb(12_100), tongueN: lbf(1_450) },
        },
      }),
    );

  it('10,650 on the axles is 2,663 a tire against 2,600: 63 over each, fix first', async () => {
    const fit = await ask();
    expect(fit.verdict).toBe('go-after');
    expect(toLbf(fit.loadCheck.axleGroupN ?? lbf(0))).toBeCloseTo(10_650, 6);
    const over = fit.loadCheck.comparisons.filter((comparison) => comparison.standing === 'over');
    expect(over.map((comparison) => comparison.limit.subject).sort()).toEqual(WHEELS);
    for (const { limit, loadN, marginN } of over) {
      expect(limit).toMatchObject({ kind: 'tire', origin: 'tire-table' });
      expect(toLbf(limit.limitN)).toBeCloseTo(2_600, 6);
      expect(toLbf(loadN)).toBeCloseTo(2_662.5, 6);
      expect(toLbf(marginN)).toBeCloseTo(-62.5, 6);
    }
  });

  it('it asks for the 80 psi of the plate, names 65 psi and its 3,000, and invents no other fault', async () => {
    const fit = await ask();
    const inflate = fit.remedies.find((remedy) => remedy.kind === 'inflate');
    if (inflate?.kind !== 'inflate') throw new Error('nobody was told to inflate');
    expect([...inflate.positions].sort()).toEqual(WHEELS);
    expect(toPsi(inflate.askedByPlateKpa ?? psi(0))).toBeCloseTo(80, 6);
    expect(toPsi(inflate.toKpa)).toBeCloseTo(65, 6);
    expect(toLbf(inflate.carriesN)).toBeCloseTo(3_000, 6);
    expect(fit.reasons.filter((reason) => reason.kind !== 'over')).toEqual([]);
  });

  it('pumped up to the plate it goes', async () => {
    await foundAt(80);
    expect((await ask()).verdict).toBe('go');
  });
});
