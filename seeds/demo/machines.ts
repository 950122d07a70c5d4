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
  machine('mini-excavator', 'Mini excavator, 3.5 ton', 7_650, 'weighed', 15.5, 61, 'rubber-tracks'),
  machine('skid-steer', 'Skid steer', 7_200, 'weighed', 11.8, 66, 'tires'),
  // The skid steer's work went to this one: the trailer stayed the same, the machine did not.
  machine('track-loader', 'Track loader', 9_920, 'stated', 12.4, 72, 'rubber-tracks', 'skid-steer'),
  machine('scissor-lift', 'Scissor lift, 26 ft', 5_900, 'stated', 8.2, 46, 'small-wheels'),
  machine('backhoe', 'Backhoe loader', 13_600, 'weighed', 23.5, 90, 'tires'),
  machine('dozer', 'Small dozer', 14_200, 'weighed', 14.2, 96, 'steel-tracks'),
  machine('roller', 'Smooth drum roller', 5_400, 'stated', 8.6, 50, 'pads'),
  machine('tractor', 'Utility tractor with loader', 6_350, 'weighed', 13.5, 70, 'tires'),
  machine('trencher', 'Walk-behind trencher', 1_450, 'stated', 7.2, 35, 'rubber-tracks'),
  machine('telehandler', 'Telehandler, 6,000 lb', 19_400, 'weighed', 18.3, 92, 'tires'),
];

function machine(
  key: string,
  name: string,
  weightLb: number,
  basis: Machine['basis'],
  lengthFt: number,
  widthIn: number,
  contact: Machine['contact'],
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
    replaces,
  };
}
