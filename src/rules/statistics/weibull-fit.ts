import { normalQuantile } from './distributions.js';
import type { Lifetime } from './lifetime.js';
import { ageReachedBySurvivor, type Weibull } from './weibull.js';

/** What was held of the logarithm of a parameter before the lives were seen: its middle, and how sure (ln spread). */
export interface LogNormalPrior {
  /** The value held likeliest. */
  readonly median: number;
  /** Standard deviation of the logarithm: 0.5 says "within a factor of 1.65 with 68 %". */
  readonly logSpread: number;
}

export interface WeibullFit extends Weibull {
  readonly kind: 'fitted';
  /** Of the lives alone, without the prior's share. */
  readonly logLikelihood: number;
  readonly deaths: number;
  readonly units: number;
  /** Standard error of ln scale, of ln shape, and their covariance: the inverse of the observed information. */
  readonly logScaleError: number;
  readonly logShapeError: number;
  readonly covariance: number;
}

/** Why lives name no Weibull: said to people, never covered by a guess. */
interface NoWeibullFit {
  readonly kind: 'refused';
  /**
   * `no-deaths`: see `scaleLowerBound`. `no-spread`: all deaths came at the latest age watched, so the likelihood grows
   * without end. `no-maximum`: units watched from late ages leave it without a top. `bad-age`: a death at age 0 or
   * before its watch began.
   */
  readonly because: 'no-deaths' | 'no-spread' | 'no-maximum' | 'bad-age';
}

/** Shapes searched, as logarithms. Wear of trailer parts lies between 0.5 and 10; beyond these ends nothing is learned. */
const LEAST_LOG_SHAPE = Math.log(0.02);
const MOST_LOG_SHAPE = Math.log(500);

/**
 * Maximum likelihood for censored and truncated lives, or, with a prior on the shape, its penalised form
 * log L − (ln shape − ln median)² / (2 logSpread²), flat on ln scale: with few deaths the prior keeps the shape sane
 * (alone, five deaths overstate it by 44 % on average).
 * For each shape the best scale is known, scale^shape = Σ (age^shape − watchedFrom^shape) / deaths, so one equation is left.
 * Source: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998), chapters 8 and 11; the score
 * equation also in NIST/SEMATECH e-Handbook 8.4.1.2.
 */
export function fitWeibull(lives: readonly Lifetime[], shapePrior?: LogNormalPrior): WeibullFit | NoWeibullFit {
  const seen = sortedOut(lives);
  if (seen === null) return { kind: 'refused', because: 'bad-age' };
  if (seen.deaths === 0) return { kind: 'refused', because: 'no-deaths' };
  const score = (logShape: number) => profileScore(seen, logShape, shapePrior);
  const logShape = seen.isTruncated ? highestTop(seen, score, shapePrior) : fallThroughZero(score);
  if (logShape === null) return { kind: 'refused', because: seen.isTruncated ? 'no-maximum' : 'no-spread' };
  return fitAt(seen, logShape, shapePrior);
}

/** Best scale where the shape is known or assumed ("Weibayes"). Null with no death: see `scaleLowerBound`. */
export function scaleAtShape(lives: readonly Lifetime[], shape: number): number | null {
  const seen = sortedOut(lives);
  if (seen === null || seen.deaths === 0) return null;
  return seen.unit * (exposure(seen, shape).sum / seen.deaths) ** (1 / shape);
}

/**
 * An age range for the age by which `share` of those alive at `age` have died: the estimate, and around it the interval
 * that covers the truth with `confidence`, by the delta method on the logarithm. With few deaths it is wide, rightly.
 * Source: Meeker, Escobar (1998), section 8.4.
 */
