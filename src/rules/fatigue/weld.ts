/**
 * Life of a welded detail by EN 1993-1-9 (normal stress, figure 7.1), with stress ranges in MPa. The detail category
 * is the range it stands 2 million times. Slope 3 down to the constant amplitude limit at 5 million cycles, slope 5
 * below it to the cut-off at 100 million, and no damage under the cut-off.
 */
const CATEGORY_CYCLES = 2e6;
const CONSTANT_AMPLITUDE_CYCLES = 5e6;
const CUT_OFF_CYCLES = 1e8;
const STEEP_SLOPE = 3;
const FLAT_SLOPE = 5;

/** Δσ_D of a category, MPa: (2/5)^(1/3) = 0.737 of it. */
export function constantAmplitudeLimit(category: number): number {
  return category * (CATEGORY_CYCLES / CONSTANT_AMPLITUDE_CYCLES) ** (1 / STEEP_SLOPE);
}

/** Δσ_L of a category, MPa: (5/100)^(1/5) = 0.549 of Δσ_D. */
export function cutOffLimit(category: number): number {
  return constantAmplitudeLimit(category) * (CONSTANT_AMPLITUDE_CYCLES / CUT_OFF_CYCLES) ** (1 / FLAT_SLOPE);
}

/**
 * Cycles to failure of a weld of a category (36 to 160 MPa) under a stress range, both MPa and above 0, else
 * RangeError; Infinity under the cut-off. Ranges, not dead weight: what stands still does no damage.
 */
export function weldCycles(rangeMpa: number, category: number): number {
  if (!(rangeMpa > 0) || !(category > 0)) {
    throw new RangeError(`stress range and category are above 0, not ${rangeMpa} and ${category} MPa`);
  }
  const bend = constantAmplitudeLimit(category);
  if (rangeMpa >= bend) return CATEGORY_CYCLES * (category / rangeMpa) ** STEEP_SLOPE;
  if (rangeMpa >= cutOffLimit(category)) return CONSTANT_AMPLITUDE_CYCLES * (bend / rangeMpa) ** FLAT_SLOPE;
  return Number.POSITIVE_INFINITY;
}

/**
 * Cycles to failure of a part whose stress amplitude and life follow a power law, N = ½ (σ_a / σ_f)^(1/b): Basquin's
 * law in reversals, `exponent` b negative. For plain material; welds go by their category.
 */
export function basquinCycles(amplitude: number, strength: number, exponent: number): number {
  if (!(amplitude > 0) || !(strength > 0) || !(exponent < 0)) {
    throw new RangeError('amplitude and strength are above 0, and the exponent below');
  }
  return 0.5 * (amplitude / strength) ** (1 / exponent);
}
