/** 14,000 lb on two 7,000 lb axles, 2,800 lb empty at 165 in, axles about 180 in behind the coupler, on ST235/80R16 E. */
export const EXAMPLE_BUILD = {
  body: 'fixed-deck',
  plate: { gvwrKg: 6350.2932, coldPressureKpa: 551.581 },
  empty: { massKg: 1270.0586, basis: 'weighed', tongueN: 1037.9184 },
  axles: [
    { gawrKg: 3175.1466, fromCouplerM: 4.1275, trackM: 2.032 },
    { gawrKg: 3175.1466, fromCouplerM: 5.0165, trackM: 2.032 },
  ],
  suspension: 'slipper-spring',
  hitch: { kind: 'bumper-pull', couplerRatingKg: 6803.8856 },
  deck: { lengthM: 6.096, heightM: 0.8636, frontFromCouplerM: 1.2192 },
  rear: { ramps: 'stand-up', rampLengthM: 1.8288, stabilizers: true, dovetailM: 0 },
  jacks: { count: 1, liftKg: 3175.1466, supportKg: 5443.1084, fromCouplerM: 0.9144 },
} as const;

export const EXAMPLE_TIRES = ['1L', '1R', '2L', '2R'].map((position) => ({
  ...{ kind: 'tire', position },
  tire: { size: 'ST235/80R16', kind: 'ST', loadRange: 'E', maxLoadSingleKg: 1551.2859, maxColdPressureKpa: 551.581 },
}));

/** 9,000 lb balancing 168 in behind the coupler: with the trailer above, 833.3 lb on the tongue. */
export const EXAMPLE_LOAD = {
  cargo: [{ name: 'machine', massKg: 4082.3313, basis: 'weighed' }],
  balancePointM: 4.2672,
};
