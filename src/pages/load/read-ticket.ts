import type { ScaleTicket } from '../../rules/facts/load.js';
import { PLAUSIBLE_LOAD, type Plausible } from '../../rules/facts/plausible.js';
import { type Newtons, weightOf } from '../../rules/units/force.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { showForce, showMass } from '../components/show-quantity.js';
import type { FormReader } from '../form/read-form.js';

/** Axles a ticket is asked for: more a trailer of this trade does not have. */
export const TICKET_AXLES = [0, 1, 2];

interface ReadTicket {
  readonly scale: ScaleTicket | null;
  readonly problems: readonly FieldProblem[];
}

/** A scale ticket as typed; none when nothing was. One whose parts weigh more than the whole was misread. */
export function readTicket(form: FormReader): ReadTicket {
  const problems: FieldProblem[] = [];
  const refuse = (field: string, { what, low, high }: Plausible<never>, show: (end: never) => string) =>
    problems.push({ field, message: `Enter ${what} as a number from ${show(low)} to ${show(high)}.` });
  const grossKg = form.pounds('gross');
  const tongueN = form.poundsOfForce('tongue');
  const axles = TICKET_AXLES.map((axle) => form.poundsOfForce(`axle.${axle}`));
  const last = axles.findLastIndex((axle) => axle !== null);
  if (grossKg === null && tongueN === null && last < 0) return { scale: null, problems };

  if (!isWithin(grossKg, PLAUSIBLE_LOAD.scaleGross)) refuse('gross', PLAUSIBLE_LOAD.scaleGross as never, showMass);
  if (!isWithin(tongueN, PLAUSIBLE_LOAD.scaleTongue)) refuse('tongue', PLAUSIBLE_LOAD.scaleTongue as never, showForce);
  for (const axle of TICKET_AXLES.slice(0, last + 1)) {
    const force = axles[axle] ?? null;
    if (force === null || !isWithin(force, PLAUSIBLE_LOAD.scaleAxle)) {
      refuse(`axle.${axle}`, PLAUSIBLE_LOAD.scaleAxle as never, showForce);
    }
  }
  const axleN = last < 0 ? null : (axles.slice(0, last + 1) as Newtons[]);
  const partsN = (tongueN ?? 0) + (axleN ?? []).reduce((sum, force) => sum + force, 0);
  // Scales read to 20 lb and more; 2 % covers that and no slip of a digit. Our bound.
  if (grossKg !== null && partsN > weightOf(grossKg) * 1.02) {
    problems.push({
      field: 'gross',
      message: 'Read the ticket again: tongue and axles together weigh more than the whole trailer.',
    });
  }
  return { scale: problems.length > 0 ? null : { grossKg, tongueN, axleN }, problems };
}

function isWithin(value: number | null, { low, high }: Plausible): boolean {
  return value === null || (value >= low && value <= high);
}
