import type { Body, BuildSheet, Hitch } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import { isPastUnbraked } from '../law/brakes.js';
import { couplingClass } from '../law/coupling.js';
import { LEGAL_WIDTH_M, needsWidthPermit } from '../law/size.js';
import { tongueBand } from '../load/tongue-band.js';
import { tireRating } from '../tire/tire-capacity.js';
import { exceeds } from '../units/compare.js';
import { massHeldUpBy, type Newtons } from '../units/force.js';
import { feet, type Metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { axleSum } from './axle-sum.js';
import { isTooShallow } from './trailer-class.js';
import { axleWheelPositions } from './wheel-positions.js';

/** Something in a build sheet that cannot be right, or that no one should build. Said on entry; never blocks saving. */
export type Contradiction =
  | { readonly kind: 'plate-above-axles'; readonly gvwrKg: Kilograms; readonly carriesKg: Kilograms }
  | {
      readonly kind: 'tires-below-axle';
      readonly axle: number;
      readonly tiresKg: Kilograms;
      readonly gawrKg: Kilograms;
    }
  | {
      readonly kind: 'axle-rating-below-gawr';
      readonly axle: number;
      readonly ratingKg: Kilograms;
      readonly gawrKg: Kilograms;
    }
  | { readonly kind: 'coupler-below-plate'; readonly couplerKg: Kilograms; readonly gvwrKg: Kilograms }
  | {
      readonly kind: 'chains-below-plate';
      readonly chainBreakKg: Kilograms;
      /** What each must hold under this plate: its class of coupling, or the plate itself. */
      readonly neededKg: Kilograms;
      readonly gvwrKg: Kilograms;
    }
  /** Axles without brakes under a plate that no light exception covers. */
  | { readonly kind: 'unbraked-axles'; readonly axles: readonly number[]; readonly gvwrKg: Kilograms }
  | { readonly kind: 'brakes-without-breakaway' }
  | { readonly kind: 'wider-than-law'; readonly widthM: Metres; readonly limitM: Metres }
  | { readonly kind: 'jack-too-small'; readonly supportKg: Kilograms; readonly axleRatingKg: Kilograms }
  | { readonly kind: 'slide-ramps-without-stabilizers' }
  | { readonly kind: 'single-jack-on-gooseneck' }
  | { readonly kind: 'part-way-tongue-on-channel' }
  | { readonly kind: 'frame-too-shallow'; readonly depthM: number }
  | { readonly kind: 'gravity-tilt-too-long'; readonly deckM: number }
  | { readonly kind: 'empty-above-plate'; readonly emptyKg: Kilograms; readonly gvwrKg: Kilograms };

/**
 * Decks longer than this do not suit the geometry of a gravity tilt. Common practice, no source: it says "beyond about
 * 24 to 26 ft"; we speak up only past the longer.
 */
const GRAVITY_TILT_DECK_M = feet(26);
const GRAVITY_TILTS: readonly (Body | null)[] = ['gravity-tilt', 'powered-gravity-tilt'];

/** Everything in a build that contradicts itself. An unknown contradicts nothing. `tires` are those fitted on the day. */
export function contradictions(build: BuildSheet, tires: readonly Part[]): readonly Contradiction[] {
  return [
    ...plateContradictions(build),
    ...axleContradictions(build, tires),
    ...jackContradictions(build),
    ...lawContradictions(build),
    ...bodyContradictions(build),
  ];
}

/**
 * Whether axles of these ratings can stand under a plate when the hitch carries `tongueKg` of it.
 * The axle ratings may add up to less than the plate, since the hitch carries part; it is a defect when the axle load
 * at GVWR passes them. Source: NHTSA interpretation letters nht76-3.20 (1976) and nht72-6.32 (1972).
 */
export function plateHolds(gvwrKg: Kilograms, axleSumKg: Kilograms, tongueKg: Kilograms): boolean {
  return !exceeds(gvwrKg - tongueKg, axleSumKg);
}

/**
 * Whether an axle's tires reach its rating: the sum of their greatest loads not less than GAWR.
 * Source: 49 CFR 571.110 S4.2.2.1 (GVWR up to 10,000 lb), 571.120 S5.1.2 (over).
 */
export function tiresReach(tiresKg: Kilograms, gawrKg: Kilograms): boolean {
  return !exceeds(gawrKg, tiresKg);
}

function plateContradictions(build: BuildSheet): Contradiction[] {
  const { gvwrKg } = build.plate;
  if (gvwrKg === null) return [];
  const found: Contradiction[] = [];
  const { couplerRatingKg, couplerTongueN, chainBreakKg, kind } = build.hitch;
  const axleSumKg = axleSum(build);
  if (axleSumKg !== null) {
    const hitchKg = mostOnHitch(gvwrKg, kind, couplerTongueN);
    if (!plateHolds(gvwrKg, axleSumKg, hitchKg)) {
      found.push({ kind: 'plate-above-axles', gvwrKg, carriesKg: kg(axleSumKg + hitchKg) });
    }
  }
  if (couplerRatingKg !== null && exceeds(gvwrKg, couplerRatingKg)) {
    found.push({ kind: 'coupler-below-plate', couplerKg: couplerRatingKg, gvwrKg });
  }
  // Up to 10,000 lb by the class of coupling (`law/coupling.ts`); beyond it State law and common practice ask that each
  // chain hold the whole trailer.
  const neededKg = couplingClass(gvwrKg)?.chainBreakKg ?? gvwrKg;
  if (chainBreakKg !== null && exceeds(neededKg, chainBreakKg)) {
    found.push({ kind: 'chains-below-plate', chainBreakKg, neededKg, gvwrKg });
  }
  if (build.empty.massKg !== null && exceeds(build.empty.massKg, gvwrKg)) {
    found.push({ kind: 'empty-above-plate', emptyKg: build.empty.massKg, gvwrKg });
  }
  return found;
}

/** The most a hitch can rightly carry of a trailer at its plate: the top of its band, and no more than the coupler's own vertical rating. */
function mostOnHitch(gvwrKg: Kilograms, hitch: Hitch | null, couplerTongueN: Newtons | null): Kilograms {
  const byBand = gvwrKg * tongueBand(hitch).high;
  return kg(couplerTongueN === null ? byBand : Math.min(byBand, massHeldUpBy(couplerTongueN)));
}

function axleContradictions(build: BuildSheet, tires: readonly Part[]): Contradiction[] {
  const found: Contradiction[] = [];
  for (const axle of build.axles) {
    const { gawrKg, ratingKg } = axle;
    if (gawrKg !== null && ratingKg !== null && exceeds(gawrKg, ratingKg)) {
      found.push({ kind: 'axle-rating-below-gawr', axle: axle.number, ratingKg, gawrKg });
    }
    const promisedKg = gawrKg ?? ratingKg;
    const tiresKg = sumOfTireRatings(axleWheelPositions(axle), tires);
    if (promisedKg !== null && tiresKg !== null && !tiresReach(tiresKg, promisedKg)) {
      found.push({ kind: 'tires-below-axle', axle: axle.number, tiresKg, gawrKg: promisedKg });
    }
  }
  return found;
}

/** Null while a position has no tire, or one whose greatest load nobody gave. */
function sumOfTireRatings(positions: readonly string[], tires: readonly Part[]): Kilograms | null {
  const mounting = positions.length > 2 ? 'dual' : 'single';
  let sum = 0;
  for (const position of positions) {
    const marks = tires.find((part) => part.position === position)?.tire ?? null;
    const rating = marks === null ? null : tireRating(marks, mounting);
    if (rating === null) return null;
    sum += rating.massKg;
  }
  return kg(sum);
}

/**
 * A jack that may hold no more than one axle's rating is too small: a 7,000 lb axle wants a stronger jack than 7,000 lb.
 * Common practice, no source. Jacks that stand together add up.
 */
function jackContradictions(build: BuildSheet): Contradiction[] {
  const found: Contradiction[] = [];
  const { count, liftKg, supportKg } = build.jacks;
  const oneHoldsKg = supportKg ?? liftKg;
  const axleRatingKg = heaviestAxle(build);
  if (oneHoldsKg !== null && axleRatingKg !== null) {
    const holdKg = kg(oneHoldsKg * Math.max(1, count ?? 1));
    if (!exceeds(holdKg, axleRatingKg)) found.push({ kind: 'jack-too-small', supportKg: holdKg, axleRatingKg });
  }
  if (build.hitch.kind === 'gooseneck' && count === 1) found.push({ kind: 'single-jack-on-gooseneck' });
  return found;
}

/**
 * What the law would ask about. Brakes on every wheel over 3,000 lb gross: 49 CFR 393.42(a), (b)(3), in commerce; a
 * breakaway on whatever has brakes: 393.43(d); 102 in of width: 23 CFR 658.15. States differ: check yours.
 */
function lawContradictions({ axles, plate, hitch, deck }: BuildSheet): Contradiction[] {
  const found: Contradiction[] = [];
  const unbraked = axles.filter((axle) => axle.brakes === 'none').map((axle) => axle.number);
  if (unbraked.length > 0 && plate.gvwrKg !== null && isPastUnbraked(plate.gvwrKg)) {
    found.push({ kind: 'unbraked-axles', axles: unbraked.sort((a, b) => a - b), gvwrKg: plate.gvwrKg });
  }
  const isBraked = axles.some(({ brakes }) => brakes !== null && brakes !== 'none');
  if (isBraked && hitch.breakaway === false) found.push({ kind: 'brakes-without-breakaway' });
  if (deck.widthM !== null && needsWidthPermit(deck.widthM)) {
    found.push({ kind: 'wider-than-law', widthM: deck.widthM, limitM: LEGAL_WIDTH_M });
  }
  return found;
}

/** Each of these is common practice, no source. */
function bodyContradictions(build: BuildSheet): Contradiction[] {
  const found: Contradiction[] = [];
  const { frame, rear, deck, body } = build;
  if (rear.stabilizers === false && (rear.ramps === 'slide-out-rear' || rear.ramps === 'slide-out-side')) {
    found.push({ kind: 'slide-ramps-without-stabilizers' });
  }
  if (frame.tongue === 'part-way' && frame.section === 'c-channel') found.push({ kind: 'part-way-tongue-on-channel' });
  if (frame.depthM !== null && isTooShallow(frame.depthM)) {
    found.push({ kind: 'frame-too-shallow', depthM: frame.depthM });
  }
  if (deck.lengthM !== null && GRAVITY_TILTS.includes(body) && exceeds(deck.lengthM, GRAVITY_TILT_DECK_M)) {
    found.push({ kind: 'gravity-tilt-too-long', deckM: deck.lengthM });
  }
  return found;
}

function heaviestAxle(build: BuildSheet): Kilograms | null {
  let most: Kilograms | null = null;
  for (const { ratingKg, gawrKg } of build.axles) {
    const rating = ratingKg ?? gawrKg;
    if (rating !== null && (most === null || rating > most)) most = rating;
  }
  return most;
}
