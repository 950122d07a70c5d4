import { partsOn } from '../facts/parts-on.js';
import { tireCapacity } from '../tire/tire-capacity.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Kilopascals, kPa, psi } from '../units/pressure.js';
import type { FitCase, FitRemedy } from './fit-answer.js';

/** Gauges and published rows are marked in steps of this. */
const STEP_KPA = psi(5);

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
    const most = part.tire.maxColdPressureKpa;
    if (most === null) return null;
    const carryingFrom = leastPressure(
      most,
      (coldKpa) => {
        const capacity = tireCapacity(part.tire as NonNullable<typeof part.tire>, mounting, coldKpa);
        return capacity.kind === 'known' ? weightOf(capacity.massKg) : newtons(0);
      },
      loadN,
    );
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

function leastPressure(
  most: Kilopascals,
  carriesAt: (coldKpa: Kilopascals) => Newtons,
  loadN: Newtons,
): { coldKpa: Kilopascals; carriesN: Newtons } | null {
  const steps: Kilopascals[] = [];
  for (let step = 1; step * STEP_KPA < most; step++) steps.push((step * STEP_KPA) as Kilopascals);
  for (const coldKpa of [...steps, most]) {
    const carriesN = carriesAt(coldKpa);
    if (carriesN >= loadN) return { coldKpa, carriesN };
  }
  return null;
}