export function ageReachedRange(
  fit: WeibullFit,
  age: number,
  share: number,
  confidence: number,
): { readonly low: number; readonly age: number; readonly high: number } {
  const reached = ageReachedBySurvivor(fit, age, share);
  // How ln(age reached) moves with ln scale and ln shape: both by differences, since survivors make the algebra long.
  const step = 1e-5;
  const moved = (shape: number, scale: number) =>
    Math.log(
      ageReachedBySurvivor({ shape: fit.shape * Math.exp(shape), scale: fit.scale * Math.exp(scale) }, age, share),
    );
  const byScale = (moved(0, step) - moved(0, -step)) / (2 * step);
  const byShape = (moved(step, 0) - moved(-step, 0)) / (2 * step);
  const variance =
    byScale ** 2 * fit.logScaleError ** 2 +
    byShape ** 2 * fit.logShapeError ** 2 +
    2 * byScale * byShape * fit.covariance;
  const factor = Math.exp(normalQuantile((1 + confidence) / 2) * Math.sqrt(variance));
  return { low: Math.max(age, reached / factor), age: reached, high: reached * factor };
}

/** Lives ready for sums: ages in units of the greatest, so that powers neither overflow nor vanish. */
export interface SeenLives {
  readonly unit: number;
  readonly logAges: Float64Array;
  readonly logStarts: Float64Array;
  readonly counts: Float64Array;
  readonly died: Uint8Array;
  readonly deaths: number;
  readonly units: number;
  readonly sumLogDeathAge: number;
  readonly isTruncated: boolean;
}

/** Null where an age is impossible. Units seen for no time at all say nothing and are left out. */
export function sortedOut(lives: readonly Lifetime[]): SeenLives | null {
  const told = lives.filter((life) => life.died || life.age > (life.watchedFrom ?? 0));
  if (told.some((life) => !(life.age > 0) || !((life.watchedFrom ?? 0) < life.age))) return null;
  const unit = told.reduce((most, life) => Math.max(most, life.age), 0);
  const counts = Float64Array.from(told, (life) => life.count ?? 1);
  const logAges = Float64Array.from(told, (life) => Math.log(life.age / unit));
  const logStarts = Float64Array.from(told, (life) => Math.log((life.watchedFrom ?? 0) / unit));
  const died = Uint8Array.from(told, (life) => (life.died ? 1 : 0));
  let deaths = 0;
  let units = 0;
  let sumLogDeathAge = 0;
  for (let i = 0; i < told.length; i++) {
    const count = counts[i] as number;
    units += count;
    if (died[i] !== 1) continue;
    deaths += count;
    sumLogDeathAge += count * (logAges[i] as number);
  }
  const isTruncated = told.some((life) => (life.watchedFrom ?? 0) > 0);
  return { unit, logAges, logStarts, counts, died, deaths, units, sumLogDeathAge, isTruncated };
}

/** Σ (age^shape − start^shape), and the same weighted by ln age once and twice. */
export function exposure(seen: SeenLives, shape: number): { sum: number; byLog: number; byLogSquared: number } {
  let sum = 0;
  let byLog = 0;
  let byLogSquared = 0;
  const { logAges, logStarts, counts } = seen;
  for (let i = 0; i < logAges.length; i++) {
    const count = counts[i] as number;
    const logAge = logAges[i] as number;
    const power = count * Math.exp(shape * logAge);
    sum += power;
    byLog += power * logAge;
    byLogSquared += power * logAge * logAge;
    const logStart = logStarts[i] as number;
    if (logStart === Number.NEGATIVE_INFINITY) continue;
    const before = count * Math.exp(shape * logStart);
    sum -= before;
    byLog -= before * logStart;
    byLogSquared -= before * logStart * logStart;
  }
  return { sum, byLog, byLogSquared };
}

/** Slope of the profile log likelihood (with the prior's) against ln shape, and its own slope. */
function profileScore(seen: SeenLives, logShape: number, prior: LogNormalPrior | undefined): Score {
  const shape = Math.exp(logShape);
  const { sum, byLog, byLogSquared } = exposure(seen, shape);
  const mean = byLog / sum;
  const pull = prior === undefined ? 0 : 1 / prior.logSpread ** 2;
  const off = prior === undefined ? 0 : logShape - Math.log(prior.median);
  const value = seen.deaths + shape * (seen.sumLogDeathAge - seen.deaths * mean) - pull * off;
  const slope = value + pull * off - seen.deaths - seen.deaths * shape ** 2 * (byLogSquared / sum - mean ** 2) - pull;
  return { value, slope };
}

