import type { DeckLife } from '../facts/deck-life.js';
import type { YardPolicy } from '../facts/yard-policy.js';

/** What of a deck decides how long it is expected to last. */
export type DeckNature = Pick<DeckLife, 'material' | 'wood' | 'treated' | 'stored'>;

/**
 * How long a deck is expected to last before any deck of the yard was counted: the owner's estimate, never a published
 * life. Half of such decks last longer than `medianYears`.
 */
export interface DeckLifePrior {
  readonly medianYears: number;
  /** `setting`: the yard's own years for a deck in the open. `reckoned`: our proposal from wood, treatment and climate. */
  readonly basis: 'setting' | 'reckoned';
  readonly woodYears: number;
  readonly climateFactor: number;
  readonly treatmentFactor: number;
  readonly shelterFactor: number;
  /** Facts nobody gave; the neutral value stands for each. */
  readonly assumed: readonly ('deck-wood' | 'treated' | 'stored' | 'decay-index')[];
}

/**
 * Years of an untreated deck in the open at a decay index of 50, by how long the heartwood stands decay (groups: FPL
 * Research Note FPL-0153). The years are our proposal, no source; two accounts of treated pine say five to six.
 */
const YEARS = { none: 5, moderate: 7, resistant: 10 } as const;

const GROUP: Readonly<Record<NonNullable<DeckNature['wood']>, keyof typeof YEARS>> = {
  'southern-pine': 'none',
  'douglas-fir': 'moderate',
  'white-oak': 'resistant',
  'red-oak': 'none',
  'hem-fir': 'none',
  'spruce-pine-fir': 'none',
  apitong: 'moderate',
  other: 'none',
};

/** Pressure treatment, and a roof when parked. Our proposal, no source. */
const TREATED = 1.3;
const UNDER_COVER = 1.5;

/** The index at which the years hold, and the ends past which it is not believed to matter more. Our proposal, no source. */
const MIDDLING_INDEX = 50;
const LEAST_INDEX = 20;
const MOST_INDEX = 100;

/**
 * years = base by wood / (index / 50) × treatment × shelter; where the yard has set its own years for a deck in the
 * open, those × shelter. Null for steel, which does not rot.
 */
export function deckLifePrior(
  nature: DeckNature,
  policy: Pick<YardPolicy, 'decayIndex' | 'deckLifeYears'>,
): DeckLifePrior | null {
  if (nature.material === 'tread-plate') return null;
  const shelterFactor = nature.stored === 'cover' ? UNDER_COVER : 1;
  const { deckLifeYears, decayIndex } = policy;
  if (deckLifeYears !== null) {
    const assumed = nature.stored === null ? (['stored'] as const) : [];
    const medianYears = deckLifeYears * shelterFactor;
    return {
      medianYears,
      basis: 'setting',
      woodYears: deckLifeYears,
      climateFactor: 1,
      treatmentFactor: 1,
      shelterFactor,
      assumed,
    };
  }
  const woodYears = YEARS[nature.wood === null ? 'none' : GROUP[nature.wood]];
  const climateFactor =
    decayIndex === null ? 1 : MIDDLING_INDEX / Math.min(MOST_INDEX, Math.max(LEAST_INDEX, decayIndex));
  const treatmentFactor = nature.treated === true ? TREATED : 1;
  return {
    medianYears: woodYears * climateFactor * treatmentFactor * shelterFactor,
    basis: 'reckoned',
    woodYears,
    climateFactor,
    treatmentFactor,
    shelterFactor,
    assumed: assumedOf(nature, decayIndex),
  };
}

function assumedOf({ wood, treated, stored }: DeckNature, decayIndex: number | null): DeckLifePrior['assumed'] {
  return [
    ...(wood === null ? (['deck-wood'] as const) : []),
    ...(treated === null ? (['treated'] as const) : []),
    ...(stored === null ? (['stored'] as const) : []),
    ...(decayIndex === null ? (['decay-index'] as const) : []),
  ];
}
