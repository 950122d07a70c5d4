import type { BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import type { Kilograms } from '../units/mass.js';

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
  | { readonly kind: 'chains-below-plate'; readonly chainBreakKg: Kilograms; readonly gvwrKg: Kilograms }
  | { readonly kind: 'jack-too-small'; readonly supportKg: Kilograms; readonly axleRatingKg: Kilograms }
  | { readonly kind: 'slide-ramps-without-stabilizers' }
  | { readonly kind: 'single-jack-on-gooseneck' }
  | { readonly kind: 'part-way-tongue-on-channel' }
  | { readonly kind: 'frame-too-shallow'; readonly depthM: number }
  | { readonly kind: 'gravity-tilt-too-long'; readonly deckM: number }
  | { readonly kind: 'empty-above-plate'; readonly emptyKg: Kilograms; readonly gvwrKg: Kilograms };

export function contradictions(_build: BuildSheet, _tires: readonly Part[]): readonly Contradiction[] {
  throw new Error('written next');
}
