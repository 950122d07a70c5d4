import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basicLife, lifeDistance, setLife } from '../../../src/rules/bearing/basic-life.js';
import { RATED_BEARINGS, ratedBearing } from '../../../src/rules/bearing/bearing-table.js';
import { millionRating, ninetyMillionRating } from '../../../src/rules/bearing/dynamic-rating.js';
import {
  combinedLoad,
  inducedThrust,
  meanLoad,
  pairLoads,
  sweptLoad,
} from '../../../src/rules/bearing/equivalent-load.js';
import { corneringLoads, hubLoad, splitHubLoad } from '../../../src/rules/bearing/hub-load.js';
import {
  BALL_SCATTER,
  LIFE_FACTOR,
  lifeAtReliability,
  OLDER_LIFE_FACTOR,
  ratingForDuty,
  reliabilityAt,
  reliabilityOfRating,
  TAPER_SCATTER,
} from '../../../src/rules/bearing/reliability.js';
import { loadedRadius, turnsPerKm } from '../../../src/rules/bearing/wheel-turns.js';
import { km, toMiles } from '../../../src/rules/units/distance.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { CASES, LIFE_FACTORS_1990, LIFE_FACTORS_2007, PRINTED_RATINGS } from '../reference/bearing-cases.js';

const KM_PER_MILE = 1.609344;
const { B1, B2, B3, B4, B5, B6, B7, B8 } = CASES;

/** Printed to five figures or so. */
function near(expected: number, relative = 1e-4) {
  return { from: expected * (1 - relative), to: expected * (1 + relative) };
}

function expectNear(value: number, expected: number, relative = 1e-4) {
  const { from, to } = near(expected, relative);
  expect(value).toBeGreaterThan(from);
  expect(value).toBeLessThan(to);
}

describe('basic life', () => {
  it('B1: a cone of 2,650 lbf at 90 million under 1,225 lbf', () => {
    const turns = basicLife(millionRating(lbf(B1.ninetyLbf)), lbf(B1.loadLbf));
    expectNear(turns, B1.turns);
    expectNear(toMiles(lifeDistance(turns, B1.turnsPerMile / KM_PER_MILE)), B1.miles);
  });

  it('B2: from the rounded rating at 1 million it is 0.7 % less', () => {
    expectNear(basicLife(lbf(B2.millionLbf), lbf(B2.loadLbf)), B2.turns);
  });

  it.each(B4)('B4: at $times times the load, $life of the life', ({ times, life }) => {
    expect(basicLife(newtons(10_000), newtons(1_000 * times)) / basicLife(newtons(10_000), newtons(1_000))).toBeCloseTo(
      life,
      4,
    );
  });

  it.each(B8.byExponent)('B8: two on one shaft, exponent $exponent', ({ exponent, life }) => {
    expectNear(setLife(B8.lives, exponent), life);
  });

  it('a set never outlives its shortest-lived bearing', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1e3, max: 1e10, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (lives) => {
          expect(setLife(lives)).toBeLessThanOrEqual(Math.min(...lives) * (1 + 1e-9));
        },
      ),
      { numRuns: 200, seed: 281 },
    );
  });

  it('refuses what is no load, no rating, no set and no wheel', () => {
    expect(() => basicLife(newtons(0), newtons(1))).toThrow(RangeError);
    expect(() => basicLife(newtons(1), newtons(0))).toThrow(RangeError);
    expect(() => setLife([])).toThrow(RangeError);
    expect(() => lifeDistance(1, 0)).toThrow(RangeError);
    expect(() => turnsPerKm(metres(0))).toThrow(RangeError);
  });
});

describe('ratings', () => {
  // Printed to three figures, so half a unit of the last: 0.15 % of 34,40; the book gives newtons, the pounds follow.
  it.each(PRINTED_RATINGS)('$cone: both bases and both units agree as printed', ({ cone, ...printed }) => {
    const bearing = ratedBearing(cone);
    if (bearing === null) throw new Error('not in the table');
    expectNear(bearing.millionN, printed.millionN, 0.002);
    expectNear(ninetyMillionRating(bearing.millionN), printed.ninetyN, 0.002);
    expectNear(toLbf(ninetyMillionRating(bearing.millionN)), printed.ninetyLbf, 0.002);
  });

  it('the table holds these and no others', () => {
    expect(RATED_BEARINGS.map((bearing) => bearing.cone)).toEqual(PRINTED_RATINGS.map((printed) => printed.cone));
  });

  it('the two bases are 3.857 apart, which is 90 times the life', () => {
    expect(millionRating(newtons(1))).toBeCloseTo(3.8572, 4);
    expect(ninetyMillionRating(millionRating(newtons(7_210)))).toBeCloseTo(7_210, 9);
  });

  it.each(['l68149', 'L-68149', ' L 68149 '])('finds %s', (written) => {
    expect(ratedBearing(written)?.cone).toBe('L68149');
  });

  it('knows no other numbers', () => {
    expect(ratedBearing('L68110')).toBeNull();
  });
});

