import { type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import type { CargoItem } from '../../src/rules/facts/load.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';
import type { BuildSheetInput } from '../../src/use-cases/input/build-sheet-input.js';

/** The day most tests are set on. */
export const TODAY: CivilDate = day('2025-06-16');

/** In pounds, as people say it; what is not said is sane for a 14,000 lb equipment trailer. */
export interface BuildWish {
  readonly plate?: number | null;
  readonly axles?: number;
  readonly axle?: number;
  readonly empty?: number | null;
  readonly emptyTongue?: number | null;
  readonly coupler?: number;
  readonly suspension?: 'slipper-spring' | 'eye-to-eye-spring' | 'torsion' | null;
  readonly platePsi?: number | null;
}

/**
 * An equipment trailer as one would be entered: two 7,000 lb axles on slipper springs, plate 14,000, weighed empty.
 * Figures are usual for the class (common practice, no source).
 */
export function aBuild(wish: BuildWish = {}): BuildSheetInput {
  const { plate, axles = 2, axle = 7_000, empty, emptyTongue, coupler = 21_000, suspension, platePsi } = wish;
  return {
    body: 'fixed-deck',
    plate: {
      gvwrKg: plate === null ? null : lb(plate ?? 14_000),
      coldPressureKpa: platePsi === null ? null : psi(platePsi ?? 80),
    },
    empty: {
      massKg: empty === null ? null : lb(empty ?? 3_900),
      basis: 'weighed',
      tongueN: emptyTongue === null ? null : lbf(emptyTongue ?? 490),
    },
    axles: Array.from({ length: axles }, (_, place) => ({
      gawrKg: lb(axle),
      ratingKg: lb(axle),
      fromCouplerM: inch(192 + (place - (axles - 1) / 2) * 35),
      brakes: 'electric' as const,
      lubricant: 'grease' as const,
      wheelsPerSide: 1 as const,
    })),
    suspension: suspension === undefined ? 'slipper-spring' : suspension,
    hitch: {
      kind: 'bumper-pull',
      couplerRatingKg: lb(coupler),
      couplerTongueN: lbf(2_000),
      ballSizeM: inch(2.3125),
      heightAdjustable: true,
      chainBreakKg: lb(21_000),
      breakaway: true,
    },
    deck: {
      material: 'pine',
      lengthM: feet(20),
      widthM: inch(82),
      heightM: inch(27),
      frontFromCouplerM: inch(56),
      plankThicknessM: inch(1.5),
      plankWidthM: inch(7.25),
      crossmemberSpacingM: inch(16),
    },
    frame: { section: 'c-channel', depthM: inch(6), tongue: 'wrapped-to-axles' },
    rear: { dovetailM: feet(2), ramps: 'slide-out-rear', stabilizers: true },
    fenders: { kind: 'double-broke', clearWidthM: inch(82) },
    jacks: { count: 1, liftKg: lb(10_000), supportKg: lb(12_000) },
    wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 163 },
  };
}

/** The same with every field given, as a tilt deck. */
export function aFullBuild(): BuildSheetInput {
  const build = aBuild();
  return {
    ...build,
    axles: build.axles?.map((axle) => ({ ...axle, springRateNPerM: 700_000, trackM: inch(92) })) ?? [],
    hitch: { ...build.hitch, levelHeightM: inch(20) },
    deck: {
      ...build.deck,
      tiltLengthM: feet(16),
      tiltDrive: 'damping-cylinder',
      pivotFromCouplerM: inch(190),
      boardCount: 11,
      wood: 'southern-pine',
      woodGrade: 'no-1',
      treated: true,
    },
    frame: { ...build.frame, bedDepthM: inch(6) },
    rear: { ...build.rear, rampLengthM: feet(5), rampRatingKg: lb(14_000) },
    jacks: { ...build.jacks, fromCouplerM: inch(24) },
  };
}

export interface TireWish {
  readonly dateCode?: string | null;
  readonly maxLoad?: number;
  readonly size?: string;
  readonly loadRange?: string;
  readonly fittedOn?: CivilDate | null;
}

/** One ST235/80R16 load range E: 3,420 lb at 80 psi (job card section 3, point 4; the published load table). */
export function aTire(position: string, wish: TireWish = {}) {
  return {
    kind: 'tire' as const,
    position,
    fittedOn: wish.fittedOn === undefined ? day('2024-05-06') : wish.fittedOn,
    tire: {
      size: wish.size ?? 'ST235/80R16',
      kind: 'ST' as const,
      maxLoadSingleKg: lb(wish.maxLoad ?? 3_420),
      loadRange: wish.loadRange ?? 'E',
      speedSymbol: 'M',
      maxColdPressureKpa: psi(80),
      dateCode: wish.dateCode === undefined ? '1024' : wish.dateCode,
    },
  };
}

/** A tire in every position of a trailer with single wheels. */
export function tiresOn(axles: number, wish: TireWish = {}) {
  return Array.from({ length: axles }, (_, place) => [`${place + 1}L`, `${place + 1}R`])
    .flat()
    .map((position) => aTire(position, wish));
}

/** One thing on the deck; `pounds` as weighed unless said otherwise. */
export function cargo(
  name: string,
  pounds: number,
  more: Partial<Pick<CargoItem, 'basis' | 'machineId' | 'remedy' | 'fromCouplerM'>> = {},
): CargoItem {
  return { name, massKg: lb(pounds), basis: 'weighed', machineId: null, remedy: null, fromCouplerM: null, ...more };
}
