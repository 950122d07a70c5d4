import { gammaBelow } from './distributions.js';

/**
 * Wear that only ever grows, in independent steps (gamma process): after a distance t the wear is gamma distributed with
 * shape `perDistance` · t and scale `step`. Unlike a line it can never run backwards, and its spread grows with distance.
 */
interface WearProcess {
  readonly perDistance: number;
  readonly step: number;
}

/** Wear between two looks, and the distance between them. */
interface WearStep {
  readonly wear: number;
  readonly distance: number;
}

/**
 * The process by the method of moments. Null with fewer than two steps, without wear, or with steps so even that no
 * spread is seen. Source: J. M. van Noortwijk, Reliab. Eng. Syst. Saf. 94 (2009) 2–21, section 4.2; the expected square
 * divided by what unequal steps leave of it, so that the step is not understated.
 */
export function wearProcess(steps: readonly WearStep[]): WearProcess | null {
  let wear = 0;
  let distance = 0;
  let distanceSquares = 0;
  for (const step of steps) {
    wear += step.wear;
    distance += step.distance;
    distanceSquares += step.distance ** 2;
  }
  if (steps.length < 2 || !(wear > 0) || !(distance > 0)) return null;
  const rate = wear / distance;
  const squares = steps.reduce((sum, step) => sum + (step.wear - rate * step.distance) ** 2, 0);
  const size = squares / (wear * (1 - distanceSquares / distance ** 2));
  return size > 0 ? { perDistance: rate / size, step: size } : null;
}

/** Probability that the wear has come to `limit` by the time `distance` is driven. */
export function wornByProbability({ perDistance, step }: WearProcess, limit: number, distance: number): number {
  if (distance <= 0) return limit <= 0 ? 1 : 0;
  return 1 - gammaBelow(limit, perDistance * distance, 1 / step);
}

/** Distance by which the wear has come to `limit` (above 0) with this probability (above 0, below 1). */
export function distanceToWear(process: WearProcess, limit: number, probability: number): number {
  let low = 0;
  let high = limit / (process.perDistance * process.step);
  while (wornByProbability(process, limit, high) < probability) {
    low = high;
    high *= 2;
  }
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (wornByProbability(process, limit, middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
