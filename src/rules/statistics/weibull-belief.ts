import type { Lifetime } from './lifetime.js';
import { deathWithinProbability, type Weibull } from './weibull.js';
import { exposure, fitWeibull, type LogNormalPrior, type SeenLives, sortedOut } from './weibull-fit.js';

/**
 * What is held of a Weibull life once a prior and the lives seen are put together: not one curve but many, each with its
 * weight. With few deaths the curves lie far apart and forecasts are wide; with many they close in on the fit.
 */
interface WeibullBelief {
  readonly curves: readonly WeightedWeibull[];
  readonly deaths: number;
  readonly units: number;
  /** The middle of what is held: exp of the mean of the logarithms. */
  readonly shape: number;
  readonly scale: number;
}

interface WeightedWeibull extends Weibull {
  /** All of a belief add up to 1. */
  readonly weight: number;
}

/** Curves on each side of the middle for each parameter, and how far apart in standard deviations: 5.25 each way. */
const REACH = 7;
const STEP = 0.75;

/**
 * Bayes' rule for a Weibull life with lognormal priors on shape and scale, for censored and late-watched lives. Works
 * with no death, or no life at all: then the prior speaks alone. Null where a life is impossible (a death at age 0, or
 * before its watch began).
 *
 * The posterior is summed over a lattice laid along its own axes around its top; for a smooth hill that sum is as good as
 * the integral (trapezoid rule). Source: W. Q. Meeker, L. A. Escobar, Statistical
 * Methods for Reliability Data (1998), chapter 14; the sum checked against a fine grid in R.
 */
export function weibullBelief(
  lives: readonly Lifetime[],
  shapePrior: LogNormalPrior,
  scalePrior: LogNormalPrior,
): WeibullBelief | null {
  const seen = sortedOut(lives);
  if (seen === null) return null;
  const unit = seen.units === 0 ? 1 : seen.unit;
  const hill = new Hill(seen, shapePrior, scalePrior, unit);
  const top = hill.top(startOf(lives, shapePrior, scalePrior, unit));
  const { nodes, total } = lattice(hill, top);
  let logShape = 0;
  let logScale = 0;
  const curves = nodes.map((node) => {
    const weight = node.weight / total;
    logShape += weight * node.logShape;
    logScale += weight * (node.logScale + Math.log(unit));
    return { shape: Math.exp(node.logShape), scale: unit * Math.exp(node.logScale), weight };
  });
  return { curves, deaths: seen.deaths, units: seen.units, shape: Math.exp(logShape), scale: Math.exp(logScale) };
}

/**
 * Probability that a unit alive at `age` dies within the next `span`. That it has lasted until now must be among the
 * lives (as one that has not ended), or its age has taught nothing.
 */
export function deathWithinByBelief({ curves }: WeibullBelief, age: number, span: number): number {
  return curves.reduce((sum, curve) => sum + curve.weight * deathWithinProbability(curve, age, span), 0);
}

/** Age by which a unit alive at `age` will have died with this probability (above 0, below 1). */
export function ageReachedByBelief(belief: WeibullBelief, age: number, probability: number): number {
  const { curves } = belief;
  const before = curves.map(({ shape, scale }) => (age / scale) ** shape);
  let low = age;
  let high = Number.POSITIVE_INFINITY;
  let at = Math.max(age, belief.scale) * 1.05;
  for (let i = 0; i < 100; i++) {
    let alive = 0;
    let falls = 0;
    for (let c = 0; c < curves.length; c++) {
      const { shape, scale, weight } = curves[c] as WeightedWeibull;
      const wear = (at / scale) ** shape;
      const share = weight * Math.exp((before[c] as number) - wear);
      alive += share;
      falls += (share * shape * wear) / at;
    }
    const off = alive - (1 - probability);
    if (off > 0) low = at;
    else high = at;
    const newton = at + off / falls;
    const middle = Number.isFinite(high) ? (low + high) / 2 : at * 2;
    const next = newton > low && newton < high ? newton : middle;
    if (Math.abs(next - at) <= 1e-9 * at) return next;
    at = next;
  }
  return at;
}

/** The prior's middle; with deaths, what they say about the scale at a shape kept sane by its prior. */
function startOf(lives: readonly Lifetime[], shapePrior: LogNormalPrior, scalePrior: LogNormalPrior, unit: number) {
  const fit = fitWeibull(lives, shapePrior);
  const { shape, scale } =
    fit.kind === 'fitted' ? fit : { shape: shapePrior.median, scale: Math.max(scalePrior.median, unit) };
  return { logShape: Math.log(shape), logScale: Math.log(scale / unit) };
}

interface Node {
  readonly logShape: number;
  readonly logScale: number;
  readonly weight: number;
}

interface Top {
  readonly logShape: number;
  readonly logScale: number;
  /** Standard deviations of ln shape, and of ln scale where ln shape is given; and how ln scale leans on ln shape. */
  readonly shapeSpread: number;
  readonly scaleSpread: number;
  readonly lean: number;
}

function lattice(hill: Hill, top: Top): { nodes: readonly Node[]; total: number } {
  const raw: Node[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = -REACH; i <= REACH; i++) {
    const offShape = i * STEP * top.shapeSpread;
    const logShape = top.logShape + offShape;
    const across = hill.along(logShape);
    for (let j = -REACH; j <= REACH; j++) {
      const logScale = top.logScale + top.lean * offShape + j * STEP * top.scaleSpread;
      const height = across(logScale);
      highest = Math.max(highest, height);
      raw.push({ logShape, logScale, weight: height });
    }
  }
  let total = 0;
  const nodes: Node[] = [];
  for (const node of raw) {
    const weight = Math.exp(node.weight - highest);
    // What weighs less than a millionth of the top moves no answer and costs as much as the rest.
    if (weight < 1e-6) continue;
    total += weight;
    nodes.push({ ...node, weight });
  }
  return { nodes, total };
}

