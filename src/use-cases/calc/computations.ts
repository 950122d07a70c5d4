import { BEARING_COMPUTATIONS } from './bearing-computations.js';
import { BUILD_COMPUTATIONS } from './build-computations.js';
import type { Computation } from './computation.js';
import { DECK_COMPUTATIONS } from './deck-computations.js';
import { DUE_COMPUTATIONS } from './due-computations.js';
import { ENVELOPE_COMPUTATIONS } from './envelope-computations.js';
import { EQUIPMENT_LAW_COMPUTATIONS } from './equipment-law-computations.js';
import { FATIGUE_COMPUTATIONS } from './fatigue-computations.js';
import { HAUL_COMPUTATIONS } from './haul-computations.js';
import { LAW_COMPUTATIONS } from './law-computations.js';
import { LIFE_COMPUTATIONS } from './life-computations.js';
import { LOADING_COMPUTATIONS } from './loading-computations.js';
import { PLANK_COMPUTATIONS } from './plank-computations.js';
import { RECORD_COMPUTATIONS } from './record-computations.js';
import { SECURING_COMPUTATIONS } from './securing-computations.js';
import { SPRING_COMPUTATIONS } from './spring-computations.js';
import { STATICS_COMPUTATIONS } from './statics-computations.js';
import { TIRE_COMPUTATIONS } from './tire-computations.js';
import { TIRE_MARKING_COMPUTATIONS } from './tire-marking-computations.js';
import { TREND_COMPUTATIONS } from './trend-computations.js';
import { USE_COMPUTATIONS } from './use-computations.js';
import { WEAR_COMPUTATIONS } from './wear-computations.js';
import { WOOD_COMPUTATIONS } from './wood-computations.js';

/** Every computation that can be asked for by name, by subject. */
export const COMPUTATIONS: readonly Computation[] = [
  ...STATICS_COMPUTATIONS,
  ...SPRING_COMPUTATIONS,
  ...LOADING_COMPUTATIONS,
  ...SECURING_COMPUTATIONS,
  ...ENVELOPE_COMPUTATIONS,
  ...BUILD_COMPUTATIONS,
  ...HAUL_COMPUTATIONS,
  ...TIRE_COMPUTATIONS,
  ...TIRE_MARKING_COMPUTATIONS,
  ...PLANK_COMPUTATIONS,
  ...WOOD_COMPUTATIONS,
  ...DECK_COMPUTATIONS,
  ...LAW_COMPUTATIONS,
  ...EQUIPMENT_LAW_COMPUTATIONS,
  ...RECORD_COMPUTATIONS,
  ...BEARING_COMPUTATIONS,
  ...FATIGUE_COMPUTATIONS,
  ...WEAR_COMPUTATIONS,
  ...DUE_COMPUTATIONS,
  ...USE_COMPUTATIONS,
  ...LIFE_COMPUTATIONS,
  ...TREND_COMPUTATIONS,
];
