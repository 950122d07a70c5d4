import { day } from '../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../src/rules/facts/build-sheet.js';
import type { CheckKind, CheckRecord } from '../../src/rules/facts/check.js';
import type { Handover } from '../../src/rules/facts/handover.js';
import type { Load, Machine } from '../../src/rules/facts/load.js';
import type { Part } from '../../src/rules/facts/part.js';
import type { MeterReading, TowVehicle, Trip } from '../../src/rules/facts/use.js';
import { km } from '../../src/rules/units/distance.js';
import { newtons } from '../../src/rules/units/force.js';
import { feet, inch, metres } from '../../src/rules/units/length.js';
import { kg, lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';
import type { KeptJob } from '../../src/store/job-store.js';
import type { KeptTrailer } from '../../src/store/trailer-store.js';

/**
 * Of each kind of fact one with every field given and one with every field that may be unknown left unknown.
 * Converted pounds and inches are long fractions, so that a digit lost on the way would show. All invented.
 */
type Fact<T> = Omit<T, 'id'>;

export const FULL_TRAILER: Fact<KeptTrailer> = {
  yardNumber: 'T-07',
  name: 'the long one',
  vin: '1A9BE1829K1234567',
  status: 'sold',
  boughtOn: day('2019-03-31'),
  registrationExpiresOn: day('2026-02-28'),
  insuranceExpiresOn: day('2026-12-31'),
  stored: 'cover',
  registrationPlate: 'TR 1234',
  boughtForCents: 1_249_900,
  note: 'hums above 55',
};

export const BARE_TRAILER: Fact<KeptTrailer> = {
  yardNumber: 'T-08',
  name: null,
  vin: null,
  status: 'in-service',
  boughtOn: null,
  registrationExpiresOn: null,
  insuranceExpiresOn: null,
  stored: null,
  registrationPlate: null,
  boughtForCents: null,
  note: null,
};

export const FULL_BUILD: Fact<BuildSheet> = {
  effectiveFrom: day('2024-02-29'),
  body: 'full-powered-tilt',
  plate: { gvwrKg: lb(14_000), coldPressureKpa: psi(80) },
  empty: { massKg: lb(3_907), basis: 'weighed', tongueN: newtons(-12.5) },
  axles: [
    {
      number: 1,
      gawrKg: lb(7_000),
      ratingKg: lb(7_001),
      fromCouplerM: inch(173.3),
      springRateNPerM: 700_508.3,
      trackM: inch(91.7),
      brakes: 'electric',
      lubricant: 'grease',
      wheelsPerSide: 1,
    },
    {
      number: 2,
      gawrKg: lb(6_999),
      ratingKg: lb(8_000),
      fromCouplerM: inch(208.7),
      springRateNPerM: 612_345.6,
      trackM: inch(91.3),
      brakes: 'hydraulic',
      lubricant: 'oil',
      wheelsPerSide: 2,
    },
  ],
  suspension: 'torsion',
  hitch: {
    kind: 'pintle',
    couplerRatingKg: lb(21_000),
    couplerTongueN: newtons(9_341.7),
    ballSizeM: inch(2.3125),
    heightAdjustable: false,
    levelHeightM: inch(18.7),
    chainBreakKg: lb(26_400),
    breakaway: true,
  },
  deck: {
    material: 'rubber-faced',
    lengthM: feet(20),
    widthM: inch(82),
    heightM: inch(27.3),
    tiltLengthM: feet(16),
    tiltDrive: 'damping-cylinder',
    pivotFromCouplerM: inch(188.9),
    frontFromCouplerM: inch(55.7),
    plankThicknessM: inch(1.9),
    plankWidthM: inch(7.3),
    crossmemberSpacingM: inch(16.1),
    boardCount: 11,
    wood: 'southern-pine',
    woodGrade: 'select-structural',
    treated: true,
  },
  frame: { section: 'c-channel', depthM: inch(6.1), tongue: 'part-way', bedDepthM: inch(5.9) },
  rear: {
    dovetailM: feet(2.1),
    ramps: 'stand-up-knee-brace',
    rampLengthM: feet(5.3),
    rampRatingKg: lb(9_013),
    stabilizers: false,
  },
  fenders: { kind: 'drive-over', clearWidthM: inch(81.9) },
  jacks: { count: 2, liftKg: lb(7_003), supportKg: lb(12_007), fromCouplerM: inch(22.3) },
  wheels: { boltPattern: '8 on 6.5 in', nutTorqueNm: 162.7 },
};

export const BARE_BUILD: Fact<BuildSheet> = {
  effectiveFrom: day('2023-12-31'),
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
    pivotFromCouplerM: null,
    frontFromCouplerM: null,
    plankThicknessM: null,
    plankWidthM: null,
    crossmemberSpacingM: null,
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

export const FULL_TIRE: Fact<Part> = {
  kind: 'tire',
  position: '1LO',
  fittedOn: day('2024-05-06'),
  removedOn: day('2025-05-06'),
  removedFor: 'precaution',
  bearings: null,
  costCents: 18_500,
  tire: {
    size: 'ST235/80R16',
    kind: 'ST',
    loadIndexSingle: 124,
    loadIndexDual: 120,
    maxLoadSingleKg: lb(3_420),
    maxLoadDualKg: lb(3_000),
    loadRange: 'E',
    speedSymbol: 'M',
    maxColdPressureKpa: psi(80),
    dateCode: '0524',
  },
};

export const BARE_TIRE: Fact<Part> = {
  kind: 'tire',
  position: null,
  fittedOn: null,
  removedOn: null,
  removedFor: null,
  bearings: null,
  costCents: null,
  tire: {
    size: null,
    kind: null,
    loadIndexSingle: null,
    loadIndexDual: null,
    maxLoadSingleKg: null,
    maxLoadDualKg: null,
    loadRange: null,
    speedSymbol: null,
    maxColdPressureKpa: null,
    dateCode: null,
  },
};

export const DECK_PART: Fact<Part> = {
  kind: 'deck',
  position: null,
  fittedOn: day('2022-01-01'),
  removedOn: null,
  removedFor: null,
  tire: null,
  bearings: null,
  costCents: null,
};

export const HUB_PART: Fact<Part> = {
  kind: 'hub-bearings',
  position: '2R',
  fittedOn: day('2023-06-30'),
  removedOn: day('2025-06-30'),
  removedFor: 'damaged',
  tire: null,
  bearings: { inner: '25580', outer: '14125A' },
  costCents: 4_200,
};

export const HALF_KNOWN_HUB_PART: Fact<Part> = {
  ...HUB_PART,
  removedOn: null,
  removedFor: null,
  bearings: { inner: null, outer: 'L44649' },
  costCents: null,
};

export const FULL_MACHINE: Fact<Machine> = {
  name: 'Track loader',
  massKg: lb(9_920),
  basis: 'weighed',
  lengthM: feet(12.4),
  widthM: inch(72.1),
  balancePointM: feet(6.3),
  contact: 'rubber-tracks',
  contactCount: 2,
  contactLengthM: inch(61.3),
  contactWidthM: inch(17.7),
  wheelbaseM: feet(5.1),
  clearanceM: inch(11.3),
  replacesMachineId: null,
};

export const BARE_MACHINE: Fact<Machine> = {
  name: 'something borrowed',
  massKg: null,
  basis: 'assumed',
  lengthM: null,
  widthM: null,
  balancePointM: null,
  contact: null,
  contactCount: null,
  contactLengthM: null,
  contactWidthM: null,
  wheelbaseM: null,
  clearanceM: null,
  replacesMachineId: null,
};

export const FULL_TOW_VEHICLE: Fact<TowVehicle> = {
  name: 'the grey one-ton',
  gvwrKg: lb(14_000),
  massKg: lb(8_143),
  gcwrKg: lb(35_000),
  hitchRatingKg: lb(18_500),
  hitchTongueN: newtons(8_229.1),
  ballSizeM: inch(2.3125),
  ballHeightM: inch(19.3),
};

export const BARE_TOW_VEHICLE: Fact<TowVehicle> = {
  name: 'whatever is free',
  gvwrKg: null,
  massKg: null,
  gcwrKg: null,
  hitchRatingKg: null,
  hitchTongueN: null,
  ballSizeM: null,
  ballHeightM: null,
};

export function fullLoad(machineId: string): Load {
  return {
    cargo: [
      {
        name: 'track loader',
        massKg: lb(9_920),
        basis: 'weighed',
        machineId,
        remedy: 'swap',
        fromCouplerM: inch(201.3),
      },
      { name: 'mud', massKg: lb(200), basis: 'assumed', machineId, remedy: 'wash', fromCouplerM: feet(15.7) },
      // Nothing may be put off a deck for weighing nothing.
      {
        name: 'a chain nobody weighed',
        massKg: kg(0),
        basis: 'stated',
        machineId,
        remedy: 'leave-off',
        fromCouplerM: metres(-0.1),
      },
    ],
    balancePointM: metres(5.123456789012345),
    scale: { grossKg: lb(13_777), tongueN: newtons(7_201.3), axleN: [newtons(27_000.1), newtons(0.1 + 0.2)] },
    hitchHeightM: inch(17.9),
    offCentreM: inch(-1.7),
    tieDowns: [
      { count: 4, workingLoadKg: lb(6_601), way: 'direct' },
      { count: 2, workingLoadKg: lb(3_333.3), way: 'over' },
    ],
  };
}

export const BARE_LOAD: Load = {
  cargo: [],
  balancePointM: null,
  scale: null,
  hitchHeightM: null,
  offCentreM: null,
  tieDowns: null,
};

/** Somebody said that nothing ties it down, which is not the same as nobody having said. */
export const UNTIED_LOAD: Load = { ...BARE_LOAD, tieDowns: [] };

export function fullTrip(machineId: string, jobId: string): Fact<Trip> {
  return {
    startedOn: day('2025-03-08'),
    endedOn: day('2025-03-09'),
    distanceKm: km(61.155072),
    machineId,
    load: fullLoad(machineId),
    roads: ['salt', 'gravel', 'water'],
    jobId,
  };
}

export const BARE_TRIP: Fact<Trip> = {
  startedOn: day('2024-02-29'),
  endedOn: day('2024-02-29'),
  distanceKm: null,
  machineId: null,
  load: BARE_LOAD,
  roads: null,
  jobId: null,
};

export const FULL_READING: Fact<MeterReading> = {
  takenOn: day('2025-01-31'),
  shownKm: km(12.3456789),
  kind: 'rolled-over',
  meterSpanKm: km(160_934.4),
};

export const BARE_READING: Fact<MeterReading> = {
  takenOn: day('2025-02-01'),
  shownKm: km(0),
  kind: 'replaced',
  meterSpanKm: null,
};

export function fullJob(links: {
  trailerId: string;
  machineId: string;
  towVehicle: TowVehicle;
  haulerPersonId: string;
}): Fact<KeptJob> {
  return {
    name: 'dozer to the quarry',
    startsOn: day('2025-07-04'),
    endsOn: day('2025-07-11'),
    state: 'booked',
    distanceKm: km(144.84096),
    work: 'hire',
    commercial: false,
    machineId: links.machineId,
    load: fullLoad(links.machineId),
    towVehicle: links.towVehicle,
    driver: { name: 'Kit Ambrey', cdl: 'none' },
    haulerPersonId: links.haulerPersonId,
    trailerId: links.trailerId,
    customer: 'Quarry Lane Stone',
    note: 'gate code at the office',
  };
}

export const BARE_JOB: Fact<KeptJob> = {
  name: 'something, some day',
  startsOn: day('2025-08-01'),
  endsOn: day('2025-08-01'),
  state: 'cancelled',
  distanceKm: null,
  work: 'own',
  commercial: null,
  machineId: null,
  load: BARE_LOAD,
  towVehicle: null,
  driver: null,
  haulerPersonId: null,
  trailerId: null,
  customer: null,
  note: null,
};

export function fullCheckKind(ownerPersonId: string, backupPersonId: string): Fact<CheckKind> {
  return {
    code: 'hub-repack',
    name: 'Repack the hubs',
    triggers: [
      { kind: 'days', every: 90 },
      { kind: 'months', every: 12, toMonthEnd: true },
      { kind: 'distance', everyKm: km(19_312.128) },
      { kind: 'trips', every: 40 },
      { kind: 'event', event: 'submerged', atKm: [km(0.1), km(80.4672)] },
      { kind: 'fixed-date', date: 'registration' },
    ],
    appliesTo: {
      bodies: ['fixed-deck'],
      suspensions: ['torsion'],
      brakes: ['electric'],
      hitches: ['pintle'],
      deckMaterials: ['pine'],
      lubricants: ['grease'],
      ramps: ['none'],
    },
    safety: true,
    blocks: 'commercial-jobs',
    proof: { what: 'the inspection report', keepMonths: 14 },
    work: { hours: 1.75, place: 'shop', parts: ['grease', 'seal'], bundle: 'hub', together: ['look at the magnets'] },
    leadDays: 14,
    ownerPersonId,
    backupPersonId,
    source: 'common practice, no source',
    lines: [
      { code: 'end-play', text: 'End play of each hub', kind: 'measure', quantity: 'end-play-mm', safety: true },
      { code: 'seal', text: 'Grease behind the drum', kind: 'tick', quantity: 'temperature-c', safety: false },
    ],
  };
}

export const BARE_CHECK_KIND: Fact<CheckKind> = {
  code: 'walk-round',
  name: 'Walk round',
  triggers: [],
  appliesTo: {
    bodies: null,
    suspensions: null,
    brakes: null,
    hitches: null,
    deckMaterials: null,
    lubricants: null,
    ramps: null,
  },
  safety: false,
  blocks: 'none',
  proof: null,
  work: { hours: 0, place: 'yard', parts: [], bundle: null, together: [] },
  leadDays: 0,
  ownerPersonId: null,
  backupPersonId: null,
  source: 'ours',
  lines: [],
};

export function fullCheckRecord(checkKindId: string, byPersonId: string): Fact<CheckRecord> {
  return {
    checkKindId,
    doneOn: day('2025-04-30'),
    outcome: 'fail',
    byPersonId,
    lines: [
      { code: 'end-play', result: 'bad', position: '1L', measured: { quantity: 'end-play-mm', value: 0.1 + 0.2 } },
      { code: 'heat', result: 'ok', position: '1R', measured: { quantity: 'temperature-c', value: -40.5 } },
    ],
    inspectedBy: 'state',
    proofOnTrailer: false,
    costCents: 24_000,
  };
}

export function bareCheckRecord(checkKindId: string): Fact<CheckRecord> {
  return {
    checkKindId,
    doneOn: day('2025-05-01'),
    outcome: 'pass',
    byPersonId: null,
    lines: [{ code: 'seal', result: null, position: null, measured: null }],
    inspectedBy: null,
    proofOnTrailer: null,
    costCents: null,
  };
}

/** Of a way out; its photos are laid to it by the store. */
export function fullHandover(jobId: string | null): Omit<Handover, 'id' | 'trailerId'> {
  return {
    jobId,
    way: 'out',
    outId: null,
    on: day('2025-05-02'),
    customer: 'Brindle Pools',
    byName: 'Wren',
    seen: [
      {
        thing: 'tire',
        position: '2L',
        condition: 'worn',
        tire: FULL_TIRE.tire,
        ballSizeM: null,
        note: 'chalked',
        photoIds: [],
      },
      BARE_SEEN,
    ],
    hitch: {
      ball: { sizeM: inch(2), ratingKg: lb(7_500) },
      swappedTo: { sizeM: inch(2.3125), ratingKg: lb(14_000) },
      plug: 'lamps-and-brakes',
    },
    signature: { name: 'Ada Brindle', strokes: [{ points: [1, 2, 300, 40] }, { points: [0, 7] }] },
  };
}

const BARE_SEEN: Handover['seen'][number] = {
  thing: 'coupler',
  position: null,
  condition: 'stiff',
  tire: null,
  ballSizeM: null,
  note: null,
  photoIds: [],
};

/** A return of which nothing but what was seen is known. */
export function bareReturn(outId: string): Omit<Handover, 'id' | 'trailerId'> {
  const ball = { ...BARE_SEEN, thing: 'customer-ball' as const, condition: 'sound' as const, ballSizeM: inch(2) };
  return {
    ...{ jobId: null, way: 'back', outId, on: day('2025-05-05'), customer: 'Brindle Pools', byName: 'Wren' },
    ...{ seen: [BARE_SEEN, ball], hitch: null, signature: null },
  };
}
