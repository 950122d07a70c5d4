import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studentBelow } from '../../../src/rules/statistics/distributions.js';
import { type LeastSquares, leastSquares } from '../../../src/rules/statistics/least-squares.js';
import { crossing, lineAt, lineRange, type Point, readingRange } from '../../../src/rules/statistics/line.js';
import { lineWithPrior } from '../../../src/rules/statistics/line-with-prior.js';
import { parabola, straightProbability } from '../../../src/rules/statistics/parabola.js';
import { median, theilSen, theilSenRange } from '../../../src/rules/statistics/theil-sen.js';
import made from '../reference/r/regression.json' with { type: 'json' };
import { MISREAD, NORRIS_CERTIFIED, PONTIUS_CERTIFIED, TOO_FEW, TREAD } from '../reference/trend-cases.js';

const pointsOf = ({ x, y }: { x: readonly number[]; y: readonly number[] }): Point[] =>
  x.map((each, place) => ({ x: each, y: y[place] as number }));

const lineOf = (id: string) => made.lines.find((each) => each.id === id) as (typeof made.lines)[number];
const norris = pointsOf(lineOf('R1'));

function close(value: number, expected: number, relative: number): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

/** Both are sums of the same doubles in another order. */
const SAME = 1e-9;

describe('least squares', () => {
  it('R1: the certified values of NIST StRD Norris, to eleven figures and more', () => {
    const fit = leastSquares(norris) as LeastSquares;
    for (const [name, certified] of Object.entries(NORRIS_CERTIFIED)) {
      close(fit[name as keyof LeastSquares], certified, 1e-11);
    }
  });

  it.each(made.lines)('$id: line and bands as R lm has them', (expected) => {
    const fit = leastSquares(pointsOf(expected)) as LeastSquares;
    close(fit.slope, expected.slope, SAME);
    close(fit.intercept, expected.intercept, SAME);
    close(fit.slopeError, expected.slopeError, SAME);
    close(fit.interceptError, expected.interceptError, SAME);
    close(fit.scatter, expected.scatter, SAME);
    expect(fit.freedom).toBe(expected.freedom);
    const line = lineRange(fit, expected.at, 0.95);
    const reading = readingRange(fit, expected.at, 0.95);
    [line.low, line.high].forEach((end, place) => {
      close(end, expected.line95[place] as number, SAME);
    });
    [reading.low, reading.high].forEach((end, place) => {
      close(end, expected.reading95[place] as number, SAME);
    });
  });

  // Printed to five decimals.
  it('R1: at 500 a single reading lies between 498.97179 and 502.62038, the line between 500.4882 and 501.10398', () => {
    const fit = leastSquares(norris) as LeastSquares;
    expect(readingRange(fit, 500, 0.95).low).toBeCloseTo(498.97179, 5);
    expect(readingRange(fit, 500, 0.95).high).toBeCloseTo(502.62038, 5);
    expect(lineRange(fit, 500, 0.95).low).toBeCloseTo(500.4882, 4);
    expect(lineRange(fit, 500, 0.95).high).toBeCloseTo(501.10398, 5);
  });

  it('two points, or all at one place, tell no scatter', () => {
    expect(leastSquares(TREAD.slice(0, 2))).toBeNull();
    expect(leastSquares([4, 5, 6].map((y) => ({ x: 3, y })))).toBeNull();
  });
});

