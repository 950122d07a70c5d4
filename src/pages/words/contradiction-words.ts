import type { Contradiction } from '../../rules/trailer/contradictions.js';
import { metres } from '../../rules/units/length.js';
import { toMph } from '../../rules/units/speed.js';
import { showFeet, showLength, showMass } from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';

/** What cannot be right in a build sheet, and what to look at. Said on entry; it stops nobody from saving. */
export function contradictionWords(found: Contradiction): string {
  switch (found.kind) {
    case 'plate-above-axles':
      return `The plate says ${showMass(found.gvwrKg)}, but the axles and the tongue carry ${showMass(found.carriesKg)}. Read the plate and the axle tags again.`;
    case 'tires-below-axle':
      return `The tires of axle ${found.axle} carry ${showMass(found.tiresKg)} together, less than its GAWR of ${showMass(found.gawrKg)}. Read the sidewalls; a lower tire lowers the axle.`;
    case 'axle-rating-below-gawr':
      return `Axle ${found.axle} is made for ${showMass(found.ratingKg)}, but the plate promises ${showMass(found.gawrKg)} for it. Read the axle's tag.`;
    case 'coupler-below-plate':
      return `The coupler is rated ${showMass(found.couplerKg)}, less than the plate's ${showMass(found.gvwrKg)}. Read the stamp on the coupler.`;
    case 'chains-below-plate':
      return `Each safety chain breaks at ${showMass(found.chainBreakKg)}; under a plate of ${showMass(found.gvwrKg)} each should hold ${showMass(found.neededKg)}.`;
    case 'unbraked-axles':
      return `No brakes on ${found.axles.length === 1 ? 'axle' : 'axles'} ${listWords(found.axles.map(String))} under a plate of ${showMass(found.gvwrKg)}: over 3,000 lb every wheel has them in commerce (49 CFR 393.42). Check your state.`;
    case 'speed-restricted-tires':
      return `The tires at ${listWords(found.positions.map(positionWords))} are made for ${Math.floor(toMph(found.speed))} mph at most: no faster, and the annual inspection fails them unless they were chosen so (49 CFR 393.75(f)). Read the sidewall.`;
    case 'brakes-without-breakaway':
      return 'Brakes without a breakaway: if the trailer comes off, nothing stops it (49 CFR 393.43).';
    case 'wider-than-law':
      return `A deck ${showLength(found.widthM)} wide is past the ${showLength(found.limitM)} of the National Network (23 CFR 658.15): it needs a permit. Check your state.`;
    case 'jack-too-small':
      return `The jack holds ${showMass(found.supportKg)} under axles of ${showMass(found.axleRatingKg)}. A jack this size is too small for the trailer it stands under.`;
    case 'slide-ramps-without-stabilizers':
      return 'Slide-out ramps without rear stabilizers: a machine climbing on lifts the tow vehicle by the hitch.';
    case 'single-jack-on-gooseneck':
      return 'A single jack on a gooseneck: the tongue weight asks for two.';
    case 'part-way-tongue-on-channel':
      return 'The tongue ends part-way under a C-channel frame: the channel bends where it stops.';
    case 'frame-too-shallow':
      return `A main rail ${showLength(metres(found.depthM))} deep is less than an equipment trailer's (5 in, common practice).`;
    case 'gravity-tilt-too-long':
      return `A gravity tilt with a ${showFeet(metres(found.deckM))} deck: beyond about 24 to 26 ft the geometry no longer suits (common practice).`;
    case 'empty-above-plate':
      return `The trailer weighs ${showMass(found.emptyKg)} empty, which is already over its plate of ${showMass(found.gvwrKg)}. Check both numbers.`;
  }
}
