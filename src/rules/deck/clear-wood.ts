import type { WOODS } from '../facts/build-sheet.js';
import { type Kilopascals, kPa, psi } from '../units/pressure.js';

export type Wood = (typeof WOODS)[number];

/** Average bending strength of small clear pieces of one species, and whether anybody here has seen the published page. */
export interface ClearWood {
  readonly species: string;
  /** Modulus of rupture, green (wet). */
  readonly green: Published;
  /** At 12 % moisture. */
  readonly dry: Published;
  readonly intersectionPercent: number;
  readonly heartwood: Heartwood;
}

interface Published {
  readonly ruptureKpa: Kilopascals;
  /** Mean modulus of elasticity. */
  readonly elasticityKpa: Kilopascals;
  /** False: from memory. Such a number never blocks a trip. */
  readonly verified: boolean;
  readonly source: string;
}

/** How long heartwood stands decay. Sapwood of every species stands none. Source: FPL Research Note FPL-0153 (1967). */
type Heartwood = 'resistant' | 'moderate' | 'none';

const HANDBOOK = 'USDA FPL, Wood Handbook';
const MEMORY = `${HANDBOOK}; from memory, unverified`;
const TABLE_5_3A = `${HANDBOOK} FPL-GTR-190, table 5-3a`;
const ROWS = `${HANDBOOK}, rows as reproduced in an engineering database`;
const OAK_TABLE = `${HANDBOOK}, as carried in a white oak table in psi`;

/**
 * Clear straight-grained small pieces: averages, no design values. Boards run about 16 % either side of them (one
 * standard deviation) and knots halve them (both from memory, unverified). In the unit each row was published in.
 */
export const CLEAR_WOOD = {
  whiteOak: {
    species: 'white oak (Quercus alba)',
    green: published(psi(8_300), psi(1.25e6), OAK_TABLE),
    dry: published(psi(15_200), psi(1.78e6), OAK_TABLE),
    intersectionPercent: 25,
    heartwood: 'resistant',
  },
  northernRedOak: {
    species: 'northern red oak',
    green: remembered(psi(8_300), psi(1.35e6)),
    dry: published(kPa(99_000), kPa(12_500e3), `${HANDBOOK}, as carried in a red oak table`),
    intersectionPercent: 25,
    heartwood: 'none',
  },
  burOak: {
    species: 'bur oak (white group)',
    green: published(kPa(50_000), kPa(6_100e3), ROWS),
    dry: published(kPa(71_000), kPa(7_100e3), ROWS),
    intersectionPercent: 25,
    heartwood: 'resistant',
  },
  laurelOak: {
    species: 'laurel oak (red group)',
    green: published(kPa(54_000), kPa(9_600e3), ROWS),
    dry: published(kPa(87_000), kPa(11_700e3), ROWS),
    intersectionPercent: 25,
    heartwood: 'none',
  },
  loblollyPine: {
    species: 'loblolly pine',
    green: remembered(kPa(50_000), kPa(9_700e3)),
    dry: remembered(kPa(88_000), kPa(12_300e3)),
    intersectionPercent: 21,
    heartwood: 'none',
  },
  longleafPine: {
    species: 'longleaf pine',
    green: remembered(kPa(59_000), kPa(11_000e3)),
    dry: remembered(kPa(100_000), kPa(13_700e3)),
    intersectionPercent: 21,
    heartwood: 'moderate',
  },
  shortleafPine: {
    species: 'shortleaf pine',
    green: published(kPa(51_000), kPa(9_600e3), TABLE_5_3A),
    dry: published(kPa(90_000), kPa(12_100e3), TABLE_5_3A),
    intersectionPercent: 25,
    heartwood: 'none',
  },
  slashPine: {
    species: 'slash pine',
    green: published(kPa(60_000), kPa(10_500e3), TABLE_5_3A),
    dry: published(kPa(112_000), kPa(13_700e3), TABLE_5_3A),
    intersectionPercent: 25,
    heartwood: 'moderate',
  },
  douglasFirCoast: {
    species: 'Douglas-fir, coast',
    green: remembered(psi(7_700), psi(1.56e6)),
    dry: published(psi(12_400), psi(1.95e6), `${HANDBOOK}, as carried by Oregon State University`),
    intersectionPercent: 24,
    heartwood: 'moderate',
  },
  douglasFirInteriorSouth: {
    species: 'Douglas-fir, interior south',
    green: published(kPa(47_000), kPa(8_000e3), ROWS),
    dry: published(kPa(82_000), kPa(10_300e3), ROWS),
    intersectionPercent: 24,
    heartwood: 'moderate',
  },
} as const satisfies Record<string, ClearWood>;

/**
 * The species that speaks for a wood as it is sold: of a trade group's species the weakest whose green value is
 * verified, since nobody knows which one the board is. Red oak has no verified green value of its own: the remembered
 * one stands for it and blocks nothing. No row: no published value at hand.
 */
const SPEAKS_FOR: Readonly<Partial<Record<Wood, ClearWood>>> = {
  'southern-pine': CLEAR_WOOD.shortleafPine,
  'douglas-fir': CLEAR_WOOD.douglasFirInteriorSouth,
  'white-oak': CLEAR_WOOD.burOak,
  'red-oak': CLEAR_WOOD.northernRedOak,
};

export function clearWood(wood: Wood): ClearWood | null {
  return SPEAKS_FOR[wood] ?? null;
}

/**
 * Modulus of rupture guessed from specific gravity (oven-dry weight over volume at that moisture), green or at 12 %.
 * Source: UFC 3-130-04, table 2-2, crediting FPL: 17,600 G^1.25 and 25,700 G^1.25 psi.
 */
export function ruptureFromGravity(gravity: number, state: 'green' | 'dry'): Kilopascals {
  return psi((state === 'green' ? 17_600 : 25_700) * gravity ** 1.25);
}

/** Mean modulus of elasticity from specific gravity. Source: as above, 2,360 G and 2,800 G thousand psi. */
export function elasticityFromGravity(gravity: number, state: 'green' | 'dry'): Kilopascals {
  return psi((state === 'green' ? 2.36e6 : 2.8e6) * gravity);
}

function published(ruptureKpa: Kilopascals, elasticityKpa: Kilopascals, source: string): Published {
  return { ruptureKpa, elasticityKpa, verified: true, source };
}

function remembered(ruptureKpa: Kilopascals, elasticityKpa: Kilopascals): Published {
  return { ruptureKpa, elasticityKpa, verified: false, source: MEMORY };
}
