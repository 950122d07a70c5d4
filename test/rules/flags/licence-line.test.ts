import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load } from '../sample-facts.js';
import { facts, job, towVehicle } from '../sample-trailer.js';

/** Scenario 6: a truck rated 11,200 with a trailer of 14,000 or 15,400. */
const truck = towVehicle({ gvwrKg: lb(11_200) });
const heavy = build({
  plate: { gvwrKg: lb(15_400), coldPressureKpa: null },
  axles: [axle(1, 8_000), axle(2, 8_000)],
});

const flagged = (more: Parameters<typeof facts>[0]) =>
  assess(facts(more), day('2025-06-16')).flags.filter((flag) => flag.rule === 'licence-line');

describe('trailer and tow vehicle past a licence weight', () => {
  test('26,600 lb together: watched, with the jobs, and cleared by a change of the job', () => {
    const [flag] = flagged({ builds: [heavy], jobs: [job('2025-06-19', { id: 'j1', towVehicle: truck })] });
    expect(flag).toMatchObject({
      key: `licence-line:${truck.id}`,
      severity: 'watch',
      since: null,
      evidence: { towVehicle: truck.name, group: 'A', jobIds: ['j1'] },
      clears: [{ kind: 'correct', fact: 'job' }],
    });
    const evidence = flag?.evidence.kind === 'licence-line' ? flag.evidence : null;
    expect(toLb(evidence?.combinationKg ?? lb(0))).toBeCloseTo(26_600, 6);
    expect(toLb(evidence?.thresholdKg ?? lb(0))).toBeCloseTo(26_001, 6);
  });

  test('25,200 lb with the 14,000 lb trailer are not', () => {
    expect(flagged({ jobs: [job('2025-06-19', { towVehicle: truck })] })).toEqual([]);
  });

  test('but 26,010 as it would weigh are', () => {
    const cargo = load({ cargo: [item('machine', 14_810 - 3_900)] });
    expect(flagged({ jobs: [job('2025-06-19', { towVehicle: truck, load: cargo })] })).toHaveLength(1);
  });

  test('a driver known to hold the class settles it; one known to hold none, or another, does not', () => {
    const with_ = (cdl: 'A' | 'B' | 'none' | null) =>
      flagged({
        builds: [heavy],
        jobs: [job('2025-06-19', { towVehicle: truck, driver: { name: 'Theo', cdl } })],
      }).length;
    expect([with_('A'), with_('B'), with_('none'), with_(null)]).toEqual([0, 1, 1, 1]);
  });

  test('jobs with one tow vehicle are one flag, and one with none is no question', () => {
    const jobs = [
      job('2025-06-19', { id: 'j1', towVehicle: truck }),
      job('2025-07-01', { id: 'j2', towVehicle: truck }),
      job('2025-07-03', { id: 'j3' }),
    ];
    expect(flagged({ builds: [heavy], jobs })).toMatchObject([{ evidence: { jobIds: ['j1', 'j2'] } }]);
  });
});
