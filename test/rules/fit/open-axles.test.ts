import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load } from '../../../src/rules/facts/load.js';
import { type Fit, fit } from '../../../src/rules/fit/fit.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { axle, build, item, load, ticket } from '../sample-facts.js';
import { facts } from '../sample-trailer.js';

const ON = day('2025-06-20');

function ask(more: Partial<BuildSheet>, carried: Partial<Load>): Fit {
  const input = { startsOn: ON, endsOn: ON, commercial: false, towVehicle: null, driver: null };
  return fit(facts({ builds: [build(more)] }), { ...input, load: load(carried) }, ON);
}

const remedies = (answer: Fit) => answer.remedies.map(({ kind }) => kind);
const machine = (pounds: number) => [item('machine', pounds)];

describe('an axle or tire that could not be checked', () => {
  it('is weighed first: 13,980 lb in an unknown place may be 3,495 on each of four 3,420 lb tires', () => {
    const answer = ask({}, { cargo: machine(10_080) });
    expect(answer.verdict).toBe('weigh-first');
    expect(answer.reasons).toContainEqual({ kind: 'unknown', lacks: 'balance-point', stops: 'tire-check' });
    expect(remedies(answer)).toEqual(['weigh']);
  });

  it('goes once a scale has told the tongue', () => {
    expect(ask({}, { cargo: machine(10_080), scale: ticket({ gross: 13_980, tongue: 1_600 }) }).verdict).toBe('go');
  });

  it('goes where even all of it on the axles would do', () => {
    const answer = ask({}, { cargo: machine(6_000) });
    expect(answer.verdict).toBe('go');
    expect(remedies(answer)).toEqual([]);
  });

  it('stays behind a plain no', () => {
    expect(ask({}, { cargo: machine(11_000) }).verdict).toBe('no-go');
  });

  it('keeps what is spared from reading as fit', () => {
    const answer = ask({}, { cargo: [...machine(10_000), item('grapple', 1_050, { remedy: 'leave-off' })] });
    // 13,900 without the grapple: 100 inside the plate, all weighed, but 3,475 a tire if the tongue carried none.
    expect(answer.remedies[0]).toMatchObject({ kind: 'lighten', standing: 'near' });
    expect(remedies(answer)).toContain('weigh');
  });
});

describe('torsion axles', () => {
  // 2,800 lb at 165 in, 9,000 at 160, axles at 163.5 and 196.5 in: 5,283 each when level.
  const tandem = (rating: number, more: Partial<BuildSheet> = {}): Partial<BuildSheet> => ({
    suspension: 'torsion',
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: [163.5, 196.5].map((at, index) => axle(index + 1, rating, { fromCouplerM: inch(at) })),
    hitch: { ...build().hitch, levelHeightM: inch(20) },
    ...more,
  });
  const carried = { cargo: machine(9_000), balancePointM: inch(160) };

  it('of which nobody knows how level they ride are levelled and weighed', () => {
    const answer = ask(tandem(7_000), carried);
    expect(answer.verdict).toBe('weigh-first');
    expect(answer.reasons).toContainEqual({ kind: 'unknown', lacks: 'torsion-level', stops: 'axle-check' });
    expect(remedies(answer)).toEqual(['level', 'weigh']);
  });

  it('level, may go, however stiff they are', () => {
    const answer = ask(tandem(7_000), { ...carried, hitchHeightM: inch(20) });
    expect(answer.verdict).toBe('go');
    expect(answer.loadCheck.axleN?.map((one) => Math.round(toLbf(one)))).toEqual([5_283, 5_283]);
  });

  it('nose 3 in high, may go on 7,000 lb axles, and not on what stiff ones would pass', () => {
    const high = { ...carried, hitchHeightM: inch(23) };
    expect(ask(tandem(7_000), high).verdict).toBe('go');
    // Between 5,531 and 6,026 on the rear axle.
    const open = ask(tandem(5_900), high);
    expect(open.verdict).toBe('weigh-first');
    expect(open.reasons).toContainEqual({ kind: 'unknown', lacks: 'spring-rate', stops: 'axle-check' });
    const [level] = open.remedies;
    expect(level?.kind === 'level' && level.axleN?.map((one) => Math.round(toLbf(one)))).toEqual([5_283, 5_283]);
    expect(level?.kind === 'level' && Math.round(toLbf(level.tongueN ?? newtons(0)))).toBe(1_233);
  });

  it('within three hundredths of a rating at their stiffest, are weighed first', () => {
    // 6,026.5 of 6,100 leaves 1.2 %.
    const answer = ask(tandem(6_100), { ...carried, hitchHeightM: inch(23) });
    expect(answer.verdict).toBe('weigh-first');
    expect(answer.reasons).toContainEqual(expect.objectContaining({ kind: 'near' }));
  });

  it('are not told to level when level would not do', () => {
    const answer = ask(tandem(5_200), { ...carried, hitchHeightM: inch(23) });
    expect(remedies(answer)).toEqual(['weigh']);
    expect(ask(tandem(5_200), { ...carried, hitchHeightM: inch(20) }).verdict).toBe('no-go');
  });
});
