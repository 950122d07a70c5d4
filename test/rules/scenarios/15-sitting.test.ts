import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day, daysBetween } from '../../../src/rules/calendar/civil-date.js';
import type { CheckedLine } from '../../../src/rules/facts/check.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { toMiles } from '../../../src/rules/units/distance.js';
import { psi } from '../../../src/rules/units/pressure.js';
import { axle, build, tires } from '../sample-facts.js';
import { facts, trip } from '../sample-trailer.js';

// Scenario 15 of the acceptance list: last moved 2 October 2024, asked on 18 April 2025.
const TODAY = day('2025-04-18');
const checkKinds = DEFAULT_CHECK_KINDS.map((one) => ({ ...one, id: one.code }));

function record(code: string, on: string, outcome: 'pass' | 'fail', lines: readonly CheckedLine[] = []) {
  return {
    id: `${code}-${on}`,
    checkKindId: code,
    doneOn: day(on),
    outcome,
    byPersonId: null,
    lines,
    inspectedBy: null,
    proofOnTrailer: null,
    costCents: null,
  };
}

const FOUND = [
  ['1L', 58],
  ['1R', 61],
  ['2L', 55],
  ['2R', 63],
] as const;

const pressures = FOUND.map(([position, found]) => ({
  code: 'pressure',
  result: 'bad' as const,
  position,
  measured: { quantity: 'cold-pressure-kpa' as const, value: psi(found) },
}));
const battery = {
  code: 'battery',
  result: 'bad' as const,
  position: null,
  measured: { quantity: 'battery-v' as const, value: 11.7 },
};

const standing = facts({
  checkKinds,
  builds: [
    build({
      axles: [1, 2].map((number) => axle(number, 7_000, { brakes: 'electric', lubricant: 'grease' })),
    }),
  ],
  parts: tires(2),
  // 61 miles since the repack; nobody said over what the last one went.
  trips: [trip('2024-06-11', 31), trip('2024-10-02', 30, { roads: null })],
  checkRecords: [
    record('hub-repack', '2024-05-05', 'pass'),
    record('tire-pressure', '2025-04-18', 'fail', pressures),
    record('breakaway', '2025-04-18', 'fail', [battery]),
  ],
});
const assessment = assess(standing, TODAY);
const due = (code: string) => assessment.due.find((one) => one.code === code);
const flag = (rule: string) => assessment.flags.find((one) => one.rule === rule);

describe('scenario 15, sitting', () => {
  it('it has stood for 198 days', () => {
    expect(daysBetween(assessment.use.lastTripOn ?? TODAY, TODAY)).toBe(198);
  });

  it('a look before its first use is wanted, with brakes, spin and battery on its sheet', () => {
    expect(due('first-use')).toMatchObject({ state: 'due-soon', dueOn: null, trigger: { event: 'idle' } });
    const lines = checkKinds.find(({ code }) => code === 'first-use')?.lines.map(({ code }) => code);
    expect(lines).toEqual(expect.arrayContaining(['battery', 'pressure', 'brakes-free']));
  });

  it('the battery fails: 11.7 V where below 11.9 is flat', () => {
    expect(due('breakaway')).toMatchObject({ state: 'overdue', failed: true });
    expect(flag('battery-flat')).toMatchObject({ severity: 'limit', evidence: { volts: 11.7, limit: 11.9 } });
  });

  it('all four tires want air: 58, 61, 55 and 63 psi where the plate asks for 80', () => {
    const evidence = flag('tire-pressure')?.evidence;
    const soft = evidence?.kind === 'tires-soft' ? evidence.tires : [];
    expect(soft.map(({ position, foundKpa }) => [position, Math.round(foundKpa / psi(1))])).toEqual(
      FOUND.map(([position, found]) => [position, found]),
    );
    expect(soft.map(({ wantedKpa }) => wantedKpa / psi(1))).toEqual(Array(4).fill(expect.closeTo(80, 9)));
    expect(flag('tire-pressure')?.clears).toContainEqual({
      kind: 'inflate-tires',
      positions: ['1L', '1R', '2L', '2R'],
    });
  });

  it('the repack is offered now, due in 17 days, though it went 61 miles', () => {
    const repack = due('hub-repack');
    expect(repack).toMatchObject({ state: 'due-soon', dueOn: '2025-05-05', trigger: { kind: 'months', every: 12 } });
    expect(daysBetween(TODAY, repack?.dueOn ?? TODAY)).toBe(17);
    expect(repack?.yardDays).toEqual([{ from: '2025-04-19', to: '2025-05-05' }]);
    expect(toMiles(assessment.use.totalKm ?? (0 as never))).toBeCloseTo(61, 9);
  });

  it('and even before its day: six months of standing want the bearings seen before use', () => {
    const redone = { ...standing, checkRecords: [record('hub-repack', '2024-09-30', 'pass')] };
    const repack = assess(redone, TODAY).due.find(({ code }) => code === 'hub-repack');
    expect(repack).toMatchObject({ state: 'due-soon', dueOn: null, trigger: { event: 'idle-half-year' } });
  });

  it('what the last trip went over is unknown, not clean', () => {
    expect(assessment.unknowns).toContainEqual({ lacks: 'trip-roads', stops: 'harsh-service' });
    expect(due('salt-rinse')?.state).not.toBe('overdue');
  });

  it('it is not ready', () => {
    expect(assessment.readiness).toBe('down');
  });
});