describe('equivalent load', () => {
  it('B3: three loads over shares of the miles', () => {
    const mean = meanLoad(B3.loads.map(({ loadLbf, share }) => ({ loadN: lbf(loadLbf), share })));
    if (mean === null) throw new Error('no mean');
    expectNear(toLbf(mean), B3.meanLbf);
    expect(toLbf(mean)).toBeGreaterThan(B3.plainAverage * 1.1);
    const turns = basicLife(millionRating(lbf(B1.ninetyLbf)), mean);
    // Printed to thousands.
    expectNear(toMiles(lifeDistance(turns, B1.turnsPerMile / KM_PER_MILE)), B3.miles, 5e-4);
  });

  it('lies between the plain average and the greatest, for any loads', () => {
    const loads = fc.array(
      fc.record({
        loadN: fc.double({ min: 1, max: 1e5, noNaN: true }),
        share: fc.double({ min: 0.01, max: 10, noNaN: true }),
      }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(loads, (drawn) => {
        const shares = drawn.map(({ loadN, share }) => ({ loadN: newtons(loadN), share }));
        const whole = shares.reduce((sum, one) => sum + one.share, 0);
        const average = shares.reduce((sum, one) => sum + one.loadN * one.share, 0) / whole;
        const mean = meanLoad(shares) ?? Number.NaN;
        expect(mean).toBeGreaterThanOrEqual(average * (1 - 1e-9));
        expect(mean).toBeLessThanOrEqual(Math.max(...shares.map((one) => one.loadN)) * (1 + 1e-9));
      }),
      { numRuns: 200, seed: 103 },
    );
  });

  it('nothing driven has no mean', () => {
    expect(meanLoad([])).toBeNull();
    expect(meanLoad([{ loadN: newtons(5), share: 0 }])).toBeNull();
    expect(() => meanLoad([{ loadN: newtons(5), share: -1 }])).toThrow(RangeError);
  });

  it('a load that rises evenly: the handbook rule is up to 7 % above the integral', () => {
    const steps = Array.from({ length: 1_000 }, (_, i) => ({
      loadN: newtons(500 + (1_500 * (i + 0.5)) / 1_000),
      share: 1,
    }));
    const integral = meanLoad(steps) ?? 0;
    const swept = sweptLoad(newtons(500), newtons(2_000));
    expect(swept).toBeGreaterThan(integral);
    expectNear(swept, integral, 0.07);
  });

  it('B5: thrust beyond e counts by Y, within e not at all', () => {
    const bearing = ratedBearing(B5.cone);
    if (bearing === null) throw new Error('not in the table');
    const beyond = combinedLoad(newtons(B5.radialN), newtons(B5.beyond.thrustN), bearing);
    expectNear(beyond, B5.beyond.loadN);
    expectNear(basicLife(bearing.millionN, beyond) / 1e6, B5.beyond.millionTurns);
    expect(combinedLoad(newtons(B5.radialN), newtons(B5.within.thrustN), bearing)).toBe(B5.within.loadN);
  });

  it.each(B6.byK)('B6: a pair under thrust, K $k', ({ k, loadN, ratingN }) => {
    const ratedLives = (B6.hours * 60 * B6.rpm) / 90e6;
    expect(ratedLives).toBeCloseTo(B6.ratedLives, 4);
    const { firstN, secondN } = pairLoads(
      { radialN: newtons(B6.radialN.first), k },
      { radialN: newtons(B6.radialN.second), k },
      newtons(B6.thrustN),
    );
    expectNear(firstN, loadN);
    expect(secondN).toBe(B6.radialN.second);
    // Printed to the newton after rounding on the way.
    const duty = { loadN: firstN, ratedLives, reliability: B6.reliability };
    expectNear(ratingForDuty(duty, TAPER_SCATTER, 'roller', true), ratingN, 0.002);
  });

  it('without outer thrust the bearing with the lesser push takes the difference', () => {
    const heavy = { radialN: newtons(7_000), k: 1.4 };
    const light = { radialN: newtons(1_000), k: 1.56 };
    const { firstN, secondN } = pairLoads(heavy, light, newtons(0));
    expect(firstN).toBe(7_000);
    expect(secondN).toBeCloseTo(0.4 * 1_000 + 1.56 * inducedThrust(heavy.radialN, heavy.k), 6);
    expect(pairLoads(light, heavy, newtons(0))).toEqual({ firstN: secondN, secondN: firstN });
  });
});

describe('reliability', () => {
  it('B7: a ball bearing for 525 million turns', () => {
    const ratedLives = (B7.hours * 60 * B7.rpm) / 1e6;
    expect(ratedLives).toBe(B7.ratedLives);
    const loadN = newtons(B7.loadN);
    // Printed to five figures, worked with rounded steps.
    expectNear(ratingForDuty({ loadN, ratedLives, reliability: 0.9 }, BALL_SCATTER, 'ball'), B7.ratingN, 0.001);
    const reliability = reliabilityOfRating(newtons(B7.chosenN), { loadN, ratedLives }, BALL_SCATTER, 'ball');
    expectNear(reliability, B7.reliability, 0.001);
  });

  it('at 90 % the life is the rating life, by both ways', () => {
    expect(lifeAtReliability(0.9)).toBeCloseTo(1, 12);
    expect(LIFE_FACTOR.get(90)).toBe(1);
    // The makers' law puts 90 % at 1.0 rated lives: 4.48 · ln(1/0.9)^(1/1.5) = 0.9995.
    expect(reliabilityAt(1, TAPER_SCATTER)).toBeCloseTo(0.9, 3);
    expect(reliabilityAt(0.01, BALL_SCATTER)).toBe(1);
  });

  // Printed to two figures.
  it.each(LIFE_FACTORS_1990)('at $percent % the older factor is the Weibull law', ({ percent, factor }) => {
    expect(OLDER_LIFE_FACTOR.get(percent)).toBe(factor);
    expect(Math.abs(lifeAtReliability(percent / 100) - factor)).toBeLessThan(0.005);
  });

  it.each(LIFE_FACTORS_2007)('at $percent % the newer edition promises more than the law', ({ percent, factor }) => {
    expect(LIFE_FACTOR.get(percent)).toBe(factor);
    expect(factor).toBeGreaterThan(lifeAtReliability(percent / 100));
  });

  it('refuses certainty', () => {
    expect(() => lifeAtReliability(1)).toThrow(RangeError);
    expect(() => lifeAtReliability(0)).toThrow(RangeError);
  });
});

describe('hub and wheel', () => {
  it('a 27 in tire makes about 770 turns a mile', () => {
    expectNear(turnsPerKm(loadedRadius(inch(27))) * KM_PER_MILE, 770, 0.001);
    // 63,360 / (2 π r), r = 13 in.
    expectNear(turnsPerKm(inch(13)) * KM_PER_MILE, 775.7, 1e-4);
  });

  it('half the axle less the wheel, never below nothing', () => {
    expect(toLbf(hubLoad(lbf(3_500), lb(45)))).toBeCloseTo(1_705, 6);
    expect(toLbf(hubLoad(lbf(3_500), null))).toBeCloseTo(1_750, 6);
    expect(hubLoad(lbf(10), lb(45))).toBe(0);
  });

  it('lever arms: the tire a quarter of the way out leaves three quarters on the inner bearing', () => {
    const split = splitHubLoad(lbf(1_600), { bearingSpreadM: inch(2), tireFromInnerM: inch(0.5) });
    expect(toLbf(split.innerN)).toBeCloseTo(1_200, 6);
    expect(toLbf(split.outerN)).toBeCloseTo(400, 6);
  });

  it('a bend adds a couple that takes from one what it gives the other', () => {
    const straight = { innerN: newtons(5_000), outerN: newtons(2_000) };
    const bend = corneringLoads(straight, newtons(1_000), metres(0.33), metres(0.06));
    expect(bend.innerN).toBeCloseTo(5_000 + 5_500, 6);
    expect(bend.outerN).toBeCloseTo(2_000 - 5_500, 6);
    expect(bend.thrustN).toBe(1_000);
  });

  it('the parts always add up to the whole', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5e4, noNaN: true }),
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.double({ min: -0.1, max: 0.2, noNaN: true }),
        (load, spread, at) => {
          const split = splitHubLoad(newtons(load), { bearingSpreadM: metres(spread), tireFromInnerM: metres(at) });
          expect(split.innerN + split.outerN).toBeCloseTo(load, 6);
        },
      ),
      { numRuns: 200, seed: 7 },
    );
    expect(() => splitHubLoad(newtons(1), { bearingSpreadM: metres(0), tireFromInnerM: metres(0) })).toThrow(
      RangeError,
    );
    expect(() => corneringLoads({ innerN: newtons(1), outerN: newtons(1) }, newtons(1), metres(1), metres(0))).toThrow(
      RangeError,
    );
  });
});

it('distance grows with the turns', () => {
  expect(lifeDistance(480, 480)).toBe(km(1));
});
