import type { Body, BuildSheet, Hitch } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import { couplingClass } from '../law/coupling.js';
import { tongueBand } from '../load/tongue-band.js';
import { tireRating } from '../tire/tire-capacity.js';
import { exceeds } from '../units/compare.js';
import { massHeldUpBy, type Newtons } from '../units/force.js';
import { feet } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { axleSum } from './axle-sum.js';
import type { Contradiction } from './contradiction.js';
import { lawContradictions } from './law-contradictions.js';
import { isTooShallow } from './trailer-class.js';
import { axleWheelPositions } from './wheel-positions.js';

export type { Contradiction } from './contradiction.js';

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
    ...lawContradictions(build, tires),
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