describe('where a line comes to a value', () => {
  it.each(made.lines)('$id: where the edges of R predict meet it', (expected) => {
    const fit = leastSquares(pointsOf(expected)) as LeastSquares;
    for (const { value, at, line95, line80, reading95 } of expected.inverse) {
      const asked = [
        { ends: line95, found: crossing(fit, value, 0.95) },
        { ends: line80, found: crossing(fit, value, 0.8) },
        { ends: reading95, found: crossing(fit, value, 0.95, 'reading') },
      ];
      for (const { ends, found } of asked) {
        const [low, high] = ends as [number, number | null];
        // An edge that never meets the value: R finds one root, or none, where Fieller's g is 1 or more.
        if (high === null) {
          expect(found.kind).toBe('no-slope');
          continue;
        }
        if (found.kind !== 'at') throw new Error(`refused at ${found.doubt}`);
        // R searches a root to 1e-10 of some thousands.
        close(found.at, at, SAME);
        close(found.low, low, 1e-7);
        close(found.high, high, 1e-7);
      }
    }
  });

  it('R1: 700 is reached at 698.78313, between 698.39756 and 699.16912; by a single reading 696.94801 to 700.61867', () => {
    const fit = leastSquares(norris) as LeastSquares;
    expect(crossing(fit, 700, 0.95)).toMatchObject({
      at: expect.closeTo(698.78313, 5),
      low: expect.closeTo(698.39756, 5),
      high: expect.closeTo(699.16912, 5),
    });
    expect(crossing(fit, 700, 0.95, 'reading')).toMatchObject({
      low: expect.closeTo(696.94801, 5),
      high: expect.closeTo(700.61867, 5),
    });
  });

  // The case gives its tolerance: 1e-5 of the value.
  it('R3: 2/32 comes at 30,121 miles, between 28,488 and 32,006; g is 0.0053', () => {
    const fit = leastSquares(TREAD) as LeastSquares;
    close(fit.intercept, 8.9937195, 1e-5);
    close(fit.slope, -0.00023218438, 1e-5);
    close(fit.scatter, 0.0650578, 1e-5);
    close(readingRange(fit, 20_000, 0.95).low, 4.04933, 1e-5);
    close(readingRange(fit, 20_000, 0.95).high, 4.65074, 1e-5);
    const found = crossing(fit, 2, 0.95);
    if (found.kind !== 'at') throw new Error('refused');
    close(found.low, 28_488.1, 1e-5);
    close(found.at, 30_121.4, 1e-5);
    close(found.high, 32_006, 1e-5);
    close(found.doubt, 0.0052768, 1e-4);
    const single = crossing(fit, 2, 0.95, 'reading');
    if (single.kind !== 'at') throw new Error('refused');
    close(single.low, 28_322.9, 1e-5);
    close(single.high, 32_171.2, 1e-5);
    expect(crossing(fit, 3, 0.95)).toMatchObject({ at: expect.closeTo(25_814.5, 0) });
  });

  it('R5: three readings 7, 6.9, 6.9 name no place; g is 71.65, though a crossing at 46,731 could be printed', () => {
    const fit = leastSquares(TOO_FEW) as LeastSquares;
    close(fit.slope, -0.00010655738, 1e-6);
    close((5 / 1000 - lineAt(fit, 0) + 2) / fit.slope, 46_731, 0.01);
    const found = crossing(fit, 2, 0.95);
    expect(found.kind).toBe('no-slope');
    close(found.doubt, 71.65, 1e-4);
  });

  it('a flat line names no place', () => {
    const flat = leastSquares([1, 2, 3, 4].map((x) => ({ x, y: x % 2 === 0 ? 5 : 6 }))) as LeastSquares;
    expect(crossing(flat, 2, 0.5).kind).toBe('no-slope');
  });
});

