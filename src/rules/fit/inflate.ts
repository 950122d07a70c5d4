import type { TireMarks } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import { type Mounting, pressureNeeded, tireCapacity } from '../tire/tire-capacity.js';
import { massHeldUpBy, type Newtons, newtons, weightOf } from '../units/force.js';
import { type Kilopascals, kPa } from '../units/pressure.js';
import type { FitCase, FitRemedy } from './fit-answer.js';

/**
 * The least pressure, cold, at which the tires that are over carry their load by the published rows, and what each
 * carries then. Null when not all of them would, whatever the pressure: never above the sidewall's.
 */
export function inflate({ trailer, input, check, limits }: FitCase): Extract<FitRemedy, { kind: 'inflate' }> | null {
  const over = new Map<string, Newtons>();
  for (const { limit, loadN, standing } of check.comparisons) {
    if (limit.kind === 'tire' && limit.subject !== null && standing === 'over') over.set(limit.subject, loadN);
  }
  const steps = [];
  for (const part of partsOn(trailer.facts.parts, 'tire', input.startsOn)) {
    const loadN = part.position === null ? undefined : over.get(part.position);
    if (loadN === undefined || part.tire === null || part.position === null) continue;
    const axle = limits.axles.find((one) => one.tires.some((tire) => tire.subject === part.position));
    const mounting = (axle?.wheels ?? 2) > 2 ? 'dual' : 'single';
    const carryingFrom = carriesFrom(part.tire, mounting, loadN);
    if (carryingFrom === null) return null;
    steps.push({ position: part.position, ...carryingFrom });
  }
  if (steps.length === 0) return null;
  return {
    kind: 'inflate',
    positions: steps.map((step) => step.position).sort(),
    toKpa: kPa(Math.max(...steps.map((step) => step.coldKpa))),
    askedByPlateKpa: trailer.buildOn(input.startsOn)?.plate.coldPressureKpa ?? null,
    carriesN: newtons(Math.min(...steps.map((step) => step.carriesN))),
  };
}

/** The least pressure known to carry a load, and what the tire carries then; null when none is. */
function carriesFrom(
  tire: TireMarks,
  mounting: Mounting,
  loadN: Newtons,
): { readonly coldKpa: Kilopascals; readonly carriesN: Newtons } | null {
  const needed = pressureNeeded(tire, mounting, massHeldUpBy(loadN));
  if (needed.kind !== 'known') return null;
  const capacity = tireCapacity(tire, mounting, needed.coldKpa);
  return capacity.kind === 'known' ? { coldKpa: needed.coldKpa, carriesN: weightOf(capacity.massKg) } : null;
}
