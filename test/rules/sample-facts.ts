import { type CivilDate, day } from '../../src/rules/calendar/civil-date.js';
import type { Axle, BuildSheet } from '../../src/rules/facts/build-sheet.js';
import type { CargoItem, Load, ScaleTicket } from '../../src/rules/facts/load.js';
import type { Part, TireMarks } from '../../src/rules/facts/part.js';
import { lbf } from '../../src/rules/units/force.js';
import { inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';

/** A build of which nobody has said anything: every fact unknown. */
export function unknownBuild(): BuildSheet {
  return {
    id: 'build-1',
    effectiveFrom: day('2020-01-01'),
    body: null,
    plate: { gvwrKg: null, coldPressureKpa: null },
    empty: { massKg: null, basis: 'assumed', tongueN: null },
    axles: [],
    suspension: null,
    hitch: {
      kind: null,
      couplerRatingKg: null,
      couplerTongueN: null,
      ballSizeM: null,
      heightAdjustable: null,
      levelHeightM: null,
      chainBreakKg: null,
      breakaway: null,
    },
    deck: {
      material: null,
      lengthM: null,
      widthM: null,
      heightM: null,
      tiltLengthM: null,
      tiltDrive: null,
      frontFromCouplerM: null,
      plankThicknessM: null,
      plankWidthM: null,
      crossmemberSpacingM: null,
      pivotFromCouplerM: null,
      boardCount: null,
      wood: null,
      woodGrade: null,
      treated: null,
    },
    frame: { section: null, depthM: null, tongue: null, bedDepthM: null },
    rear: { dovetailM: null, ramps: null, rampLengthM: null, rampRatingKg: null, stabilizers: null },
    fenders: { kind: null, clearWidthM: null },
    jacks: { count: null, liftKg: null, supportKg: null, fromCouplerM: null },
    wheels: { boltPattern: null, nutTorqueNm: null },
  };
}

export function axle(number: number, pounds: number | null, more: Partial<Axle> = {}): Axle {
  return {
    number,
    gawrKg: pounds === null ? null : lb(pounds),
    ratingKg: null,
    fromCouplerM: null,
    springRateNPerM: null,
    trackM: null,
    brakes: null,
    lubricant: null,
    wheelsPerSide: 1,
    ...more,
  };
}

/** Two 7,000 lb axles under a 14,000 lb plate, on slipper springs, bumper pull, weighed empty at 3,900 lb. */
export function build(more: Partial<BuildSheet> = {}): BuildSheet {
  const unknown = unknownBuild();
  return {
    ...unknown,
    plate: { gvwrKg: lb(14_000), coldPressureKpa: psi(80) },
    empty: { massKg: lb(3_900), basis: 'weighed', tongueN: null },
    axles: [axle(1, 7_000), axle(2, 7_000)],
    suspension: 'slipper-spring',
    hitch: { ...unknown.hitch, kind: 'bumper-pull', couplerRatingKg: lb(15_000) },
    ...more,
  };
}

/** The same with its axles' middle a number of inches behind the coupler and 35 in between them. */
export function placedAxles(centreIn: number, pounds = 7_000): Axle[] {
  return [
    axle(1, pounds, { fromCouplerM: inch(centreIn - 17.5) }),
    axle(2, pounds, { fromCouplerM: inch(centreIn + 17.5) }),
  ];
}

/** ST235/80R16 load range E, 3,420 lb at 80 psi: the published table. */
export function marks(more: Partial<TireMarks> = {}): TireMarks {
  return {
    size: 'ST235/80R16',
    kind: 'ST',
    loadIndexSingle: null,
    loadIndexDual: null,
    maxLoadSingleKg: lb(3_420),
    maxLoadDualKg: null,
    loadRange: 'E',
    speedSymbol: null,
    maxColdPressureKpa: psi(80),
    dateCode: '1024',
    ...more,
  };
}

export function tire(position: string, more: Partial<TireMarks> = {}, fittedOn: CivilDate | null = null): Part {
  return {
    id: `tire-${position}`,
    kind: 'tire',
    position,
    fittedOn,
    removedOn: null,
    removedFor: null,
    tire: marks(more),
    bearings: null,
    costCents: null,
  };
}

/** One tire on each side of each axle. */
export function tires(axles: number, more: Partial<TireMarks> = {}): Part[] {
  return Array.from({ length: axles }, (_, place) => [tire(`${place + 1}L`, more), tire(`${place + 1}R`, more)]).flat();
}

export function item(name: string, pounds: number, more: Partial<CargoItem> = {}): CargoItem {
  return { name, massKg: lb(pounds), basis: 'weighed', machineId: null, remedy: null, fromCouplerM: null, ...more };
}

export function load(more: Partial<Load> = {}): Load {
  return { cargo: [], balancePointM: null, scale: null, hitchHeightM: null, offCentreM: null, tieDowns: null, ...more };
}

/** A scale ticket in pounds, as it is printed. */
export function ticket(pounds: { gross?: number; tongue?: number; axles?: readonly number[] }): ScaleTicket {
  return {
    grossKg: pounds.gross === undefined ? null : lb(pounds.gross),
    tongueN: pounds.tongue === undefined ? null : lbf(pounds.tongue),
    axleN: pounds.axles?.map(lbf) ?? null,
  };
}
