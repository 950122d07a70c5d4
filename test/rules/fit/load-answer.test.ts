import { describe, expect, it } from 'vitest';
import { DEMO_TRAILERS } from '../../../seeds/demo/trailers.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { CheckRecord } from '../../../src/rules/facts/check.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { factsForLoad } from '../../../src/rules/fit/facts-for-load.js';
import { fit } from '../../../src/rules/fit/fit.js';
import { type LoadQuestion, loadAnswer } from '../../../src/rules/fit/load-answer.js';
import { lbf } from '../../../src/rules/units/force.js';
import { feet, inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { psi, toPsi } from '../../../src/rules/units/pressure.js';
import { build, item, load, placedAxles, ticket, tires } from '../sample-facts.js';
import { facts, trip } from '../sample-trailer.js';

const TODAY = day('2025-06-16');

const BUILD: BuildSheet = build({
  axles: placedAxles(192),
  empty: { massKg: lb(3_900), basis: 'weighed', tongueN: lbf(490) },
  deck: { ...build().deck, lengthM: feet(20), frontFromCouplerM: inch(56) },
});

const asked = (more: Partial<LoadQuestion> = {}): LoadQuestion => ({
  load: load({ cargo: [item('machine', 7_400, { fromCouplerM: inch(176) })] }),
  towVehicle: null,
  coldKpa: null,
  movedForwardM: null,
  ...more,
});

/** Pressures found low, boards found soft and made good, then one soft again; and what has nothing to do with it. */
function record(
  id: string,
  doneOn: string,
  outcome: 'pass' | 'fail',
  lines: readonly [string, string, number][],
): CheckRecord {
  return {
    id,
    checkKindId: id.split('-')[0] ?? id,
    doneOn: day(doneOn),
    outcome,
    byPersonId: null,
    lines: lines.map(([quantity, position, value]) => ({
      ...{ code: quantity, result: 'ok' as const, position },
      measured: { quantity: quantity as 'tread-depth-mm', value },
    })),
    ...{ inspectedBy: null, proofOnTrailer: null, costCents: null },
  };
}

const LONG_KNOWN: TrailerFacts = facts({
  builds: [{ ...BUILD, id: 'old', effectiveFrom: day('2019-01-01'), axles: placedAxles(180) }, BUILD],
  parts: [...tires(2), { ...tires(1)[0], id: 'gone', removedOn: day('2024-01-01') } as never],
  trips: [trip('2025-03-01', null), trip('2025-04-01', null)],
  checkRecords: [
    record('tires-1', '2025-01-02', 'fail', [['cold-pressure-kpa', '1L', 300]]),
    record('tires-2', '2025-02-02', 'pass', [['cold-pressure-kpa', '2R', 480]]),
    record('tires-3', '2025-03-02', 'fail', [['tread-depth-mm', '1L', 5]]),
    record('deck-1', '2025-01-05', 'fail', [['board-sag-mm', '3', 20]]),
    record('deck-2', '2025-02-05', 'pass', []),
    record('deck-3', '2025-03-05', 'fail', [['probe-depth-mm', '7', 9]]),
    record('deck-4', '2026-03-05', 'fail', [['board-sag-mm', '1', 40]]),
  ],
});

describe('a load check', () => {
  it('needs only the few facts it rests on: the answer is the same', () => {
    const few = factsForLoad(LONG_KNOWN, TODAY);
    expect(loadAnswer(few, asked(), TODAY)).toEqual(loadAnswer(LONG_KNOWN, asked(), TODAY));
    expect(few.trips).toEqual([]);
    expect(few.builds.map(({ id }) => id)).toEqual(['build-1']);
    expect(few.checkRecords.map(({ id }) => id)).toEqual(['tires-2', 'tires-3', 'deck-2', 'deck-3']);
    // The low tire of January was seen to in February; 480 kPa is what is left to go by.
    expect(loadAnswer(few, asked(), TODAY).limits.axles[1]?.tires.map(({ limitN }) => limitN)).not.toEqual(
      loadAnswer(few, asked({ coldKpa: psi(80) }), TODAY).limits.axles[1]?.tires.map(({ limitN }) => limitN),
    );
  });

  it('comes to the same sums as a haul of that day, for every trailer of the demo yard', () => {
    for (const { build: demo } of DEMO_TRAILERS) {
      const all = facts({ builds: [{ ...demo, id: 'build-1', effectiveFrom: day('2020-01-01') }] });
      const haul = { ...asked(), startsOn: TODAY, endsOn: TODAY, commercial: null, driver: null };
      const { loadCheck, parking } = fit(all, haul, TODAY);
      expect(loadAnswer(all, asked(), TODAY)).toMatchObject({ loadCheck, parking });
    }
  });

  it('takes every tire at the pressure typed', () => {
    const few = factsForLoad(facts({ builds: [BUILD], parts: tires(2) }), TODAY);
    const soft = loadAnswer(few, asked({ coldKpa: psi(50) }), TODAY);
    const limits = soft.limits.axles.flatMap((axle) => axle.tires);
    // ST235/80R16 at 50 psi: 2,600 lb, the published table.
    expect(limits.map(({ limitN }) => Math.round(limitN / lbf(1)))).toEqual([2_600, 2_600, 2_600, 2_600]);
    expect(toPsi(psi(50))).toBe(50);
  });

  it('asks to weigh again what was moved since its ticket, however well it then stands', () => {
    const few = factsForLoad(facts({ builds: [BUILD], parts: tires(2) }), TODAY);
    const scale = ticket({ gross: 11_000, tongue: 640 });
    const stood = asked({ load: load({ cargo: [item('machine', 7_400)], scale }) });
    expect(loadAnswer(few, stood, TODAY)).toMatchObject({ verdict: 'go-after', isMoved: false });
    const moved = loadAnswer(few, { ...stood, movedForwardM: inch(14) }, TODAY);
    expect(moved).toMatchObject({ verdict: 'weigh-first', isMoved: true, remedies: [{ kind: 'weigh' }] });
    expect((moved.loadCheck.tongueN ?? 0) / lbf(1)).toBeCloseTo(640 + (7_400 * 14) / 192, 6);
  });

  it('says where the load stands, and what the jack would carry unhitched', () => {
    const jacks = { count: 1, liftKg: lb(1_000), supportKg: lb(1_200), fromCouplerM: inch(24) };
    const answer = loadAnswer(factsForLoad(facts({ builds: [{ ...BUILD, jacks }] }), TODAY), asked(), TODAY);
    expect(answer.point?.balancePointM).toBeCloseTo(inch(176), 9);
    // 490 + 7,400 × 16 ÷ 192 = 1,106.7 on the tongue, over the shorter arm of the jack: × 192 ÷ 168.
    expect((answer.jack?.loadN ?? 0) / lbf(1)).toBeCloseTo(((490 + (7_400 * 16) / 192) * 192) / 168, 6);
    expect(answer.jack?.short).toBe('support');
  });
});
