import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { KilometresPerHour } from '../units/speed.js';

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
  /** Tires not made for the road's speeds; the speed is that of the slowest. */
  | {
      readonly kind: 'speed-restricted-tires';
      readonly positions: readonly string[];
      readonly speed: KilometresPerHour;
    }
  | { readonly kind: 'wider-than-law'; readonly widthM: Metres; readonly limitM: Metres }
  | { readonly kind: 'jack-too-small'; readonly supportKg: Kilograms; readonly axleRatingKg: Kilograms }
  | { readonly kind: 'slide-ramps-without-stabilizers' }
  | { readonly kind: 'single-jack-on-gooseneck' }
  | { readonly kind: 'part-way-tongue-on-channel' }
  | { readonly kind: 'frame-too-shallow'; readonly depthM: number }
  | { readonly kind: 'gravity-tilt-too-long'; readonly deckM: number }
  | { readonly kind: 'empty-above-plate'; readonly emptyKg: Kilograms; readonly gvwrKg: Kilograms };
