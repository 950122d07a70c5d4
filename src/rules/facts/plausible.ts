import { type Kilometres, km, miles } from '../units/distance.js';
import { lbf, type Newtons } from '../units/force.js';
import { feet, inch, type Metres } from '../units/length.js';
import { type Kilograms, lb } from '../units/mass.js';
import { type Kilopascals, psi } from '../units/pressure.js';
import type { MeasuredQuantity } from './check.js';

/** What kind of number it is, so that a door can say the range in the units its people use. */
type RangeUnit =
  | 'kg'
  | 'N'
  | 'm'
  | 'km'
  | 'kPa'
  | 'N·m'
  | 'mm'
  | 'V'
  | 'A'
  | 'N/m'
  | '°C'
  | 'days'
  | 'months'
  | 'years'
  | 'hours'
  | 'trips'
  | 'share'
  | 'cents'
  | null;

/**
 * What a number can be on any trailer we would believe in. Both ends belong to it.
 * Wide on purpose: a range catches a slipped digit or a wrong unit, and judges no trailer. Judging is what rules do.
 */
export interface Plausible<Q extends number = number> {
  readonly what: string;
  readonly low: Q;
  readonly high: Q;
  readonly unit: RangeUnit;
  /** True where only whole numbers make sense. */
  readonly whole: boolean;
}

const POUNDS_ON_THE_ROAD = 80_000;

/**
 * Ranges of a build sheet. Common practice, no source, except where one is named.
 * Upper end of a gross weight: 80,000 lb, the Interstate limit of 23 CFR 658.17(b).
 */
export const PLAUSIBLE_BUILD = {
  gvwr: mass("the plate's GVWR", 500, POUNDS_ON_THE_ROAD),
  /** 100 to 20,000 lb an inch: from a small rubber axle to a stiff truck spring. */
  springRate: plain<number>('the spring rate of this axle', lbf(100) / inch(1), lbf(20_000) / inch(1), 'N/m'),
  track: span('the track of this axle', 3, 9),
  gawr: mass("the plate's rating of this axle (GAWR)", 300, 30_000),
  axleRating: mass("the axle maker's rating of this axle", 300, 30_000),
  emptyMass: mass('the empty weight', 100, 40_000),
  /** Below nothing when the empty trailer is heavy behind its axles and lifts its tongue. */
  emptyTongue: force('the empty tongue weight', -5_000, 20_000),
  plateColdPressure: pressure("the plate's cold tire pressure", 10, 150),
  couplerRating: mass("the coupler's rating", 500, POUNDS_ON_THE_ROAD),
  couplerTongue: force("the coupler's vertical rating", 50, 30_000),
  /** From a small utility ball to the largest lunette ring. */
  ballSize: inches('the ball size', 1.25, 4),
  ballRating: mass("the ball's rating", 500, POUNDS_ON_THE_ROAD),
  levelHeight: inches('the coupler height at which it stands level', 8, 72),
  chainBreak: mass('the breaking strength of one safety chain', 500, 200_000),
  deckLength: span('the deck length', 4, 60),
  /** Beds wider than 102 in (23 CFR 658.15) exist for oversize hauls. */
  deckWidth: span('the deck width', 3, 14),
  deckHeight: span('the deck height', 0.3, 6),
  tiltLength: span('the length of the tilting part', 2, 60),
  fromCoupler: span('the distance from the coupler', 1, 60),
  /** A gooseneck's deck may reach forward over its coupler. */
  deckFront: span("where the deck's front edge lies, rearward from the coupler", -20, 60),
  /** From steel tread plate of an eighth of an inch up. */
  plankThickness: inches('the plank or plate thickness', 0.1, 6),
  plankWidth: inches('the plank width', 1, 24),
  crossmemberSpacing: inches('the crossmember spacing', 4, 60),
  boardCount: count('the number of boards', 1, 100),
  pivot: span('where the tilting deck turns, rearward from the coupler', 1, 60),
  frameDepth: inches('the depth of the main rail', 1, 36),
  bedDepth: inches('the depth of the bed frame', 1, 36),
  dovetail: span('the dovetail length', 0, 12),
  rampLength: span('the ramp length', 1, 16),
  rampRating: mass('what the ramps carry together', 200, POUNDS_ON_THE_ROAD),
  fenderClearWidth: span('the clear width between the fenders', 3, 12),
  jackCount: count('the number of jacks', 0, 8),
  jackLift: mass("one jack's lift capacity", 100, 50_000),
  jackSupport: mass("one jack's support capacity", 100, 100_000),
  jackPlace: span('where the jack stands, rearward from the coupler', 0, 20),
  /** 7 to 590 lb-ft: from small studs to hub-piloted truck wheels. */
  nutTorque: plain<number>('the wheel nut torque', 10, 800, 'N·m'),
} as const;

