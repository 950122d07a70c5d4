/**
 * Pressure, temperature and load of tires. T1 to T5 are the power law of `load-law.ts` worked out apart from this code,
 * beside the published table where it has the row. T6: published example, ftp.team.net/html/fot/2002-07/msg00126.html,
 * with 14.7 psi and 460 degrees. T7: published example, address not recorded. T8, T9: the gas law worked out apart from
 * this code, 14.696 psi. Pounds, psi, degrees Fahrenheit.
 */
export const LOAD_LAW_CASES = [
  { id: 'T1', size: 'ST225/75R15', fullLb: 2_840, fullPsi: 80, psi: 50, lb: 2_157, tableLb: 2_150, tolerance: 2 },
  { id: 'T2', size: 'ST225/75R15', fullLb: 2_840, fullPsi: 80, psi: 65, lb: 2_515, tableLb: 2_540, tolerance: 2 },
  { id: 'T3', size: 'ST235/80R16', fullLb: 3_420, fullPsi: 80, psi: 50, lb: 2_598, tableLb: 2_600, tolerance: 2 },
] as const;

/** T4: what proportion (wrong) and a truck's exponent (wrong for ST) make of T3. */
export const T4 = { byProportionLb: 2_137.5, byTruckLawLb: 2_461, tolerance: 1 };

export const T5 = { size: 'ST235/80R16', fullLb: 3_420, fullPsi: 80, lb: 2_400, psi: 43.67, tolerance: 0.05 };

export const GAS_LAW_CASES = [
  { id: 'T6, warmer', psig: 20, atF: 70, toF: 130, expected: 23.9, tolerance: 0.05 },
  { id: 'T6, colder', psig: 20, atF: 70, toF: 50, expected: 18.7, tolerance: 0.05 },
  // Printed with its own rounding of the steps between.
  { id: 'T7', psig: 70, atF: 70, toF: 100, expected: 74.8, tolerance: 0.2 },
  { id: 'T8', psig: 80, atF: 70, toF: 20, expected: 71.06, tolerance: 0.02 },
  { id: 'T9', psig: 80, atF: 70, toF: 110, expected: 87.15, tolerance: 0.02 },
] as const;

/** T7: the temperature at which 70 psig set at 70 °F reads 84. */
export const T7_REACHES = { psig: 70, atF: 70, reads: 84, atWhichF: 157.6, tolerance: 0.2 };

/** T8 by a ratio of gauge pressures: the usual mistake. */
export const T8_BY_GAUGE_RATIO = 72.45;

/** Pressure of the standard atmosphere, kPa, by height in metres. Source: U.S. Standard Atmosphere, 1976, table I, printed in hPa to five figures. */
export const STANDARD_AIR = [
  { heightM: 0, kPa: 101.325 },
  { heightM: 500, kPa: 95.461 },
  { heightM: 1_000, kPa: 89.876 },
  { heightM: 1_500, kPa: 84.56 },
  { heightM: 2_000, kPa: 79.501 },
  { heightM: 3_000, kPa: 70.121 },
] as const;
