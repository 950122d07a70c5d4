import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lifetime } from '../../../src/rules/statistics/lifetime.js';
import { scaleLowerBound } from '../../../src/rules/statistics/scale-bound.js';
import {
  ageReached,
  ageReachedBySurvivor,
  deathWithinProbability,
  meanLife,
  spreadOfLife,
  survivalProbability,
} from '../../../src/rules/statistics/weibull.js';
import {
  ageReachedByBelief,
  deathWithinByBelief,
  weibullBelief,
} from '../../../src/rules/statistics/weibull-belief.js';
import {
  ageReachedRange,
  fitWeibull,
  scaleAtShape,
  type WeibullFit,
} from '../../../src/rules/statistics/weibull-fit.js';
import made from '../reference/r/survival.json' with { type: 'json' };

/** Lives from columns, as R takes them. */
function lives(age: readonly number[], died: readonly number[], entry: readonly number[] = []): Lifetime[] {
  return age.map((each, place) => ({ age: each, died: died[place] === 1, watchedFrom: entry[place] ?? 0 }));
}

function fitted(fit: ReturnType<typeof fitWeibull>): WeibullFit {
  if (fit.kind === 'refused') throw new Error(`refused: ${fit.because}`);
  return fit;
}

const caseOf = (id: string) => {
  const found = made.fits.find((each) => each.id === id);
  if (found === undefined) throw new Error(`R made no case ${id}`);
  return lives(found.age, found.died);
};

/** Both sides climb the same likelihood to its top; R stops at a relative change of 1e-14 in it, so at about 1e-7 in place. */
const SAME_TOP = 1e-6;

