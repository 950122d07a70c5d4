import type { BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import { isPastUnbraked } from '../law/brakes.js';
import { LEGAL_WIDTH_M, needsWidthPermit } from '../law/size.js';
import { speedOfSymbol } from '../tire/speed-symbol.js';
import { exceeds } from '../units/compare.js';
import { mph } from '../units/speed.js';
import type { Contradiction } from './contradiction.js';

/** A tire restricted to this or less may not be run faster, and fails the annual inspection unless the carrier chose it. Source: 49 CFR 393.75(f); Appendix A to Part 396, 10.c. */
const RESTRICTED_UP_TO = mph(55);

/**
 * What the law would ask about. Brakes on every wheel over 3,000 lb gross: 49 CFR 393.42(a), (b)(3), in commerce; a
 * breakaway on whatever has brakes: 393.43(d); 102 in of width: 23 CFR 658.15. States differ: check yours.
 */
export function lawContradictions(build: BuildSheet, tires: readonly Part[]): readonly Contradiction[] {
  const { axles, plate, hitch, deck } = build;
  const found: Contradiction[] = [...slowTires(tires)];
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

function slowTires(tires: readonly Part[]): Contradiction[] {
  const slow = tires.flatMap(({ position, tire }) => {
    const speed = tire?.speedSymbol == null ? null : speedOfSymbol(tire.speedSymbol);
    return position === null || speed === null || exceeds(speed, RESTRICTED_UP_TO) ? [] : [{ position, speed }];
  });
  if (slow.length === 0) return [];
  const slowest = slow.reduce((least, one) => (one.speed < least.speed ? one : least));
  return [
    { kind: 'speed-restricted-tires', positions: slow.map(({ position }) => position).sort(), speed: slowest.speed },
  ];
}
