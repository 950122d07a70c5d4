import type { TowVehicle } from '../../src/rules/facts/use.js';
import { lbf } from '../../src/rules/units/force.js';
import { inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';

/** The yard's own trucks, of the usual kind for their class (common practice, no source). */
export const DEMO_TOW_VEHICLES: readonly (Omit<TowVehicle, 'id'> & { readonly key: string })[] = [
  truck('three-quarter', 'White three-quarter ton', 10_000, 7_300, 24_000, 18_500, 1_850, 20),
  truck('one-ton', 'Blue one ton', 11_500, 8_100, null, 25_000, 5_500, 22.5),
  truck('flatbed', 'Flatbed truck with pintle', 19_500, 11_400, 43_000, 30_000, 4_500, null, null),
];

/** A haul to come. Days count from today, so that a fresh demo yard always has a week ahead of it. */
export interface DemoJob {
  readonly name: string;
  readonly yardNumber: string | null;
  readonly machine: string;
  readonly startsInDays: number;
  readonly days: number;
  readonly miles: number;
  readonly work: 'own' | 'hire';
  readonly customer: string | null;
  readonly commercial: boolean | null;
  readonly truck: 'three-quarter' | 'one-ton' | 'flatbed' | null;
  readonly driver: { readonly name: string; readonly cdl: 'A' | 'B' | 'none' | null } | null;
  readonly hauler: 'owner' | 'driver' | 'hand' | null;
  /** Also aboard, in pounds. */
  readonly aboard: readonly {
    readonly name: string;
    readonly lb: number;
    readonly remedy: 'leave-off' | 'swap' | 'wash' | null;
  }[];
}

const KIT = { name: 'Kit Ambrey', cdl: 'A' } as const;
const WREN = { name: 'Wren Castell', cdl: 'none' } as const;
const CHAINS = { name: 'chains and binders', lb: 120, remedy: null } as const;

export const DEMO_JOBS: readonly DemoJob[] = [
  job('Alder Street footings', 'T-02', 'mini-excavator', 0, 2, 46, { truck: 'one-ton', driver: WREN, hauler: 'hand' }),
  job('Orchard Lane grading', 'T-07', 'track-loader', 1, 3, 38, {
    truck: 'one-ton',
    driver: WREN,
    hauler: 'hand',
    aboard: [
      { ...CHAINS, lb: 160 },
      { name: 'larger bucket, over the standard one', lb: 310, remedy: 'swap' },
      { name: 'grapple', lb: 1_050, remedy: 'leave-off' },
      { name: 'mud', lb: 200, remedy: 'wash' },
    ],
  }),
  job('Grain elevator repaint', 'T-03', 'scissor-lift', 2, 5, 64, {
    work: 'hire',
    customer: 'Sable Painting',
    commercial: true,
  }),
  job('County culvert, first load', 'T-08', 'dozer', 3, 1, 82, { truck: 'flatbed', driver: KIT, hauler: 'driver' }),
  job('School car park', 'T-12', 'mini-excavator', 4, 2, 55, { truck: 'three-quarter', driver: WREN, hauler: 'hand' }),
  job('Old mill drainage', 'T-06', 'backhoe', 6, 4, 140, { truck: 'one-ton', driver: KIT, hauler: 'driver' }),
  job('Hay shed floor', 'T-10', 'tractor', 7, 2, 44, { work: 'hire', customer: 'Pelham Farm', commercial: false }),
  job('Garden walls, Finch Row', 'T-11', 'roller', 9, 1, 22, { truck: 'three-quarter', driver: KIT, hauler: 'driver' }),
  job('Warehouse lamps', 'T-01', 'roller', 12, 2, 30, { work: 'hire', customer: 'Sable Painting', commercial: true }),
  job('County culvert, second load', null, 'telehandler', 16, 2, 82, {
    truck: 'flatbed',
    driver: KIT,
    hauler: 'driver',
  }),
];

function job(
  name: string,
  yardNumber: string | null,
  machine: string,
  startsInDays: number,
  days: number,
  miles: number,
  other: Partial<DemoJob> = {},
): DemoJob {
  return {
    name,
    yardNumber,
    machine,
    startsInDays,
    days,
    miles,
    work: 'own',
    customer: null,
    commercial: true,
    truck: null,
    driver: null,
    hauler: null,
    aboard: [CHAINS],
    ...other,
  };
}

function truck(
  key: string,
  name: string,
  gvwrLb: number,
  weightLb: number,
  combinedLb: number | null,
  hitchLb: number,
  tongueLb: number,
  heightIn: number | null,
  ballIn: number | null = 2.3125,
): Omit<TowVehicle, 'id'> & { key: string } {
  return {
    key,
    name,
    gvwrKg: lb(gvwrLb),
    massKg: lb(weightLb),
    gcwrKg: combinedLb === null ? null : lb(combinedLb),
    hitchRatingKg: lb(hitchLb),
    hitchTongueN: lbf(tongueLb),
    ballSizeM: ballIn === null ? null : inch(ballIn),
    ballHeightM: heightIn === null ? null : inch(heightIn),
  };
}
