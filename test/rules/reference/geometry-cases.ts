/**
 * Ramps and crests, inches and degrees. G1 and G4 worked out apart from this code; G2 and G3 are printed on pages that
 * explain breakover angles (one of them prints 27.04 for G2: 2 atan(24 / 100) is 26.99).
 */
export const G1 = { height: 34, ramp: 72, degrees: 28.18, friction: 0.536 };
export const BREAKOVERS = [
  { id: 'G2', clearance: 12, wheelbase: 100, degrees: 26.99 },
  { id: 'G3', clearance: 15, wheelbase: 120, degrees: 28.07 },
];
export const G4 = { wheelbase: 45, crestDegrees: 18, clearance: 3.56 };
