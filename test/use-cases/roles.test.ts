import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROLES } from '../../src/use-cases/caller.js';
import { startUseCases, type UseCases, type Yard } from '../support/yard.js';
import { type Case, everyUseCase } from './every-use-case.js';

const WHO = { owner: 'owner', shop: 'shop', hand: 'hand', viewer: 'viewer' } as const;

describe('who may do what', () => {
  let service: UseCases;
  let yard: Yard;
  let cases: readonly Case[];

  beforeAll(async () => {
    service = await startUseCases();
    ({ yard, cases } = await everyUseCase(service));
  });

  afterAll(() => service.close());

  it('roles below the one needed are told which it takes, and nothing is written', async () => {
    const rows = () => service.sql('select count(*)::int as audited from audit_entry');
    const before = await rows();
    for (const { useCase, needs, input } of cases) {
      for (const role of ROLES.slice(ROLES.indexOf(needs) + 1)) {
        const outcome = await service.get(useCase).run(yard.as(WHO[role]), (input ?? undefined) as never);
        expect(outcome, `${useCase.name} by ${role}`).toEqual({ ok: false, problem: { kind: 'not-allowed', needs } });
      }
    }
    expect(await rows()).toEqual(before);
  });

  it('the role needed is enough, and every change is in the audit with who and through which door', async () => {
    for (const { useCase, needs, input } of cases) {
      const caller = yard.as(WHO[needs]);
      const outcome = await service.get(useCase).run(caller, (input ?? undefined) as never);
      expect(outcome, `${useCase.name} by ${needs}`).toMatchObject({ ok: true });
    }
    const audited = await service.sql<{ action: string; who: string; door: string; personId: string }>(
      'select action, who, door, person_id as "personId" from audit_entry order by at desc, id desc',
    );
    // The fit of a haul, the trailers for it and the better one are asked, not kept.
    expect(audited.length).toBeGreaterThanOrEqual(cases.length - 3);
    expect(audited.every(({ door }) => door === 'page')).toBe(true);
    expect(new Set(audited.map(({ personId }) => personId))).toEqual(
      new Set([yard.idOf('owner'), yard.idOf('shop'), yard.idOf('hand')]),
    );
  });

  it('only an owner sells a trailer', async () => {
    const { useCase, input } = cases.find((one) => one.useCase.name === 'UpdateTrailer') ?? {};
    if (useCase === undefined) throw new Error('nothing updates a trailer');
    const sell = { ...input, status: 'sold' } as never;
    expect(await service.get(useCase).run(yard.as('shop'), sell)).toEqual({
      ok: false,
      problem: { kind: 'not-allowed', needs: 'owner' },
    });
    expect(await service.get(useCase).run(yard.as('owner'), sell)).toMatchObject({ ok: true });
  });

  it('nobody without a name lifts a hold: not even work on a timer that may do all else', async () => {
    const { useCase, input } = cases.find((one) => one.useCase.name === 'LiftHold') ?? {};
    if (useCase === undefined) throw new Error('nothing lifts a hold');
    const timer = { ...yard.as('owner'), personId: null, door: 'job' as const };
    expect(await service.get(useCase).run(timer, input as never)).toMatchObject({
      ok: false,
      problem: { kind: 'not-allowed' },
    });
  });
});
