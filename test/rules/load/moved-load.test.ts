import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Load } from '../../../src/rules/facts/load.js';
import { DEFAULT_POLICY } from '../../../src/rules/facts/yard-policy.js';
import { checkLoad } from '../../../src/rules/load/load-check.js';
import { asWorkedOut, movedTicket } from '../../../src/rules/load/moved-load.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { build, item, load, placedAxles, ticket, tires } from '../sample-facts.js';

const limitsOf = (more: Parameters<typeof build>[0] = {}) =>
  loadLimits({
    build: build({
      axles: placedAxles(192),
      empty: { massKg: lb(3_900), basis: 'weighed', tongueN: lbf(490) },
      ...more,
    }),
    tires: tires(2),
    coldPressures: new Map(),
    towVehicle: null,
  });

const pounds = (force: number | null | undefined) => toLbf(newtons(force ?? 0));

describe('a load moved since its ticket', () => {
  it('gains on the tongue what the scenario "tail heavy" gives: 7,400 lb by 12 in over 192', () => {
    // 640 + 7,400 × 12 ÷ 192 = 1,102.5; the axles lose as much, 462.5, in equal parts.
    const moved = movedTicket(
      limitsOf(),
      ticket({ gross: 11_000, tongue: 640, axles: [5_180, 5_180] }),
      lb(7_400),
      inch(12),
    );
    expect(pounds(moved?.tongueN)).toBeCloseTo(1_102.5, 6);
    expect(moved?.axleN?.map(pounds)).toEqual([expect.closeTo(4_948.75, 6), expect.closeTo(4_948.75, 6)]);
    expect(moved?.grossKg).toBe(lb(11_000));
  });

  it('reads as statics puts it from the start, on equalized springs', () => {
    const at = (fromIn: number): Load => load({ cargo: [item('machine', 7_400, { fromCouplerM: inch(fromIn) })] });
    fc.assert(
      fc.property(fc.integer({ min: 150, max: 200 }), fc.integer({ min: -30, max: 30 }), (fromIn, forwardIn) => {
        const before = checkLoad(limitsOf(), at(fromIn), DEFAULT_POLICY);
        const scale = { grossKg: before.grossKg, tongueN: before.tongueN, axleN: before.axleN };
        const after = checkLoad(limitsOf(), at(fromIn - forwardIn), DEFAULT_POLICY);
        const moved = movedTicket(limitsOf(), scale, lb(7_400), inch(forwardIn));
        // The same plane statics twice: nothing but rounding may differ.
        expect(pounds(moved?.tongueN)).toBeCloseTo(pounds(after.tongueN), 6);
        expect(moved?.axleN?.map(pounds)).toEqual(after.axleN?.map((force) => expect.closeTo(pounds(force), 6)));
      }),
      { seed: 20_261_128, numRuns: 100 },
    );
  });

  it('turns a rigid frame on torsion springs about its hitch', () => {
    // Springs of 350 and 440 N/mm at 4.4323 and 5.3213 m (174.5 and 209.5 in). The frame turns about the coupler by an
    // angle t from where it stood: F = k (x t + c), c from how the hitch is held. A load moved forward by d takes w d of
    // moment off: t falls by w d / Σ k x², F by k x times that. Worked here by solving for t before and after.
    const springs = [
      { k: 350_000, x: inch(174.5) },
      { k: 440_000, x: inch(209.5) },
    ];
    const limits = limitsOf({
      suspension: 'torsion',
      axles: placedAxles(192).map((axle, at) => ({ ...axle, springRateNPerM: springs[at]?.k ?? null })),
    });
    const c = 0.004;
    const forces = (t: number) => springs.map(({ k, x }) => k * (x * t + c));
    const momentOf = (all: readonly number[]) => all.reduce((sum, force, at) => sum + force * (springs[at]?.x ?? 0), 0);
    const before = forces(0.0115);
    const wantNm = momentOf(before) - lb(7_400) * 9.80665 * inch(10);
    let [low, high] = [0, 0.0115];
    for (let half = 0; half < 80; half += 1) {
      const middle = (low + high) / 2;
      if (momentOf(forces(middle)) > wantNm) high = middle;
      else low = middle;
    }
    const after = forces(low);
    const lost = before.reduce((sum, force, at) => sum + force - (after[at] ?? 0), 0);
    const scale = { grossKg: null, tongueN: lbf(1_000), axleN: before.map(newtons) };
    const moved = movedTicket(limits, scale, lb(7_400), inch(10));
    expect(moved?.axleN?.map(pounds)).toEqual(after.map((force) => expect.closeTo(pounds(force), 5)));
    expect(pounds(moved?.tongueN)).toBeCloseTo(1_000 + pounds(lost), 5);
  });

  it('is not said where a place is unknown, or where an axle would be off the ground', () => {
    const scale = ticket({ gross: 11_000, tongue: 640, axles: [5_180, 5_180] });
    expect(movedTicket(limitsOf({ axles: build().axles }), scale, lb(7_400), inch(12))).toBeNull();
    expect(movedTicket(limitsOf(), scale, lb(7_400), inch(300))).toBeNull();
    expect(movedTicket(limitsOf(), scale, lb(7_400), metres(0))).toBe(scale);
  });

  it('leaves the gross measured and takes tongue and axles for worked out, near their limits for near', () => {
    const check = checkLoad(
      limitsOf(),
      load({ scale: ticket({ gross: 13_900, tongue: 1_400, axles: [6_250, 6_250] }) }),
      DEFAULT_POLICY,
    );
    const workedOut = asWorkedOut(check, DEFAULT_POLICY);
    const of = (kind: string) => workedOut.comparisons.find(({ limit }) => limit.kind === kind);
    expect(of('plate')).toMatchObject({ measured: true, standing: 'inside' });
    expect(of('axle')).toMatchObject({ measured: false, standing: 'inside' });
    // 3,125 of 3,420 leaves 8.6 %; at 3,350 it would be 2 %, inside the yard's 3.
    const heavy = asWorkedOut(
      checkLoad(
        limitsOf(),
        load({ scale: ticket({ gross: 14_000, tongue: 600, axles: [6_700, 6_700] }) }),
        DEFAULT_POLICY,
      ),
      DEFAULT_POLICY,
    );
    expect(heavy.comparisons.find(({ limit }) => limit.kind === 'tire')).toMatchObject({ standing: 'near' });
  });
});
