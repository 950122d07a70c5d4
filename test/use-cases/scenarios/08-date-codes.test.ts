import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { lb } from '../../../src/rules/units/mass.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { CheckFit } from '../../../src/use-cases/assessments/check-fit.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { AddTrailer } from '../../../src/use-cases/trailers/add-trailer.js';
import { FitPart } from '../../../src/use-cases/trailers/fit-part.js';
import { aBuild, aTire, cargo, tiresOn } from '../../support/trailers.js';
import { must, refusedFields, startUseCases, type UseCases, type Yard } from '../../support/yard.js';

const TODAY = day('2025-11-20');
const WHEELS = ['1L', '1R', '2L', '2R'];

describe('Date codes: on 20 November 2025 four tires end 1519 and the spare 3216, policy 6 years', () => {
  let service: UseCases;
  let yard: Yard;
  let trailerId: string;

  beforeAll(async () => {
    service = await startUseCases();
    yard = await service.makeYard({ checkKinds: DEFAULT_CHECK_KINDS.filter((kind) => kind.code === 'tire-tread') });
    const shop = yard.as('shop', TODAY);
    ({ trailerId } = await must(
      service.get(AddTrailer).run(shop, {
        yardNumber: 'D-8',
        build: aBuild(),
        builtSince: '2019-06-03',
        parts: [
          ...tiresOn(2, { dateCode: '1519', fittedOn: day('2019-06-03'), maxLoad: 3_520 }),
          aTire('spare', { dateCode: '3216', fittedOn: null, maxLoad: 3_520 }),
        ],
      }),
    ));
    // 7/32 in of tread: plenty.
    await must(
      service.get(RecordCheck).run(shop, {
        trailerId,
        checkKindId: yard.checkKindId('tire-tread'),
        doneOn: TODAY,
        lines: WHEELS.map((position) => ({
          code: 'tread',
          position,
          result: 'ok' as const,
          measured: { quantity: 'tread-depth-mm' as const, value: (7 / 32) * 25.4 },
        })),
      }),
    );
  });

  afterAll(() => service.close());

  it('the four are 6 years 7 months old, made from 14 April 2019 on, the spare 9 years 3: all past the limit despite tread', async () => {
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    const evidence = kept?.flags.find((flag) => flag.rule === 'tire-age')?.evidence;
    if (evidence?.kind !== 'tires-past-age') throw new Error('no tire was found too old');
    // Week 15 by 49 CFR 574.5(b)(3); 8 April would be the ISO week of that number. Both come to 6 years 7 months.
    expect(evidence.limitYears).toBe(6);
    const ages = Object.fromEntries(
      evidence.tires.map(({ position, dateCode, madeFrom, years, months }) => [
        position,
        `${dateCode} from ${madeFrom}: ${years} y ${months} mo`,
      ]),
    );
    expect(ages).toEqual({
      ...Object.fromEntries(WHEELS.map((position) => [position, '1519 from 2019-04-14: 6 y 7 mo'])),
      spare: '3216 from 2016-08-07: 9 y 3 mo',
    });
  });

  it('replacing the set and the spare is proposed', async () => {
    const fit = await must(
      service.get(CheckFit).run(yard.as('hand', TODAY), {
        trailerId,
        startsOn: day('2025-11-24'),
        endsOn: day('2025-11-24'),
        load: { cargo: [cargo('load', 4_000)] },
      }),
    );
    const replace = fit.remedies.find((remedy) => remedy.kind === 'replace-tires');
    if (replace?.kind !== 'replace-tires') throw new Error('nobody proposes new tires');
    expect([...replace.positions].sort()).toEqual([...WHEELS, 'spare']);
  });

  it.each([
    ['329', 'made before 2000'],
    ['5419', 'week 54 of 2019, which had 52'],
    ['1530', 'later than'],
    ['15A9', ''],
  ])('the code %s is refused with its reason, and nothing comes off or on', async (dateCode, because) => {
    const before = await service.sql('select id, removed_on from part order by id');
    const fields = await refusedFields(
      service.get(FitPart).run(yard.as('shop', TODAY), {
        trailerId,
        ...aTire('1L', { dateCode, fittedOn: TODAY }),
      }),
    );
    expect(Object.keys(fields)).toEqual(['tire.dateCode']);
    expect(fields['tire.dateCode']).toContain(because);
    expect(await service.sql('select id, removed_on from part order by id')).toEqual(before);
  });

  it('a new tire takes the place of the old one, and the flag leaves that position out', async () => {
    const { removedPartId } = await must(
      service.get(FitPart).run(yard.as('shop', TODAY), {
        trailerId,
        ...aTire('1L', { dateCode: '3025', fittedOn: TODAY }),
      }),
    );
    expect(removedPartId).not.toBeNull();
    const kept = await yard.inYard((tx) => new ResultStore().find(tx, trailerId));
    const evidence = kept?.flags.find((flag) => flag.rule === 'tire-age')?.evidence;
    expect(evidence?.kind === 'tires-past-age' && evidence.tires.map((tire) => tire.position).sort()).toEqual([
      '1R',
      '2L',
      '2R',
      'spare',
    ]);
  });

  it('a whole tire identification number gives its date code (49 CFR 574.5)', async () => {
    const { partId } = await must(
      service.get(FitPart).run(yard.as('shop', TODAY), {
        trailerId,
        ...aTire('1R', { dateCode: 'DOT 1AB CDEFHJ 3025', fittedOn: TODAY }),
      }),
    );
    const [row] = await service.sql<{ date_code: string; max_load_single_kg: number }>(
      'select date_code, max_load_single_kg from part where id = $1',
      [partId],
    );
    expect(row).toEqual({ date_code: '3025', max_load_single_kg: lb(3_420) });
  });
});
