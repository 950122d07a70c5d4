import type { Machine } from '../../src/rules/facts/load.js';
import { feet, inch, metres } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';

/**
 * Machines of the demo yard, as really hauled. Weights and sizes are round figures of their kind
 * (common practice, no source), not of any one model.
 */
export type DemoMachine = Omit<Machine, 'id' | 'replacesMachineId'> & {
  readonly key: string;
  readonly replaces: string | null;
};

export const DEMO_MACHINES: readonly DemoMachine[] = [
  machine(
    'mini-excavator',
    'Mini excavator, 3.5 ton',
    7_650,
    'weighed',
    15.5,
    61,
    'rubber-tracks',
    stands(2, 62, 12, 66, 11),
  ),
  machine('skid-steer', 'Skid steer', 7_200, 'weighed', 11.8, 66, 'tires', stands(4, 9, 12, 43, 8)),
  // The skid steer's work went to this one: the trailer stayed the same, the machine did not.
  machine(
    'track-loader',
    'Track loader',
    9_920,
    'stated',
    12.4,
    72,
    'rubber-tracks',
    stands(2, 58, 16, 58, 11),
    'skid-steer',
  ),
  machine('scissor-lift', 'Scissor lift, 26 ft', 5_900, 'stated', 8.2, 46, 'small-wheels', stands(4, 1.2, 4, 72, 4)),
  machine('backhoe', 'Backhoe loader', 13_600, 'weighed', 23.5, 90, 'tires', stands(4, 12, 16, 84, 13)),
  machine('dozer', 'Small dozer', 14_200, 'weighed', 14.2, 96, 'steel-tracks', stands(2, 84, 18, 84, 12)),
  machine('roller', 'Smooth drum roller', 5_400, 'stated', 8.6, 50, 'pads', stands(2, 4, 47, 68, 10)),
  machine('tractor', 'Utility tractor with loader', 6_350, 'weighed', 13.5, 70, 'tires', stands(4, 11, 15, 74, 14)),
  machine('trencher', 'Walk-behind trencher', 1_450, 'stated', 7.2, 35, 'rubber-tracks', stands(2, 34, 7, 34, 4)),
  machine('telehandler', 'Telehandler, 6,000 lb', 19_400, 'weighed', 18.3, 92, 'tires', stands(4, 13, 14, 114, 16)),
];

type Stand = Pick<Machine, 'contactCount' | 'contactLengthM' | 'contactWidthM' | 'wheelbaseM' | 'clearanceM'>;

/** How it stands on a deck, in inches. */
function stands(count: number, longIn: number, wideIn: number, wheelbaseIn: number, clearanceIn: number): Stand {
  return {
    contactCount: count,
    contactLengthM: inch(longIn),
    contactWidthM: inch(wideIn),
    wheelbaseM: inch(wheelbaseIn),
    clearanceM: inch(clearanceIn),
  };
}

function machine(
  key: string,
  name: string,
  weightLb: number,
  basis: Machine['basis'],
  lengthFt: number,
  widthIn: number,
  contact: Machine['contact'],
  stand: Stand,
  replaces: string | null = null,
): DemoMachine {
  const lengthM = feet(lengthFt);
  return {
    key,
    name,
    massKg: lb(weightLb),
    basis,
    lengthM,
    widthM: inch(widthIn),
    balancePointM: metres(lengthM * 0.52),
    contact,
    ...stand,
    replaces,
  };
}
