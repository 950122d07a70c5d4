import { type Kilograms, lb } from '../units/mass.js';
import { type Kilopascals, psi } from '../units/pressure.js';

/** What a size of tire may carry, mounted single, at one cold pressure. */
export interface TireLoadRow {
  readonly pressureKpa: Kilopascals;
  readonly loadKg: Kilograms;
  /** The load range whose greatest load this row is. */
  readonly loadRange: string;
}

/**
 * Loads of special-trailer (ST) tires, single, in lb by cold psi.
 * Source: an ST load table of a tire maker, quoted in a public thread, store-prod.iboatsdev.com/threads/tire-pressure.566908.
 * Newer tires may be stamped differently: the sidewall wins. Rows known only from memory (LT, 17.5 in truck, all-steel
 * ST) are left out on purpose.
 */
const PUBLISHED: readonly (readonly [
  size: string,
  rows: readonly { readonly psi: number; readonly lb: number; readonly range: string }[],
])[] = [
  [
    'ST175/80R13',
    [
      { psi: 35, lb: 1100, range: 'B' },
      { psi: 50, lb: 1360, range: 'C' },
    ],
  ],
  [
    'ST185/80R13',
    [
      { psi: 35, lb: 1200, range: 'B' },
      { psi: 50, lb: 1480, range: 'C' },
    ],
  ],
  [
    'ST195/80R14',
    [
      { psi: 35, lb: 1320, range: 'B' },
      { psi: 50, lb: 1610, range: 'C' },
    ],
  ],
  [
    'ST205/80R14',
    [
      { psi: 35, lb: 1430, range: 'B' },
      { psi: 50, lb: 1760, range: 'C' },
      { psi: 65, lb: 2040, range: 'D' },
    ],
  ],
  [
    'ST215/80R14',
    [
      { psi: 35, lb: 1520, range: 'B' },
      { psi: 50, lb: 1870, range: 'C' },
    ],
  ],
  [
    'ST205/75R15',
    [
      { psi: 35, lb: 1480, range: 'B' },
      { psi: 50, lb: 1820, range: 'C' },
      { psi: 65, lb: 2150, range: 'D' },
    ],
  ],
  [
    'ST225/75R15',
    [
      { psi: 35, lb: 1760, range: 'B' },
      { psi: 50, lb: 2150, range: 'C' },
      { psi: 65, lb: 2540, range: 'D' },
      { psi: 80, lb: 2840, range: 'E' },
    ],
  ],
  [
    'ST215/80R16',
    [
      { psi: 35, lb: 1820, range: 'B' },
      { psi: 50, lb: 2200, range: 'C' },
      { psi: 65, lb: 2600, range: 'D' },
      { psi: 80, lb: 2910, range: 'E' },
    ],
  ],
  [
    'ST235/80R16',
    [
      { psi: 35, lb: 2090, range: 'B' },
      { psi: 50, lb: 2600, range: 'C' },
      { psi: 65, lb: 3000, range: 'D' },
      { psi: 80, lb: 3420, range: 'E' },
    ],
  ],
];

const ROWS_BY_SIZE: ReadonlyMap<string, readonly TireLoadRow[]> = new Map(
  PUBLISHED.map(([size, rows]) => [
    size,
    rows.map((row) => ({ pressureKpa: psi(row.psi), loadKg: lb(row.lb), loadRange: row.range })),
  ]),
);

/** The published rows of an ST size, lowest pressure first; null where none is published here. */
export function tireLoadRows(size: string): readonly TireLoadRow[] | null {
  return ROWS_BY_SIZE.get(size) ?? null;
}
