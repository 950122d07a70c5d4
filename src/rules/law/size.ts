import { exceeds } from '../units/compare.js';
import { feet, inch, type Metres } from '../units/length.js';

/**
 * Widest vehicle with its load on the National Network without a permit; safety devices and fittings within 3 in of a
 * side are not measured. Source: 23 CFR 658.15(a), 658.16; Hawaii 108 in. Cargo counts (FHWA, questions on 658.15).
 * It binds commercial vehicles; most States have the same for others: check your state.
 */
export const LEGAL_WIDTH_M = inch(102);

/** Whether something this wide needs a permit on the National Network. */
export function needsWidthPermit(widthM: Metres): boolean {
  return exceeds(widthM, LEGAL_WIDTH_M);
}

/** A load that reaches further than this beyond the sides or the rear is flagged. Source: 49 CFR 393.87(a). */
const FLAG_BEYOND_SIDE_M = inch(4);
const FLAG_BEYOND_REAR_M = feet(4);

/** Red or orange flags, 18 in square, at the ends of what reaches out. Source: 49 CFR 393.87. */
export function needsWarningFlags(beyondSideM: Metres, beyondRearM: Metres): boolean {
  return exceeds(beyondSideM, FLAG_BEYOND_SIDE_M) || exceeds(beyondRearM, FLAG_BEYOND_REAR_M);
}
