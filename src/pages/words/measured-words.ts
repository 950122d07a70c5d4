import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { MeasuredQuantity } from '../../rules/facts/check.js';
import type { Part } from '../../rules/facts/part.js';
import { PLAUSIBLE_MEASURED } from '../../rules/facts/plausible.js';
import { wheelPositions } from '../../rules/trailer/wheel-positions.js';
import { kPa, psi, toPsi } from '../../rules/units/pressure.js';
import { showNumber, showPressure } from '../components/show-quantity.js';
import { nmToPoundFeet, poundFeetToNm } from '../form/read-form.js';

interface MeasuredUnit {
  readonly what: string;
  readonly unit: string;
  readonly toSi: (shown: number) => number;
  readonly fromSi: (kept: number) => number;
  readonly decimals: number;
}

const MM_PER_INCH = 25.4;

/** What gauges here show, beside what is kept. Tread is read in thirty-seconds of an inch. */
const UNITS: Readonly<Record<MeasuredQuantity, MeasuredUnit>> = {
  'cold-pressure-kpa': {
    what: 'cold pressure',
    unit: 'psi',
    toSi: psi,
    fromSi: (kept) => toPsi(kPa(kept)),
    decimals: 0,
  },
  'tread-depth-mm': {
    what: 'tread depth',
    unit: '32nds in',
    toSi: (shown) => (shown / 32) * MM_PER_INCH,
    fromSi: (kept) => (kept / MM_PER_INCH) * 32,
    decimals: 1,
  },
  'lining-mm': inches('lining thickness', 3),
  'magnet-mm': inches('magnet thickness', 3),
  'magnet-a': { what: 'magnet current', unit: 'A', toSi: (shown) => shown, fromSi: (kept) => kept, decimals: 2 },
  'chain-mm': inches('diameter of the most worn link', 3),
  'end-play-mm': inches('end play', 3),
  'battery-v': { what: 'battery voltage', unit: 'V', toSi: (shown) => shown, fromSi: (kept) => kept, decimals: 2 },
  'torque-nm': { what: 'torque', unit: 'lb-ft', toSi: poundFeetToNm, fromSi: nmToPoundFeet, decimals: 0 },
  'temperature-c': {
    what: 'temperature',
    unit: '°F',
    toSi: (shown) => ((shown - 32) * 5) / 9,
    fromSi: (kept) => (kept * 9) / 5 + 32,
    decimals: 0,
  },
  'probe-depth-mm': inches('depth of the probe', 2),
  'board-sag-mm': inches('sag of the board', 2),
};

function inches(what: string, decimals: number): MeasuredUnit {
  return { what, unit: 'in', toSi: (shown) => shown * MM_PER_INCH, fromSi: (kept) => kept / MM_PER_INCH, decimals };
}

export function measuredUnit(quantity: MeasuredQuantity): MeasuredUnit {
  return UNITS[quantity];
}

/** `80 psi`, `7 32nds in`. */
export function measuredWords(quantity: MeasuredQuantity, value: number): string {
  const { unit, fromSi, decimals } = UNITS[quantity];
  return `${showNumber(fromSi(value), decimals)} ${unit}`;
}

/** The fix for a measurement that is no number, in the unit of the page. */
export function measuredFix(quantity: MeasuredQuantity): string {
  const { what, unit, fromSi } = UNITS[quantity];
  const { low, high } = PLAUSIBLE_MEASURED[quantity];
  return `Enter the ${what} as a number, ${showNumber(fromSi(low), 1)} to ${showNumber(fromSi(high), 1)} ${unit}, or leave it empty.`;
}

/**
 * The limit that stands beside a measurement, and where it is from. Null where the axle or tire maker's own number must
 * be looked up.
 */
export function measuredLimit(quantity: MeasuredQuantity, build: BuildSheet | null, tire: Part['tire']): string | null {
  switch (quantity) {
    case 'cold-pressure-kpa': {
      const wanted = build?.plate.coldPressureKpa ?? tire?.maxColdPressureKpa ?? null;
      if (wanted === null) return 'Cold, three hours parked. The plate and the sidewall say how much.';
      const from = build?.plate.coldPressureKpa != null ? 'plate' : 'sidewall';
      return `Cold, three hours parked: ${showPressure(wanted)} (${from}).`;
    }
    case 'tread-depth-mm':
      return 'At least 2/32 (49 CFR 393.75(c)), in the lowest groove.';
    case 'lining-mm':
      return 'More than 1/16 in: at that it fails the annual inspection (Appendix A to 49 CFR 396, 1.a(6)(c)); the axle maker may ask more.';
    case 'magnet-mm':
      return 'Worn to the marks or the slots of the magnet, replace it (the axle maker governs).';
    case 'magnet-a':
      return 'About the same at every brake; the axle maker says how much.';
    case 'chain-mm':
      return 'Compare with an unworn link; the chain maker says how much wear is too much.';
    case 'end-play-mm':
      return '0.001 to 0.010 in (practice; the axle maker governs).';
    case 'battery-v':
      return 'Below 11.9 V at rest it is flat; 12.4 V is good (practice).';
    case 'torque-nm':
      return build?.wheels.nutTorqueNm == null
        ? "The wheel maker's torque is not on file."
        : `${showNumber(nmToPoundFeet(build.wheels.nutTorqueNm))} lb-ft (wheel maker, from the build sheet).`;
    case 'temperature-c':
      return 'One hub 20 to 30 °F over the others: look. 160 °F and rising: stop (owners’ practice).';
    case 'probe-depth-mm':
      return 'Sinks over 1/4 in: mark it. Over 1/2 in: replace it (practice).';
    case 'board-sag-mm':
      return 'How far it sinks under one person; one board more than the others: look beneath.';
  }
}

const BY_TIRE: ReadonlySet<MeasuredQuantity> = new Set(['cold-pressure-kpa', 'tread-depth-mm']);
const BY_HUB: ReadonlySet<MeasuredQuantity> = new Set([
  'lining-mm',
  'magnet-mm',
  'magnet-a',
  'end-play-mm',
  'temperature-c',
  'torque-nm',
]);

/** Where one line is measured: at each tire, at each hub, or once. */
export function measuredPlaces(quantity: MeasuredQuantity, build: BuildSheet | null): readonly (string | null)[] {
  if (build === null || build.axles.length === 0) return [null];
  if (BY_TIRE.has(quantity)) return wheelPositions(build);
  if (BY_HUB.has(quantity)) return build.axles.flatMap((axle) => [`${axle.number}L`, `${axle.number}R`]);
  return [null];
}
