import type { Ball, CustomerHitch, SeenCondition, SeenThing } from '../../src/rules/facts/handover.js';
import { inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';

/** A hire of the demo yard: out so many days ago, and back, where it is back. Customers are invented. */
export interface DemoHandover {
  readonly yardNumber: string;
  readonly customer: string;
  readonly outDaysAgo: number;
  readonly backDaysAgo: number | null;
  readonly hitch: CustomerHitch;
  /** What came back otherwise than sound. */
  readonly changed: readonly {
    readonly thing: SeenThing;
    readonly position: string | null;
    readonly is: SeenCondition;
  }[];
}

export const DEMO_HANDOVERS: readonly DemoHandover[] = [
  {
    yardNumber: 'T-04',
    customer: 'Pelham Farm',
    outDaysAgo: 12,
    backDaysAgo: 9,
    hitch: { ball: ball(2.3125, 25_000), swappedTo: null, plug: 'lamps-and-brakes' },
    changed: [
      { thing: 'fender', position: 'left', is: 'rubbed' },
      { thing: 'strap', position: null, is: 'missing' },
    ],
  },
  {
    yardNumber: 'T-01',
    customer: 'Sable Painting',
    outDaysAgo: 1,
    backDaysAgo: null,
    hitch: { ball: ball(2, 7_500), swappedTo: ball(2.3125, 14_000), plug: 'lamps-and-brakes' },
    changed: [],
  },
];

function ball(inches: number, ratingLb: number): Ball {
  return { sizeM: inch(inches), ratingKg: lb(ratingLb) };
}