/** Load indexes of the published table end at 279 (ETRTO and TRA load index table). */
export const PLAUSIBLE_TIRE = {
  loadIndex: count('the load index', 0, 279),
  maxLoad: mass("the tire's maximum load", 200, 15_000),
  maxColdPressure: pressure("the tire's maximum cold pressure", 10, 150),
} as const;

export const PLAUSIBLE_LOAD = {
  cargo: mass('the weight of this cargo item', 0, 200_000),
  balancePoint: span('where the load balances, rearward from the coupler', -20, 80),
  hitchHeight: inches('the coupler height as it rode', 8, 72),
  offCentre: inches('how far off centre the load sits', -60, 60),
  tieDownCount: count('the number of tie-downs', 0, 60),
  workingLoad: mass("one tie-down's working load limit", 50, 40_000),
  itemPlace: span('where this item balances, rearward from the coupler', -20, 80),
  scaleGross: mass("the ticket's gross weight", 100, 300_000),
  /** Below nothing when the load lifts the tongue. */
  scaleTongue: force("the ticket's tongue weight", -20_000, 60_000),
  scaleAxle: force("the ticket's axle weight", 0, 60_000),
  machineMass: mass("the machine's weight", 1, 200_000),
  machineLength: span("the machine's length", 1, 80),
  machineWidth: span("the machine's width", 0.5, 20),
  contactCount: count('the number of wheels, tracks or pads', 1, 16),
  contactLength: inches('the length of one wheel, track or pad on the deck', 0.5, 300),
  contactWidth: inches('the width of one wheel, track or pad', 0.5, 60),
  machineWheelbase: span("the machine's wheelbase", 0.5, 40),
  clearance: inches("the machine's ground clearance", 0, 60),
  machineBalance: span('where the machine balances, rearward from its front', 0, 80),
} as const;

export const PLAUSIBLE_TOW_VEHICLE = {
  gvwr: mass("the tow vehicle's GVWR", 1_000, POUNDS_ON_THE_ROAD),
  mass: mass("the tow vehicle's weight", 500, POUNDS_ON_THE_ROAD),
  gcwr: mass("the tow vehicle's combined rating (GCWR)", 1_000, 300_000),
  hitchRating: mass("the hitch's rating", 500, 200_000),
  hitchTongue: force("the hitch's tongue rating", 50, 60_000),
  ballHeight: inches('the height of the ball', 6, 72),
} as const;

/** Common practice, no source. A trailer sees some tens of thousands of miles a year at most. */
export const PLAUSIBLE_USE = {
  tripDistance: road('the distance', 0, 20_000),
  shown: road('the reading', 0, 10_000_000),
  meterSpan: road('the distance at which the meter starts again from zero', 99, 10_000_000),
} as const;

/**
 * The most any trailer can cover in one day: 62 mph (100 km/h) for all of its 24 hours. Our bound; it only catches
 * a slipped digit, never a long day.
 */
export const MOST_KM_A_DAY: Kilometres = km(2_400);

