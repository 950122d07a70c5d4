import type { BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import { inch, type Metres } from '../units/length.js';
import { type Kilograms, kg, lb } from '../units/mass.js';

/** Classes of equipment trailer in the order of what they carry; below the least of them it is none. */
export type TrailerClass = 'light' | 'medium' | 'heavy' | 'gooseneck-deck-over' | 'not-an-equipment-trailer';

/**
 * What makes a class: depth of the main rail and rating of each axle. Common practice, no source.
 * Light: 5 in frame, 5,200 lb axles. Medium: 6 in, 7,000 lb. Heavy: 8 in, 8,000 lb, on 17.5 in tires of 16 plies.
 * Gooseneck deck-over: I-beam, axles of 10,000 to 15,000 lb.
 */
const BY_DECK: readonly {
  readonly trailerClass: 'light' | 'medium' | 'heavy';
  readonly frameM: Metres;
  readonly axleKg: Kilograms;
}[] = [
  { trailerClass: 'heavy', frameM: inch(8), axleKg: lb(8_000) },
  { trailerClass: 'medium', frameM: inch(6), axleKg: lb(7_000) },
  { trailerClass: 'light', frameM: inch(5), axleKg: lb(5_200) },
];

/** A frame shallower than this is no equipment trailer. Common practice, no source. */
const LEAST_FRAME_DEPTH_M = inch(5);

const HEAVY_RIM_IN = 17.5;
const GOOSENECK_AXLE_KG = lb(10_000);

/** Axles on an ordinary equipment trailer. Common practice, no source; used only to say which class a load looks like. */
const USUAL_AXLES = 2;

/** Ratings and depths are entered rounded (a 6 in channel reads 152 mm), so a class is reached within half a percent. Our choice. */
const ROUNDING = 0.995;

/**
 * The class of a build by common practice. The weakest of frame, axles and tires decides, as the whole is no stronger.
 * Null when neither frame depth nor any axle rating is known.
 */
export function trailerClass(build: BuildSheet, tires: readonly Part[]): TrailerClass | null {
  const depthM = build.frame.depthM;
  if (depthM !== null && isTooShallow(depthM)) return 'not-an-equipment-trailer';
  const axleKg = weakestAxleKg(build);
  if (axleKg === null && depthM === null) return null;
  if (isGooseneckDeckOver(build, axleKg)) return 'gooseneck-deck-over';
  const reached = BY_DECK.find(
    (step) =>
      (depthM === null || depthM >= step.frameM * ROUNDING) &&
      (axleKg === null || axleKg >= step.axleKg * ROUNDING) &&
      (step.trailerClass !== 'heavy' || !knownSmallerRims(tires)),
  );
  return reached?.trailerClass ?? 'light';
}

/** Whether a main rail is too shallow for any equipment trailer. */
export function isTooShallow(depthM: Metres): boolean {
  return depthM < LEAST_FRAME_DEPTH_M * ROUNDING;
}

/** The class whose usual two axles carry this gross mass. Common practice, no source; null when none of them does. */
export function classForGross(grossKg: Kilograms): TrailerClass | null {
  const step = BY_DECK.findLast((row) => row.axleKg * USUAL_AXLES >= grossKg * ROUNDING);
  if (step !== undefined) return step.trailerClass;
  return grossKg * ROUNDING <= lb(15_000) * USUAL_AXLES ? 'gooseneck-deck-over' : null;
}

/** The least gross mass that a trailer of a class is built for, by its usual two axles. Common practice, no source; null for none. */
export function grossOfClass(trailerClass: TrailerClass): Kilograms | null {
  if (trailerClass === 'gooseneck-deck-over') return kg(GOOSENECK_AXLE_KG * USUAL_AXLES);
  const step = BY_DECK.find((row) => row.trailerClass === trailerClass);
  return step === undefined ? null : kg(step.axleKg * USUAL_AXLES);
}

function isGooseneckDeckOver(build: BuildSheet, axleKg: Kilograms | null): boolean {
  if (build.hitch.kind !== 'gooseneck' || build.body !== 'deck-over') return false;
  return axleKg === null ? build.frame.section === 'i-beam' : axleKg >= GOOSENECK_AXLE_KG * ROUNDING;
}

function weakestAxleKg(build: BuildSheet): Kilograms | null {
  let least: Kilograms | null = null;
  for (const axle of build.axles) {
    const rating = axle.ratingKg ?? axle.gawrKg;
    if (rating !== null && (least === null || rating < least)) least = rating;
  }
  return least;
}

/** True when a fitted tire's size is readable and its rim is smaller than 17.5 in; an unreadable size proves nothing. */
function knownSmallerRims(tires: readonly Part[]): boolean {
  return tires.some((part) => {
    const rim = /[RD-](\d{2}(?:\.\d)?)/i.exec(part.tire?.size ?? '');
    return rim !== null && part.position !== 'spare' && Number(rim[1]) < HEAVY_RIM_IN;
  });
}
