import type { CargoItem, Load } from '../facts/load.js';
import type { Comparison } from '../load/limit.js';
import { checkLoad } from '../load/load-check.js';
import { massHeldUpBy } from '../units/force.js';
import { kg } from '../units/mass.js';
import type { FitCase, FitRemedy } from './fit-answer.js';
import { isSettledByScale } from './open-axles.js';

type Lighten = Extract<FitRemedy, { kind: 'lighten' }>;

/**
 * What sparing cargo would bring: item after item, in the order they are offered, each step with all before it, until
 * it fits. What would fit but for an axle that nobody could check is to be weighed. A swapped item counts its whole
 * weight as saved, so it is entered as what it weighs above the standard one.
 */
export function lighten(fitCase: FitCase): readonly Lighten[] {
  const { input } = fitCase;
  const steps: Lighten[] = [];
  const spared: CargoItem[] = [];
  for (const item of input.load.cargo) {
    if (item.remedy === null) continue;
    spared.push(item);
    const step = without(spared, fitCase);
    if (step === null) break;
    steps.push(step);
    if (step.standing === 'inside') break;
  }
  return steps;
}

function without(spared: readonly CargoItem[], { input, limits, trailer }: FitCase): Lighten | null {
  const { policy } = trailer.facts;
  const check = checkLoad(limits, lighter(input.load, spared), policy);
  const isGuess = spared.some((item) => item.basis !== 'weighed');
  const judged = check.comparisons.map((one) => (isGuess ? doubted(one, policy.weighFirstShare) : one));
  const worst = judged.reduce<Comparison | null>(
    (most, next) => (most === null || isWorse(next, most) ? next : most),
    null,
  );
  if (check.grossKg === null || worst === null) return null;
  return {
    kind: 'lighten',
    items: spared.map((item) => item.name),
    grossKg: check.grossKg,
    overKg: kg(-massHeldUpBy(worst.marginN)),
    standing: worst.standing === 'inside' && check.unknowns.some(isSettledByScale) ? 'near' : worst.standing,
  };
}

/** What was spared by a guess leaves a guess: however well the rest was weighed, near a limit it is weighed again. */
function doubted(comparison: Comparison, weighFirstShare: number): Comparison {
  const isNear = comparison.standing === 'inside' && comparison.marginN < weighFirstShare * comparison.limit.limitN;
  return isNear ? { ...comparison, measured: false, standing: 'near' } : comparison;
}

/** The load without some items. What a scale said of the whole is less by their weight; what it said of tongue and axles no longer holds. */
function lighter(load: Load, spared: readonly CargoItem[]): Load {
  const savedKg = spared.reduce<number>((sum, item) => sum + item.massKg, 0);
  const grossKg = load.scale?.grossKg ?? null;
  return {
    ...load,
    cargo: load.cargo.filter((item) => !spared.includes(item)),
    scale: grossKg === null ? null : { grossKg: kg(grossKg - savedKg), tongueN: null, axleN: null },
  };
}

const STANDING_ORDER = { over: 0, near: 1, inside: 2 } as const;

function isWorse(a: Comparison, b: Comparison): boolean {
  const byStanding = STANDING_ORDER[a.standing] - STANDING_ORDER[b.standing];
  return byStanding !== 0 ? byStanding < 0 : a.marginN / a.limit.limitN < b.marginN / b.limit.limitN;
}