/** Measured on a check sheet, in the unit at the end of the quantity's name. Common practice, no source. */
export const PLAUSIBLE_MEASURED: Readonly<Record<MeasuredQuantity, Plausible>> = {
  'cold-pressure-kpa': pressure('the cold pressure', 0, 150),
  'tread-depth-mm': plain('the tread depth', 0, 30, 'mm'),
  'lining-mm': plain('the lining thickness', 0, 30, 'mm'),
  'magnet-mm': plain('the thickness of the magnet', 0, 60, 'mm'),
  'magnet-a': plain('the current of the magnet', 0, 60, 'A'),
  'chain-mm': plain('the diameter of the link', 0, 60, 'mm'),
  'end-play-mm': plain('the end play', 0, 20, 'mm'),
  'battery-v': plain('the battery voltage', 0, 60, 'V'),
  'torque-nm': plain('the torque', 0, 1_500, 'N·m'),
  'temperature-c': plain('the temperature', -60, 500, '°C'),
  'probe-depth-mm': plain('the depth of the probe', 0, 150, 'mm'),
  'board-sag-mm': plain('how far the board sinks', 0, 300, 'mm'),
};

/** Settings of a yard. The ends are ours: past them a setting would switch its rule off. */
export const PLAUSIBLE_SETTING = {
  everyDays: whole('the number of days', 1, 3_660, 'days'),
  everyMonths: whole('the number of months', 1, 240, 'months'),
  everyDistance: road('the distance', 1, 200_000),
  everyTrips: whole('the number of trips', 1, 10_000, 'trips'),
  afterEvent: road('the distance after the event', 0, 10_000),
  leadDays: whole('the days of warning', 0, 365, 'days'),
  workHours: plain('the hours of work', 0, 200, 'hours'),
  keepMonths: whole('the months the proof is kept', 1, 600, 'months'),
  hour: count('the hour', 0, 23),
  tireAgeLimit: plain('the age limit of tires', 1, 20, 'years'),
  /** From deserts to the wettest coasts (Carll 2009: 0 to about 140 in the United States). */
  decayIndex: plain('the decay index', 0, 400, null),
  deckLifeYears: plain('the years a deck lasts here', 1, 60, 'years'),
  weighFirst: plain('the weigh-first share', 0, 0.5, 'share'),
  useWindow: whole('the days of recent use', 7, 1_095, 'days'),
  driftTrips: whole('the trips looked back on', 3, 200, 'trips'),
  cents: whole('the amount', 0, 1_000_000_000, 'cents'),
} as const;

function mass(what: string, low: number, high: number): Plausible<Kilograms> {
  return { what, low: lb(low), high: lb(high), unit: 'kg', whole: false };
}

function force(what: string, low: number, high: number): Plausible<Newtons> {
  return { what, low: lbf(low), high: lbf(high), unit: 'N', whole: false };
}

function span(what: string, lowFeet: number, highFeet: number): Plausible<Metres> {
  return { what, low: feet(lowFeet), high: feet(highFeet), unit: 'm', whole: false };
}

function inches(what: string, low: number, high: number): Plausible<Metres> {
  return { what, low: inch(low), high: inch(high), unit: 'm', whole: false };
}

function road(what: string, lowMiles: number, highMiles: number): Plausible<Kilometres> {
  return { what, low: miles(lowMiles), high: miles(highMiles), unit: 'km', whole: false };
}

function pressure(what: string, lowPsi: number, highPsi: number): Plausible<Kilopascals> {
  return { what, low: psi(lowPsi), high: psi(highPsi), unit: 'kPa', whole: false };
}

function count(what: string, low: number, high: number): Plausible {
  return { what, low, high, unit: null, whole: true };
}

function whole(what: string, low: number, high: number, unit: RangeUnit): Plausible {
  return { what, low, high, unit, whole: true };
}

function plain<Q extends number>(what: string, low: Q, high: Q, unit: RangeUnit): Plausible<Q> {
  return { what, low, high, unit, whole: false };
}
