import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { Part } from '../../../src/rules/facts/part.js';
import { loweredFlags } from '../../../src/rules/flags/lowered.js';
import { trailerOn } from '../../../src/rules/history/trailer-on.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { build, tire } from '../sample-facts.js';
import { facts } from '../sample-trailer.js';

const PLACES = ['1L', '1R', '2L', '2R'];

/** A set of tires of one rating, from one day to another. */
function set(pounds: number | null, from: string | null, to: string | null, places = PLACES): Part[] {
  return places.map((position) => ({
    ...tire(position, {
      maxLoadSingleKg: pounds === null ? null : lb(pounds),
      loadRange: pounds === null ? null : 'E',
    }),
    id: `${position}-${from}`,
    fittedOn: from === null ? null : day(from),
    removedOn: to === null ? null : day(to),
  }));
}

function lowered(parts: readonly Part[], more: Partial<Parameters<typeof facts>[0]> = {}, on = '2025-06-01') {
  const [flag] = loweredFlags({ trailer: trailerOn(facts({ parts, ...more }), day(on)) });
  return flag ?? null;
}

describe('tires that lower a trailer', () => {
  it('from 3,520 to 2,830 lb each: the group takes 11,320 where the plate takes 14,000', () => {
    const flag = lowered([...set(3_520, null, '2025-05-01'), ...set(2_830, '2025-05-01', null)]);
    expect(flag).toMatchObject({ severity: 'watch', since: '2025-05-01', evidence: { positions: PLACES } });
    const evidence = flag?.evidence.kind === 'lowered' ? flag.evidence : null;
    // Before: the plate, 14,000 less 3,900. After: 11,320 lb on the axles with a tenth on the hitch, less 3,900.
    expect(toLb(evidence?.beforeKg ?? lb(0))).toBeCloseTo(10_100, 6);
    expect(toLb(evidence?.nowKg ?? lb(0))).toBeCloseTo(11_320 / 0.9 - 3_900, 6);
  });

  it('one lesser tire is enough, and it alone is named', () => {
    const flag = lowered([
      ...set(3_520, null, null, ['1L', '1R', '2L']),
      ...set(3_520, null, '2025-05-01', ['2R']),
      ...set(2_830, '2025-05-01', null, ['2R']),
    ]);
    expect(flag?.evidence).toMatchObject({ positions: ['2R'] });
    expect(flag?.clears[0]).toEqual({ kind: 'replace-tires', positions: ['2R'] });
  });

  it('gone once as strong ones are on again', () => {
    const parts = [
      ...set(3_520, null, '2025-04-01'),
      ...set(2_830, '2025-04-01', '2025-05-01'),
      ...set(3_520, '2025-05-01', null),
    ];
    expect(lowered(parts, {}, '2025-04-20')).not.toBeNull();
    expect(lowered(parts)).toBeNull();
  });

  it.each([
    ['stronger ones', [...set(2_830, null, '2025-05-01'), ...set(3_520, '2025-05-01', null)]],
    ['alike ones', [...set(2_830, null, '2025-05-01'), ...set(2_830, '2025-05-01', null)]],
    ['the first ones on record', set(2_830, '2025-05-01', null)],
    ['ones whose rating nobody gave', [...set(3_520, null, '2025-05-01'), ...set(null, '2025-05-01', null)]],
    ['after ones whose rating nobody gave', [...set(null, null, '2025-05-01'), ...set(2_830, '2025-05-01', null)]],
  ])('nothing is said of %s', (_, parts) => {
    expect(lowered(parts)).toBeNull();
  });

  it('nor across a rebuild', () => {
    const lesser = build({ id: 'lesser', effectiveFrom: day('2025-05-01') });
    const parts = [...set(3_520, null, '2025-05-01'), ...set(2_830, '2025-05-01', null)];
    expect(lowered(parts, { builds: [build(), lesser] })).toBeNull();
  });
});
