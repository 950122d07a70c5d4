import { type Newtons, newtons } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilopascals, kPa } from '../units/pressure.js';

/** Bending moment, N·m. */
export type NewtonMetres = number;

/**
 * A load on one plank that spans two crossmembers as a simple beam. `patchM` is its length along the plank, 0 for a
 * point. Statics of a simply supported beam; small deflections.
 */
export interface PatchLoad {
  readonly loadN: Newtons;
  readonly patchM: Metres;
  readonly spanM: Metres;
}

/**
 * Greatest moment with the load in the middle: P/4 · (L − c/2) while it fits the span, else the part on the span,
 * (P/c) · L²/8. Throws RangeError for a span of nothing.
 */
export function momentAtMiddle({ loadN, patchM, spanM }: PatchLoad): NewtonMetres {
  refuseNoSpan(spanM);
  if (patchM > spanM) return (loadN / patchM) * (spanM ** 2 / 8);
  return (loadN / 4) * (spanM - patchM / 2);
}

/**
 * Moment and reactions with the patch centred at `centreM` from the left crossmember, all of it on the span:
 * R = P (L − x)/L, M = R a + R² c/(2P), a = x − c/2. Throws RangeError where it hangs over an end.
 */
export function momentOffCentre({ loadN, patchM, spanM }: PatchLoad, centreM: Metres) {
  refuseNoSpan(spanM);
  const startM = centreM - patchM / 2;
  // Half a micrometre of slack: lengths come from inches.
  if (startM < -5e-7 || centreM + patchM / 2 > spanM + 5e-7) {
    throw new RangeError(`a patch of ${patchM} m at ${centreM} m does not lie on a span of ${spanM} m`);
  }
  const leftN = (loadN * (spanM - centreM)) / spanM;
  const momentNm: NewtonMetres = loadN === 0 ? 0 : leftN * startM + (leftN ** 2 * patchM) / (2 * loadN);
  return { momentNm, leftN: newtons(leftN), rightN: newtons(loadN - leftN) };
}

/**
 * A plank that runs on over the crossmember beside: two equal spans, a point load rolling over one. Greatest moment under
 * the load 0.2074 P L, at 0.432 L from the outer end; over the middle support -0.0962 P L, with the load at L/√3.
 * Exact, by the three-moment equation. Where boards end on a crossmember the simple span holds, so that one is judged by.
 */
export function momentOverTwoSpans(loadN: Newtons, spanM: Metres): { spanNm: NewtonMetres; supportNm: NewtonMetres } {
  refuseNoSpan(spanM);
  return { spanNm: TWO_SPAN.under * loadN * spanM, supportNm: -TWO_SPAN.support * loadN * spanM };
}

/** Share of P·L under a point load at `place` (0 to 1 of the span from the outer end) of the first of two equal spans. */
export function twoSpanShares(place: number): { readonly under: number; readonly support: number } {
  const support = (place * (1 - place ** 2)) / 4;
  return { under: place * (1 - place) - support * place, support };
}

/** Where the moment under the load is greatest: the root of 1 − 5x/2 + x³ that lies on the span. */
const WORST_PLACE = 0.432_320_443;
const TWO_SPAN = {
  under: twoSpanShares(WORST_PLACE).under,
  support: twoSpanShares(1 / Math.sqrt(3)).support,
};

/** Section modulus of boards laid flat, m³: b t²/6, once `lostM` has rotted off one face. Nothing left gives 0. */
export function sectionModulus(widthM: Metres, thicknessM: Metres, lostM: Metres): number {
  return (widthM * leftOf(thicknessM, lostM) ** 2) / 6;
}

/** Bending stress M/S. Infinite where nothing is left of the board. */
export function bendingStress(momentNm: NewtonMetres, widthM: Metres, thicknessM: Metres, lostM: Metres): Kilopascals {
  return kPa(momentNm / sectionModulus(widthM, thicknessM, lostM) / 1000);
}

/** Shear stress 1.5 V/(b t); the greatest V has the load beside a crossmember, so V is the whole load. */
export function shearStress(loadN: Newtons, widthM: Metres, thicknessM: Metres, lostM: Metres): Kilopascals {
  return kPa((1.5 * loadN) / (widthM * leftOf(thicknessM, lostM)) / 1000);
}

/** How far the plank sags under a point load in the middle, P L³/(48 E I): never less than under the same load spread. */
export function sag(
  { loadN, spanM }: PatchLoad,
  elasticity: Kilopascals,
  widthM: Metres,
  thicknessM: Metres,
  lostM: Metres,
): Metres {
  const inertia = (widthM * leftOf(thicknessM, lostM) ** 3) / 12;
  return metres((loadN * spanM ** 3) / (48 * elasticity * 1000 * inertia));
}

/**
 * Boards that lie wholly under a contact: its width over the board's, rounded down and at least one. A tire on a board
 * and a half presses on one when it stands badly; boards side by side share nothing unless blocked together.
 */
export function boardsUnder(contactWidthM: Metres, boardWidthM: Metres): number {
  return Math.max(1, Math.floor(contactWidthM / boardWidthM + 1e-9));
}

function leftOf(thicknessM: Metres, lostM: Metres): number {
  return Math.max(0, thicknessM - lostM);
}

function refuseNoSpan(spanM: Metres): void {
  if (!(spanM > 0)) throw new RangeError(`a span of ${spanM} m is none`);
}
