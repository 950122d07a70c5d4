/**
 * How fast wood above ground decays: rate = wood × climate, mm a year, for Australian heartwood durability classes and
 * hazard zones. It ranks; American woods have no class in it, so no deck is judged by it.
 * Source: CSIRO / FWPA, Design for Durability, Manual 4 (2008); every number from memory, unverified.
 */
export const WOOD_RATE = { 'class-1': 0.5, 'class-2': 0.62, 'class-3': 1.14, 'class-4': 2.2, sapwood: 6.52 } as const;
export const CLIMATE_RATE = { A: 0.4, B: 0.5, C: 0.65, D: 0.75 } as const;

/** The depth at which decay has its full speed, mm. */
const FULL_SPEED_MM = 5;

/**
 * Depth of decay after some years, mm: slow at first, growing with the square of time until 5 mm, then at the full rate.
 * lag = 8.5 r^−0.85, t0 = lag + 5/r, depth = 5 (t/t0)² up to t0 and (t − lag) r after. Source: as above, unverified.
 */
export function decayDepthMm(rateMmPerYear: number, years: number): number {
  const lag = 8.5 * rateMmPerYear ** -0.85;
  const fullSpeedFrom = lag + FULL_SPEED_MM / rateMmPerYear;
  if (years <= fullSpeedFrom) return FULL_SPEED_MM * (years / fullSpeedFrom) ** 2;
  return (years - lag) * rateMmPerYear;
}
