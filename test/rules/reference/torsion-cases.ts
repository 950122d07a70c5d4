/**
 * S4's trailer (`statics-cases.ts`) and the triple of S9, worked out by the least energy of their springs in
 * `python/torsion.py`: no solving for forces, no rule for axles that lift. Pounds and inches; forces to a tenth of a
 * pound, heights to a hundredth of an inch.
 */
export const NOSE_HIGH = {
  raised: 3,
  soft: { rate: 1_000, onAxles: [4_985.6, 5_531], tongue: 1_283.3 },
  stiff: { rate: 3_000, onAxles: [4_390.2, 6_026.5], tongue: 1_383.3 },
};

/** S5 with its 9,000 lb put 6 in forward, or 500 lb of it taken off, the springs and the hitch as they were. */
export const S5_MOVED = { forward: 6, onAxles: [4_552.8, 5_616.4], tongue: 1_630.8 };
export const S5_LIGHTER = { off: 500, onAxles: [4_487.7, 5_538.2], tongue: 1_274.1 };

/** S4 and S9, level, over a bump or dip under each axle in turn: the most on any axle, which one, and where it stood. */
export const ROADS = [
  { id: 'tandem, 2 in bump', triple: false, height: 2, most: 7_646.9, carriedBy: 1, under: 1 },
  { id: 'tandem, 2 in dip', triple: false, height: -2, most: 7_250, carriedBy: 2, under: 1 },
  { id: 'triple, 3 in bump', triple: true, height: 3, most: 9_563.2, carriedBy: 1, under: 1 },
  { id: 'triple, 3 in dip', triple: true, height: -3, most: 7_504.1, carriedBy: 3, under: 2 },
];

export const LIFTS = [
  { id: 'tandem, bump', triple: false, way: 'bump', at: 5.37, under: 1, lifts: 2 },
  { id: 'tandem, dip', triple: false, way: 'dip', at: 4.47, under: 1, lifts: 1 },
  { id: 'triple, bump', triple: true, way: 'bump', at: 8.12, under: 2, lifts: 3 },
  { id: 'triple, dip', triple: true, way: 'dip', at: 4.03, under: 1, lifts: 1 },
] as const;
