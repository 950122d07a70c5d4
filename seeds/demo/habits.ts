import type { Road } from '../../src/rules/facts/use.js';

/** How a demo trailer is used: what it hauls, how often, how far, over what. One habit per trailer and machine. */
export interface Habit {
  readonly yardNumber: string;
  readonly machine: string;
  /** Other things on the deck, in pounds. */
  readonly aboard: readonly {
    readonly name: string;
    readonly lb: number;
    readonly remedy: 'leave-off' | 'swap' | 'wash' | null;
  }[];
  /** From how many days ago to how many days ago; 730 is two years. */
  readonly fromDaysAgo: number;
  readonly toDaysAgo: number;
  readonly tripsAMonth: number;
  readonly milesLow: number;
  readonly milesHigh: number;
  /** Share of gross weight put on the hitch, as loaded by this crew. */
  readonly tongueShare: number;
  /** Height of the coupler on the truck that usually tows it, in inches; null where nobody measures. */
  readonly hitchIn: number | null;
  /** What usually ties the machine down, with the working load limit of one in pounds; null where the crew never says. */
  readonly tieDowns: { readonly count: number; readonly workingLb: number } | null;
  /** Roads of winter months, and of the others; null where the crew never says. */
  readonly winter: readonly Road[] | null;
  readonly summer: readonly Road[] | null;
}

const CHAINS = { name: 'chains and binders', lb: 120, remedy: null } as const;

/** 3/8 in transport chain, grade 70: 6,600 lb each (49 CFR 393.108). */
const FOUR_CHAINS = { count: 4, workingLb: 6_600 } as const;

export const DEMO_HABITS: readonly Habit[] = [
  habit('T-01', 'roller', 2.5, 8, 34, 0.12),
  habit('T-01', 'trencher', 1.5, 6, 40, 0.11),
  habit('T-02', 'mini-excavator', 5, 10, 62, 0.12, { summer: ['gravel'], hitchIn: 20.5 }),
  habit('T-03', 'scissor-lift', 4, 5, 45, 0.13, { hitchIn: 20, tieDowns: { count: 4, workingLb: 3_333 } }),
  habit('T-04', 'tractor', 2, 12, 55, 0.12),
  habit('T-05', 'skid-steer', 2, 10, 70, 0.2),
  habit('T-06', 'backhoe', 3, 18, 120, 0.2),
  // The same trailer before and after its machine was replaced.
  habit('T-07', 'skid-steer', 5, 6, 48, 0.12, { toDaysAgo: 71 }),
  {
    ...habit('T-07', 'track-loader', 5, 6, 48, 0.12, { fromDaysAgo: 70 }),
    aboard: [
      { ...CHAINS, lb: 160 },
      { name: 'larger bucket, over the standard one', lb: 310, remedy: 'swap' },
      { name: 'grapple', lb: 1_050, remedy: 'leave-off' },
      { name: 'mud', lb: 200, remedy: 'wash' },
    ],
  },
  habit('T-08', 'dozer', 1.5, 20, 90, 0.12, { hitchIn: 26 }),
  habit('T-09', 'trencher', 2, 3, 20, 0.1, { winter: null, summer: null, tieDowns: null }),
  habit('T-10', 'tractor', 2.5, 8, 40, 0.11),
  // Loaded from behind and left there: too little on the hitch.
  habit('T-11', 'roller', 2, 6, 30, 0.06, { hitchIn: 19 }),
  habit('T-12', 'mini-excavator', 4, 15, 80, 0.12, { winter: ['salt'], hitchIn: 20 }),
];

function habit(
  yardNumber: string,
  machine: string,
  tripsAMonth: number,
  milesLow: number,
  milesHigh: number,
  tongueShare: number,
  other: Partial<Pick<Habit, 'fromDaysAgo' | 'toDaysAgo' | 'winter' | 'summer' | 'hitchIn' | 'tieDowns'>> = {},
): Habit {
  return {
    yardNumber,
    machine,
    aboard: [CHAINS],
    fromDaysAgo: 730,
    toDaysAgo: 2,
    tripsAMonth,
    milesLow,
    milesHigh,
    tongueShare,
    hitchIn: null,
    tieDowns: FOUR_CHAINS,
    winter: ['salt'],
    summer: [],
    ...other,
  };
}