const MOST_CLIMBS = 60;
/** Climbing ends with a step this small in ln shape and ln scale. */
const SETTLED = 1e-8;

/** Slopes of the height towards ln shape and ln scale, and its curvatures with the sign turned. */
interface Bend {
  readonly toShape: number;
  readonly toScale: number;
  readonly shapeShape: number;
  readonly scaleScale: number;
  readonly both: number;
}

/** Newton's step; where the hill is not rounded, as if it were just so much more curved that it is. At most 1 long. */
function stepUp({ toShape, toScale, shapeShape, scaleScale, both }: Bend): { byShape: number; byScale: number } {
  const middle = (shapeShape + scaleScale) / 2;
  const least = middle - Math.hypot((shapeShape - scaleScale) / 2, both);
  const more = least > 0 ? 0 : 1e-3 * Math.abs(middle) + 1e-6 - least;
  const round = (shapeShape + more) * (scaleScale + more) - both ** 2;
  const byShape = ((scaleScale + more) * toShape - both * toScale) / round;
  const byScale = ((shapeShape + more) * toScale - both * toShape) / round;
  const far = Math.max(1, Math.abs(byShape), Math.abs(byScale));
  return { byShape: byShape / far, byScale: byScale / far };
}

/** ln of prior times likelihood over (ln shape, ln scale), ages in units of `unit`. */
class Hill {
  private readonly shapeMiddle: number;
  private readonly scaleMiddle: number;

  constructor(
    private readonly seen: SeenLives,
    private readonly shapePrior: LogNormalPrior,
    private readonly scalePrior: LogNormalPrior,
    unit: number,
  ) {
    this.shapeMiddle = Math.log(shapePrior.median);
    this.scaleMiddle = Math.log(scalePrior.median / unit);
  }

  /** Heights at one shape: the lives are summed once for all scales. */
  along(logShape: number): (logScale: number) => number {
    const { deaths, sumLogDeathAge } = this.seen;
    const shape = Math.exp(logShape);
    const { sum } = exposure(this.seen, shape);
    const fixed =
      deaths * logShape +
      (shape - 1) * sumLogDeathAge -
      ((logShape - this.shapeMiddle) / this.shapePrior.logSpread) ** 2 / 2;
    return (logScale) =>
      fixed -
      deaths * shape * logScale -
      sum * Math.exp(-shape * logScale) -
      ((logScale - this.scaleMiddle) / this.scalePrior.logSpread) ** 2 / 2;
  }

  /** The top, by Newton steps that only ever climb, from a place near it, and how the hill falls away from there. */
  top(start: { readonly logShape: number; readonly logScale: number }): Top {
    let { logShape, logScale } = start;
    let height = this.along(logShape)(logScale);
    let bend = this.bend(logShape, logScale);
    for (let i = 0; i < MOST_CLIMBS; i++) {
      let { byShape, byScale } = stepUp(bend);
      let higher = this.along(logShape + byShape)(logScale + byScale);
      while (!(higher >= height) && Math.abs(byShape) + Math.abs(byScale) > SETTLED) {
        byShape /= 2;
        byScale /= 2;
        higher = this.along(logShape + byShape)(logScale + byScale);
      }
      if (!(higher >= height)) break;
      height = higher;
      logShape += byShape;
      logScale += byScale;
      bend = this.bend(logShape, logScale);
      if (Math.abs(byShape) + Math.abs(byScale) < SETTLED) break;
    }
    const shapeVariance = 1 / (bend.shapeShape - bend.both ** 2 / bend.scaleScale);
    return {
      logShape,
      logScale,
      shapeSpread: shapeVariance > 0 ? Math.sqrt(shapeVariance) : this.shapePrior.logSpread,
      scaleSpread: 1 / Math.sqrt(bend.scaleScale),
      lean: -bend.both / bend.scaleScale,
    };
  }

  /** Slopes and (negated) curvatures of the height. */
  private bend(logShape: number, logScale: number): Bend {
    const { deaths, sumLogDeathAge } = this.seen;
    const shape = Math.exp(logShape);
    const sums = exposure(this.seen, shape);
    const shrink = Math.exp(-shape * logScale);
    // With z = shape · ln(age / scale) and E = e^z, summed over lives.
    const e = sums.sum * shrink;
    const zE = shape * shrink * (sums.byLog - logScale * sums.sum);
    const zzE = shape ** 2 * shrink * (sums.byLogSquared - 2 * logScale * sums.byLog + logScale ** 2 * sums.sum);
    const z = shape * (sumLogDeathAge - deaths * logScale);
    const shapePull = 1 / this.shapePrior.logSpread ** 2;
    const scalePull = 1 / this.scalePrior.logSpread ** 2;
    return {
      toShape: deaths + z - zE - shapePull * (logShape - this.shapeMiddle),
      toScale: shape * (e - deaths) - scalePull * (logScale - this.scaleMiddle),
      shapeShape: zE + zzE - z + shapePull,
      scaleScale: shape ** 2 * e + scalePull,
      both: shape * (deaths - e - zE),
    };
  }
}