describe('the line that a wrong reading cannot move', () => {
  it.each(made.theilSen)('$id: slope, intercept and exact intervals, against pairs listed in R', (expected) => {
    const fit = theilSen(pointsOf(expected));
    if (fit === null) throw new Error('no line');
    close(fit.slope, expected.slope, SAME);
    close(fit.intercept, expected.intercept, SAME);
    for (const { confidence, range } of expected.ranges) {
      const found = theilSenRange(fit, confidence);
      const [low, high] = range;
      if (low === null || high === null || low === undefined || high === undefined) expect(found).toBeNull();
      else {
        expect(found?.low).toBeCloseTo(low, 10);
        expect(found?.high).toBeCloseTo(high, 10);
      }
    }
  });

  it('R1, R3: slopes 1.00219684 and -2.3376623e-4', () => {
    close(theilSen(norris)?.slope ?? 0, 1.00219684, 1e-8);
    // Printed to eight figures.
    close(theilSen(TREAD)?.slope ?? 0, -0.00023376623, 5e-8);
  });

  // The case gives its tolerance: 1e-4.
  it('R4: one misread moves least squares to 33,752 miles, this line only to 29,961', () => {
    const fit = theilSen(MISREAD);
    const squares = leastSquares(MISREAD) as LeastSquares;
    close(squares.centre + (2 - squares.level) / squares.slope, 33_752.5, 1e-4);
    close(fit?.slope ?? 0, -0.00023376623, 1e-6);
    close((2 - (fit?.intercept ?? 0)) / (fit?.slope ?? 0), 29_961, 1e-4);
    // Through the median point it would be 32,330.6: the mistake this guards against.
    const throughMiddle = median(MISREAD.map(({ y }) => y)) - (fit?.slope ?? 0) * median(MISREAD.map(({ x }) => x));
    close((2 - throughMiddle) / (fit?.slope ?? 0), 32_330.6, 1e-4);
  });

  it('past forty points the interval is the normal approximation, and lies close to the exact one', () => {
    const many = Array.from({ length: 41 }, (_, x) => ({ x, y: 9 - 0.1 * x + ((x * 37) % 11) / 20 }));
    const exact = theilSen(many.slice(0, 40));
    const approximate = theilSen(many);
    const a = exact === null ? null : theilSenRange(exact, 0.95);
    const b = approximate === null ? null : theilSenRange(approximate, 0.95);
    // One point of 41 more and another way of counting: within a quarter of the interval.
    const width = (a?.high ?? 0) - (a?.low ?? 0);
    expect(Math.abs((b?.high ?? 0) - (a?.high ?? 0))).toBeLessThan(width / 4);
    expect(Math.abs((b?.low ?? 0) - (a?.low ?? 0))).toBeLessThan(width / 4);
  });

  it('points at one place name no slope', () => {
    expect(theilSen([4, 5].map((y) => ({ x: 3, y })))).toBeNull();
    expect(theilSen([])).toBeNull();
  });
});