interface Score {
  readonly value: number;
  readonly slope: number;
}

/** Where the score falls through zero, by Newton steps kept inside a bracket; null where it never does. */
function fallThroughZero(
  score: (logShape: number) => Score,
  from = LEAST_LOG_SHAPE,
  to = MOST_LOG_SHAPE,
): number | null {
  if (score(from).value < 0 || score(to).value > 0) return null;
  let low = from;
  let high = to;
  let at = low < 0.4 && high > 0.4 ? 0.4 : (low + high) / 2;
  for (let i = 0; i < 100 && high - low > 1e-13; i++) {
    const { value, slope } = score(at);
    if (value > 0) low = at;
    else high = at;
    const newton = at - value / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - at) < 1e-13) return next;
    at = next;
  }
  return at;
}

/** With truncation there may be several tops, or none: look along the whole range, then settle on the highest. */
function highestTop(
  seen: SeenLives,
  score: (logShape: number) => Score,
  prior: LogNormalPrior | undefined,
): number | null {
  const STEPS = 80;
  let best: { at: number; height: number } | null = null;
  let before = { at: LEAST_LOG_SHAPE, value: score(LEAST_LOG_SHAPE).value };
  for (let i = 1; i <= STEPS; i++) {
    const at = LEAST_LOG_SHAPE + ((MOST_LOG_SHAPE - LEAST_LOG_SHAPE) * i) / STEPS;
    const here = { at, value: score(at).value };
    if (before.value > 0 && here.value <= 0) {
      const top = fallThroughZero(score, before.at, at) ?? at;
      const height = profileHeight(seen, top, prior);
      if (best === null || height > best.height) best = { at: top, height };
    }
    before = here;
  }
  // A top that is lower than the left end is no maximum of the likelihood, only a bump on the way.
  return best === null || best.height < profileHeight(seen, LEAST_LOG_SHAPE, prior) ? null : best.at;
}

function profileHeight(seen: SeenLives, logShape: number, prior: LogNormalPrior | undefined): number {
  const shape = Math.exp(logShape);
  const { sum } = exposure(seen, shape);
  const off = prior === undefined ? 0 : (logShape - Math.log(prior.median)) / prior.logSpread;
  return seen.deaths * (logShape - Math.log(sum)) + (shape - 1) * seen.sumLogDeathAge - off ** 2 / 2;
}

function fitAt(seen: SeenLives, logShape: number, prior: LogNormalPrior | undefined): WeibullFit {
  const shape = Math.exp(logShape);
  const { deaths, sumLogDeathAge } = seen;
  const sums = exposure(seen, shape);
  const logScale = Math.log(sums.sum / deaths) / shape;
  // With z = shape · ln(age / scale) and E = e^z: the sums of E, zE and z²E over all lives, less those at their starts.
  const zE = (shape * deaths * (sums.byLog - logScale * sums.sum)) / sums.sum;
  const zzE =
    (shape ** 2 * deaths * (sums.byLogSquared - 2 * logScale * sums.byLog + logScale ** 2 * sums.sum)) / sums.sum;
  const sumZOfDeaths = shape * (sumLogDeathAge - deaths * logScale);
  const scaleScale = shape ** 2 * deaths;
  const scaleShape = -shape * zE;
  const shapeShape = zE + zzE - sumZOfDeaths + (prior === undefined ? 0 : 1 / prior.logSpread ** 2);
  const determinant = scaleScale * shapeShape - scaleShape ** 2;
  return {
    kind: 'fitted',
    shape,
    scale: seen.unit * Math.exp(logScale),
    logLikelihood: deaths * (logShape - shape * logScale - Math.log(seen.unit) - 1) + (shape - 1) * sumLogDeathAge,
    deaths,
    units: seen.units,
    logScaleError: Math.sqrt(shapeShape / determinant),
    logShapeError: Math.sqrt(scaleScale / determinant),
    covariance: -scaleShape / determinant,
  };
}
