import type { ScaleTicket } from '../facts/load.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import { reliefOf, tongueLever } from './level.js';
import type { Comparison, LimitKind } from './limit.js';
import type { LoadCheck } from './load-check.js';
import type { LoadLimits } from './load-limits.js';

/**
 * What a scale ticket would read after a weight on the deck was moved forward (negative: back) by a distance d. Nothing
 * is added, so the gross stays; the tongue gains w d over the lever (`level.ts`), equalized axles lose it in equal
 * parts, and torsion axles each k x over Σ k x² of w d. Exact for the plane statics of the rest of this folder, in which
 * tongue and axles are linear in the load's moment; springs as they are.
 *
 * Null while a place or rate is unknown, and when an axle would be off the ground, since those sums then end. Where axles
 * may share in any way, single axles are left out of the answer.
 */
export function movedTicket(
  limits: LoadLimits,
  ticket: ScaleTicket,
  massKg: Kilograms,
  forwardM: Metres,
): ScaleTicket | null {
  if (forwardM === 0) return ticket;
  const leverM = tongueLever(limits);
  if (leverM === null || !(leverM > 0)) return null;
  const momentNm = weightOf(massKg) * forwardM;
  const gainsN = momentNm / leverM;
  const axleN = ticket.axleN === null ? null : movedAxles(limits, ticket.axleN, momentNm, gainsN);
  if (axleN?.some((force) => force <= 0)) return null;
  return {
    grossKg: ticket.grossKg,
    tongueN: ticket.tongueN === null ? null : newtons(ticket.tongueN + gainsN),
    axleN,
  };
}

function movedAxles(
  limits: LoadLimits,
  axleN: readonly Newtons[],
  momentNm: number,
  gainsN: number,
): readonly Newtons[] | null {
  // A ticket that lumps axles together still tells what they carry in all.
  if (axleN.length !== limits.axles.length || limits.sharing === 'unknown') {
    return axleN.length === 1 ? [newtons((axleN[0] as Newtons) - gainsN)] : null;
  }
  if (limits.sharing === 'equal') return axleN.map((force) => newtons(force - gainsN / axleN.length));
  const reliefs = axleN.map((_force, index) => reliefOf(limits, index, metres(1)));
  return axleN.map((force, index) => newtons(force - momentNm * (reliefs[index] ?? 0)));
}

/** Limits that a place on the deck does not change: a ticket's gross stays measured, wherever the load is moved. */
const OF_THE_GROSS: ReadonlySet<LimitKind> = new Set(['plate', 'coupler', 'tow-hitch']);

/**
 * A check in which tongue and axles were worked out from a ticket and no longer stood on a scale: whatever depends on
 * the place counts as unmeasured, and within the yard's share of its limit is to be weighed.
 */
export function asWorkedOut(check: LoadCheck, { weighFirstShare }: Pick<YardPolicy, 'weighFirstShare'>): LoadCheck {
  const workedOut = (comparison: Comparison): Comparison => {
    if (OF_THE_GROSS.has(comparison.limit.kind)) return comparison;
    const isNear = comparison.standing === 'inside' && comparison.marginN < weighFirstShare * comparison.limit.limitN;
    return { ...comparison, measured: false, standing: isNear ? 'near' : comparison.standing };
  };
  return { ...check, method: 'statics', comparisons: check.comparisons.map(workedOut) };
}