describe('few readings and a stated prior', () => {
  it.each(made.priors)('$id: slope and doubt, against 13 million grid points in R', (expected) => {
    const { priorMean, priorSpread, deviation, worth } = expected;
    const line = lineWithPrior(pointsOf(expected), {
      slope: priorMean === null || priorSpread === null ? null : { mean: priorMean, spread: priorSpread },
      scatter: { deviation, worth },
    });
    if (line === null) throw new Error('no line');
    close(line.slope, expected.slope, 1e-9);
    // R's grid ends at eight deviations and a scatter of ninety times the prior's: the tails of t beyond are missing.
    close(Math.sqrt((line.slopeVariance * line.freedom) / (line.freedom - 2)), expected.slopeDeviation, 2e-3);
    const off = expected.value - lineAt(line, expected.at);
    const variance = line.levelVariance + line.slopeVariance * (expected.at - line.centre) ** 2;
    // A step function on R's grid of places: within one part of its 161 steps.
    expect(studentBelow(off / Math.sqrt(variance), line.freedom)).toBeCloseTo(expected.lineBelow, 2);
    expect(studentBelow(off / Math.sqrt(variance + line.scatter ** 2), line.freedom)).toBeCloseTo(
      expected.readingBelow,
      3,
    );
  });

  const points = fc.array(
    fc.record({ x: fc.integer({ min: 0, max: 50 }), y: fc.double({ min: 0, max: 12, noNaN: true }) }),
    { minLength: 3, maxLength: 20 },
  );

  it('a prior worth nothing is least squares', () => {
    fc.assert(
      fc.property(points, (readings) => {
        const squares = leastSquares(readings);
        const line = lineWithPrior(readings, { slope: null, scatter: { deviation: 1, worth: 0 } });
        if (squares === null) return expect(line).toBeNull();
        expect(line?.slope).toBeCloseTo(squares.slope, 10);
        expect(line?.scatter).toBeCloseTo(squares.scatter, 10);
        expect(line?.slopeVariance).toBeCloseTo(squares.slopeVariance, 10);
        expect(line?.levelVariance).toBeCloseTo(squares.levelVariance, 10);
        expect(line?.priorShare).toBe(0);
      }),
      { seed: 73, numRuns: 200 },
    );
  });

  it('the slope lies between what is held and what is read, and the prior fades as readings spread', () => {
    const prior = { slope: { mean: -0.15, spread: 0.05 }, scatter: { deviation: 0.3, worth: 4 } };
    fc.assert(
      fc.property(points, (readings) => {
        const squares = leastSquares(readings);
        if (squares === null) return;
        const line = lineWithPrior(readings, prior);
        const least = Math.min(squares.slope, -0.15) - 1e-9;
        const most = Math.max(squares.slope, -0.15) + 1e-9;
        expect(line?.slope).toBeGreaterThanOrEqual(least);
        expect(line?.slope).toBeLessThanOrEqual(most);
        const wider = lineWithPrior(
          readings.map(({ x, y }) => ({ x: x * 2, y })),
          prior,
        );
        expect(wider?.priorShare).toBeLessThan(line?.priorShare ?? 0);
      }),
      { seed: 74, numRuns: 200 },
    );
  });

  it('one reading and a held slope make a line; one reading alone makes none', () => {
    const scatter = { deviation: 0.3, worth: 4 };
    const line = lineWithPrior([{ x: 0, y: 7 }], { slope: { mean: -0.2, spread: 0.1 }, scatter });
    expect(line).toMatchObject({ slope: -0.2, level: 7, priorShare: 1 });
    expect(lineWithPrior([{ x: 0, y: 7 }], { slope: null, scatter })).toBeNull();
    expect(lineWithPrior([], { slope: { mean: 1, spread: 1 }, scatter })).toBeNull();
  });
});

describe('a trend that bends', () => {
  it('R2: the certified values of NIST StRD Pontius, to nine figures', () => {
    const fit = parabola(pointsOf(made.parabolas[0] as (typeof made.parabolas)[number]));
    if (fit === null) throw new Error('no parabola');
    const { coefficients, errors } = PONTIUS_CERTIFIED;
    [fit.constant, fit.linear, fit.square].forEach((value, place) => {
      close(value, coefficients[place] as number, 1e-9);
    });
    fit.errors.forEach((error, place) => {
      close(error, errors[place] as number, 1e-9);
    });
    close(fit.scatter, PONTIUS_CERTIFIED.scatter, 1e-9);
    close(fit.rSquared, PONTIUS_CERTIFIED.rSquared, 1e-12);
  });

  it('R2: a straight line looks perfect there and scatters ten times as much', () => {
    const points = pointsOf(made.parabolas[0] as (typeof made.parabolas)[number]);
    const straight = leastSquares(points) as LeastSquares;
    close(straight.intercept, 0.0061496842, 1e-8);
    close(straight.slope, 7.2210258e-7, 1e-7);
    close(straight.scatter, 0.0021712726, 1e-7);
    const fit = parabola(points);
    expect(fit === null ? 1 : straightProbability(fit)).toBeLessThan(1e-30);
  });

  it('a bend in seven readings, as R has it', () => {
    const expected = made.parabolas[1] as (typeof made.parabolas)[number];
    const fit = parabola(pointsOf(expected));
    if (fit === null) throw new Error('no parabola');
    [fit.constant, fit.linear, fit.square].forEach((value, place) => {
      // The middle coefficient is near nothing: against the size of the others.
      expect(value).toBeCloseTo(expected.coefficients[place] as number, 10);
    });
    close(straightProbability(fit), expected.straight, 1e-8);
  });

  it('three readings, or two places, tell no bend', () => {
    expect(parabola(TOO_FEW)).toBeNull();
    expect(parabola([0, 0, 1, 1].map((x, y) => ({ x, y })))).toBeNull();
  });
});
