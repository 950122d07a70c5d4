import { BEARING_COMPUTATIONS } from './bearing-computations.js';
import type { Computation } from './computation.js';
import { DECK_COMPUTATIONS } from './deck-computations.js';
import { ENVELOPE_COMPUTATIONS } from './envelope-computations.js';
import { FATIGUE_COMPUTATIONS } from './fatigue-computations.js';
import { LAW_COMPUTATIONS } from './law-computations.js';
import { LOADING_COMPUTATIONS } from './loading-computations.js';
import { SPRING_COMPUTATIONS } from './spring-computations.js';
import { STATICS_COMPUTATIONS } from './statics-computations.js';
import { TIRE_COMPUTATIONS } from './tire-computations.js';

/** Every computation that can be asked for by name, by subject. */
export const COMPUTATIONS: readonly Computation[] = [
  ...STATICS_COMPUTATIONS,
  ...SPRING_COMPUTATIONS,
  ...LOADING_COMPUTATIONS,
  ...ENVELOPE_COMPUTATIONS,
  ...TIRE_COMPUTATIONS,
  ...DECK_COMPUTATIONS,
  ...LAW_COMPUTATIONS,
  ...BEARING_COMPUTATIONS,
  ...FATIGUE_COMPUTATIONS,
];