function close(value: number, expected: number, relative: number): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('a Weibull fit with survivors', () => {
  it.each(made.fits)('$id is what R survreg finds', (expected) => {
    const fit = fitted(fitWeibull(lives(expected.age, expected.died)));
    close(fit.scale, expected.scale, SAME_TOP);
    close(fit.shape, expected.shape, SAME_TOP);
    close(fit.logLikelihood, expected.logLikelihood, SAME_TOP);
    close(fit.logScaleError, expected.logScaleError, 1e-5);
    close(fit.logShapeError, expected.logShapeError, 1e-5);
    // R keeps ln sigma, which is minus ln shape.
    close(-fit.covariance, expected.covarianceMuLogSigma, 1e-4);
    close(meanLife(fit), expected.mean, 1e-6);
    close(spreadOfLife(fit), expected.sd, 1e-6);
    close(ageReached(fit, 0.01), expected.t01, 1e-6);
    close(ageReached(fit, 0.1), expected.t10, 1e-6);
    close(ageReached(fit, 0.5), expected.t50, 1e-6);
    const range = ageReachedRange(fit, 0, 0.1, 0.95);
    // R's error of the age itself; ours is of its logarithm: the same to first order, by the age.
    close(Math.log(range.high / range.age) / 1.959963984540054, expected.t10Error / expected.t10, 1e-4);
  });

  // Printed to the figures given in NIST/SEMATECH e-Handbook 8.4.1.3 and 8.1.6.2; half of the last figure.
  it('V1: the handbook prints shape 1.7208, scale 606.528, mean 540.737, deviation 323.806, log likelihood -75.135', () => {
    const fit = fitted(fitWeibull(caseOf('V1')));
    expect(fit.shape).toBeCloseTo(1.7208, 4);
    expect(fit.scale).toBeCloseTo(606.528, 2);
    expect(meanLife(fit)).toBeCloseTo(540.737, 3);
    expect(spreadOfLife(fit)).toBeCloseTo(323.806, 3);
    expect(fit.logLikelihood).toBeCloseTo(-75.135, 3);
  });

  // Meeker, Escobar (1998), as printed: mu 10.23 and sigma 0.316; scale 11,792 and shape 2.035.
  it('V2 and V3: shock absorbers and bearing cages are as printed in the book', () => {
    const absorbers = fitted(fitWeibull(caseOf('V2')));
    expect(Math.log(absorbers.scale)).toBeCloseTo(10.23, 2);
    expect(1 / absorbers.shape).toBeCloseTo(0.3164, 4);
    const cages = fitted(fitWeibull(caseOf('V3')));
    expect(Math.round(cages.scale)).toBe(11_792);
    expect(cages.shape).toBeCloseTo(2.035, 3);
    close(ageReached(cages, 0.1), 3903.13, 1e-5);
  });

  it('lives counted together are the same as one by one', () => {
    const oneByOne = fitted(fitWeibull(caseOf('V1')));
    const together = fitted(
      fitWeibull([...caseOf('V1').filter((each) => each.died), { age: 500, died: false, count: 10 }]),
    );
    close(together.shape, oneByOne.shape, 1e-12);
    close(together.logShapeError, oneByOne.logShapeError, 1e-9);
    expect(together.units).toBe(20);
  });

  it.each(made.truncated)('$id: units watched from late ages, against a likelihood written out in R', (expected) => {
    const fit = fitted(fitWeibull(lives(expected.age, expected.died, expected.entry)));
    // R's optim stops earlier than survreg does.
    close(fit.scale, expected.scale, 1e-5);
    close(fit.shape, expected.shape, 1e-5);
    close(fit.logLikelihood, expected.logLikelihood, 1e-9);
    close(fit.logScaleError, expected.logScaleError, 1e-3);
    close(fit.logShapeError, expected.logShapeError, 1e-3);
  });

  it.each(made.penalised)('V7 with a prior of $median on the shape', ({ median, logSpread, shape, scale }) => {
    const fit = fitted(fitWeibull(caseOf('V7'), { median, logSpread }));
    // R searches one dimension by golden section: half the figures of a double.
    close(fit.shape, shape, 1e-6);
    close(fit.scale, scale, 1e-6);
  });

  it('says why it names no life', () => {
    expect(fitWeibull([{ age: 5, died: false }])).toEqual({ kind: 'refused', because: 'no-deaths' });
    expect(fitWeibull([])).toEqual({ kind: 'refused', because: 'no-deaths' });
    const alike = [7, 7, 7].map((age) => ({ age, died: true }));
    expect(fitWeibull(alike)).toEqual({ kind: 'refused', because: 'no-spread' });
    expect(fitWeibull([{ age: 0, died: true }])).toEqual({ kind: 'refused', because: 'bad-age' });
    expect(fitWeibull([{ age: 3, died: true, watchedFrom: 4 }])).toEqual({ kind: 'refused', because: 'bad-age' });
    expect(fitWeibull(alike, { median: 3, logSpread: 0.4 })).toMatchObject({ kind: 'fitted' });
  });

  it('turning a removal into a death makes lives shorter; dropping it makes them shorter too', () => {
    const fleet = caseOf('V2');
    const right = fitted(fitWeibull(fleet));
    const allDead = fitted(fitWeibull(fleet.map((each) => ({ ...each, died: true }))));
    const dropped = fitted(fitWeibull(fleet.filter((each) => each.died)));
    expect(ageReached(allDead, 0.5)).toBeLessThan(ageReached(right, 0.5));
    expect(ageReached(dropped, 0.5)).toBeLessThan(ageReached(right, 0.5));
  });

  it('a fit scales with the unit of age and does not mind the order', () => {
    const life = fc.record({ age: fc.double({ min: 0.1, max: 50, noNaN: true }), died: fc.boolean() });
    fc.assert(
      fc.property(
        fc.array(life, { minLength: 4, maxLength: 30 }),
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (fleet, unit) => {
          const fit = fitWeibull(fleet);
          const other = fitWeibull(fleet.toReversed().map((each) => ({ ...each, age: each.age * unit })));
          expect(other.kind).toBe(fit.kind);
          if (fit.kind === 'refused' || other.kind === 'refused') return;
          close(other.shape, fit.shape, 1e-7);
          close(other.scale, fit.scale * unit, 1e-7);
        },
      ),
      { seed: 71, numRuns: 200 },
    );
  });
});

describe('a survivor', () => {
  it('V8: of V2, at 20,000 miles the next 3,000 bring 0.1796, not the 0.4256 of a new one by 23,000', () => {
    const fit = fitted(fitWeibull(caseOf('V2')));
    // The case is given to 1e-5.
    expect(deathWithinProbability(fit, 20_000, 3_000)).toBeCloseTo(0.179609, 5);
    expect(1 - survivalProbability(fit, 23_000)).toBeCloseTo(0.425609, 5);
  });

  it('what has lasted will last past its age, and its ages come back as probabilities', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (shape, age, share) => {
          const weibull = { shape, scale: 7 };
          const reached = ageReachedBySurvivor(weibull, age, share);
          expect(reached).toBeGreaterThanOrEqual(age);
          expect(deathWithinProbability(weibull, age, reached - age)).toBeCloseTo(share, 6);
        },
      ),
      { seed: 72, numRuns: 300 },
    );
  });
});

