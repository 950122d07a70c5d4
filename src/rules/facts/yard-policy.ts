/** What a yard has decided for itself where no law decides. Each has a default that says it is only a default. */
export interface YardPolicy {
  /** Years from the date code after which a tire is replaced whatever its tread. No federal limit exists. */
  readonly tireAgeLimitYears: number;
  /** Share of a limit within which an unmeasured weight is never good enough. */
  readonly weighFirstShare: number;
  /** Recent days from which the usual use of a trailer is learned. */
  readonly useWindowDays: number;
  /** Trips looked back on for class drift. */
  readonly driftTrips: number;
  /** Decay hazard index of the yard's place (Scheffer); null while nobody gave it. */
  readonly decayIndex: number | null;
  /** Years the owner expects a deck to last here in the open; null: reckoned from its material, treatment and climate. */
  readonly deckLifeYears: number | null;
}

/**
 * Six years: common practice, no law (NHTSA's 2008 advisory only reports makers' six to ten years).
 * 3 %: our rule; brochure weights are seldom better. 90 days and 10 trips: our choice, one season's habit.
 */
export const DEFAULT_POLICY: YardPolicy = {
  tireAgeLimitYears: 6,
  weighFirstShare: 0.03,
  useWindowDays: 90,
  driftTrips: 10,
  decayIndex: null,
  deckLifeYears: null,
};
