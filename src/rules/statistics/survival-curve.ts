import type { Lifetime } from './lifetime.js';

/** One drop of the curve: an age at which units died. */
interface SurvivalStep {
  readonly age: number;
  /** Units under watch just before. */
  readonly atRisk: number;
  readonly died: number;
  /** Share alive after it. */
  readonly survival: number;
  /** Greenwood's standard error of that share; null where nobody is left. */
  readonly standardError: number | null;
}

/**
 * Share alive against age with no assumed law (Kaplan–Meier), for censored and late-watched lives. At a tie deaths come
 * before removals, and a unit whose watch begins at an age is not yet at risk there.
 * Source: E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958); error after M. Greenwood (1926); as in R `survfit`.
 */
export function survivalCurve(lives: readonly Lifetime[]): readonly SurvivalStep[] {
  const deathAges = [...new Set(lives.filter((life) => life.died).map((life) => life.age))].sort((a, b) => a - b);
  const ends = sortedCounts(lives.map((life) => ({ at: life.age, count: life.count ?? 1 })));
  const starts = sortedCounts(lives.map((life) => ({ at: life.watchedFrom ?? 0, count: life.count ?? 1 })));
  const deathsAt = new Map<number, number>();
  for (const life of lives) {
    if (life.died) deathsAt.set(life.age, (deathsAt.get(life.age) ?? 0) + (life.count ?? 1));
  }
  let survival = 1;
  let greenwood = 0;
  return deathAges.map((age) => {
    const died = deathsAt.get(age) ?? 0;
    const atRisk = starts.before(age) - ends.before(age);
    survival *= 1 - died / atRisk;
    greenwood += died / (atRisk * (atRisk - died));
    return {
      age,
      atRisk,
      died,
      survival: died === atRisk ? 0 : survival,
      standardError: died === atRisk || survival === 0 ? null : survival * Math.sqrt(greenwood),
    };
  });
}

/** The share alive at an age. */
export function survivalAt(curve: readonly SurvivalStep[], age: number): number {
  return curve.findLast((step) => step.age <= age)?.survival ?? 1;
}

/**
 * Age by which a share has died: the first at which the curve is that low; where it lies level exactly there, the middle
 * of the stretch to the next death (so the median of eight lives is the mean of the fourth and fifth), as in R. Null
 * while the curve has not come down so far.
 */
export function ageReachedOnCurve(curve: readonly SurvivalStep[], share: number): number | null {
  const alive = 1 - share;
  const index = curve.findIndex((step) => step.survival <= alive + LEVEL);
  const step = curve[index];
  if (step === undefined) return null;
  const next = curve[index + 1];
  return Math.abs(step.survival - alive) <= LEVEL && next !== undefined ? (step.age + next.age) / 2 : step.age;
}

/** Products of fractions that should be equal differ in the last digits. */
const LEVEL = 1e-9;

/** Running counts, to ask how many units began or ended before an age. */
function sortedCounts(events: readonly { at: number; count: number }[]): { before(age: number): number } {
  const sorted = events.toSorted((a, b) => a.at - b.at);
  let place = 0;
  let passed = 0;
  return {
    // Asked with rising ages only, as the curve does.
    before(age) {
      for (let next = sorted[place]; next !== undefined && next.at < age; next = sorted[place]) {
        passed += next.count;
        place++;
      }
      return passed;
    },
  };
}