describe('few deaths, or none', () => {
  // The exponential law is the Weibull of shape 1: its scale is the time at risk for each death.
  it('V4 and V1 at shape 1: a mean of 39.8889 weeks; a log likelihood of -76.55569', () => {
    expect(scaleAtShape(caseOf('V4'), 1)).toBeCloseTo(39.8889, 4);
    const mean = scaleAtShape(caseOf('V1'), 1) as number;
    expect(-10 * Math.log(mean) - 10).toBeCloseTo(-76.55569, 5);
  });

  // Worked from (Σ age^shape / deaths)^(1/shape); printed to one decimal.
  it('V7: at a known shape of 2 the scale is 1,111.186; at 1.5, 1,182.54', () => {
    expect(scaleAtShape(caseOf('V7'), 2)).toBeCloseTo(1111.186, 3);
    expect(scaleAtShape(caseOf('V7'), 1.5)).toBeCloseTo(1182.54, 2);
    expect(scaleAtShape([{ age: 4, died: false }], 2)).toBeNull();
  });

  it('V10: four that have not failed at 900, 700, 1,200 and 450 prove a scale of 1,715 with 63 %, 1,130 with 90 %', () => {
    const alive = [900, 700, 1200, 450].map((age) => ({ age, died: false }));
    // "63 %" in the case is 1 − 1/e, where the bound is the scale that expects one failure.
    expect(scaleLowerBound(alive, 2, 1 - Math.exp(-1))).toBeCloseTo(1715.37, 2);
    expect(scaleLowerBound(alive, 2, 0.9)).toBeCloseTo(1130.45, 2);
    expect(scaleLowerBound([], 2, 0.9)).toBeNull();
  });

  it('a bound with deaths lies below the estimate, and the more is asked of it the lower', () => {
    const fleet = caseOf('V7');
    const estimate = scaleAtShape(fleet, 2) as number;
    const at90 = scaleLowerBound(fleet, 2, 0.9) as number;
    const at95 = scaleLowerBound(fleet, 2, 0.95) as number;
    expect(at90).toBeLessThan(estimate);
    expect(at95).toBeLessThan(at90);
  });
});

describe('a prior on shape and scale', () => {
  it.each(made.posteriors)('$id: what a survivor may expect, against 640,000 grid points in R', (expected) => {
    const [shape, shapeSpread] = expected.shapePrior as [number, number];
    const [scale, scaleSpread] = expected.scalePrior as [number, number];
    const belief = weibullBelief(
      lives(expected.age, expected.died, expected.entry),
      { median: shape, logSpread: shapeSpread },
      { median: scale, logSpread: scaleSpread },
    );
    if (belief === null) throw new Error('no belief');
    // Up to 225 curves stand for the integral: within 2 parts in 1,000 of R's fine grid, which
    // is days on a deck of ten years. What is left is the long side of a lopsided hill, cut at five deviations.
    close(deathWithinByBelief(belief, expected.at, expected.span), expected.within, 2e-3);
    close(ageReachedByBelief(belief, expected.at, 0.1), expected.t10, 2e-3);
    close(ageReachedByBelief(belief, expected.at, 0.5), expected.t50, 2e-3);
    close(ageReachedByBelief(belief, expected.at, 0.9), expected.t90, 2e-3);
    expect(Math.log(belief.shape)).toBeCloseTo(expected.meanLogShape, 2);
    expect(Math.log(belief.scale)).toBeCloseTo(expected.meanLogScale, 2);
  });

  it('without a single life the prior speaks alone', () => {
    const belief = weibullBelief([], { median: 3, logSpread: 0.4 }, { median: 10, logSpread: 0.5 });
    expect(belief?.shape).toBeCloseTo(3, 3);
    expect(belief?.scale).toBeCloseTo(10, 3);
    expect(belief?.deaths).toBe(0);
  });

  it('with many deaths the prior no longer counts', () => {
    const truth = made.truncated[1];
    const fleet = lives(truth?.age ?? [], truth?.died ?? [], truth?.entry ?? []);
    const fit = fitted(fitWeibull(fleet));
    const belief = weibullBelief(fleet, { median: 2, logSpread: 3 }, { median: 20, logSpread: 3 });
    // A quarter of the error that the lives leave anyhow.
    expect(Math.abs(Math.log((belief?.scale ?? 0) / fit.scale))).toBeLessThan(fit.logScaleError / 4);
    expect(Math.abs(Math.log((belief?.shape ?? 0) / fit.shape))).toBeLessThan(fit.logShapeError / 4);
  });

  it('an impossible life is not believed', () => {
    expect(
      weibullBelief([{ age: 0, died: true }], { median: 3, logSpread: 0.4 }, { median: 10, logSpread: 0.5 }),
    ).toBeNull();
  });
});
