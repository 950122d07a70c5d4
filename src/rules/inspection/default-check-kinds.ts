import type { AppliesTo, CheckKind, CheckWork, MeasuredQuantity, SheetLine } from '../facts/check.js';
import { miles } from '../units/distance.js';
import { ANNUAL_LINES } from './annual-lines.js';

/** A check kind before a yard has taken it over. */
export type DefaultCheckKind = Omit<CheckKind, 'id'>;

/** Days of warning. Job card section 11, a proposal: work with parts 10 days, shop work 14, both one after the other; quick checks the evening before. */
const LEAD = { quick: 1, parts: 10, shop: 14, partsThenShop: 24, papers: 30 } as const;

/** Where published intervals come from; a yard sees these words beside the number and may set its own. */
const SOURCE = {
  manuals:
    "Common practice: makers' owner manuals as found in public, makers withheld. Your axle maker's number governs.",
  cargoTrailer: 'Government manual for a military cargo trailer (US Army TM 9-2330-324-14&P, maintenance table).',
  cargoTrailerStand: 'Government manual for a cargo trailer (US Army TM 9-2330-247-14&P, semiannual column).',
  practice: 'Common practice, no source.',
  law: '49 CFR 396.17 and Appendix A to Part 396. Applies in commerce over 10,000 lb; check your state.',
} as const;

const ANY: AppliesTo = {
  bodies: null,
  suspensions: null,
  brakes: null,
  hitches: null,
  deckMaterials: null,
  lubricants: null,
  ramps: null,
};
const BRAKED: AppliesTo = { ...ANY, brakes: ['electric', 'hydraulic', 'surge'] };
const ON_SPRINGS: AppliesTo = { ...ANY, suspensions: ['slipper-spring', 'eye-to-eye-spring'] };
const WOODEN_DECK: AppliesTo = { ...ANY, deckMaterials: ['pine', 'oak', 'rubber-faced', 'other'] };
const TILTING: AppliesTo = { ...ANY, bodies: ['gravity-tilt', 'powered-gravity-tilt', 'full-powered-tilt'] };
const WITH_POWER_UNIT: AppliesTo = { ...ANY, bodies: ['powered-gravity-tilt', 'full-powered-tilt'] };
const WITH_RAMPS: AppliesTo = {
  ...ANY,
  ramps: ['slide-out-rear', 'slide-out-side', 'stand-up', 'stand-up-knee-brace'],
};

/**
 * The checks a new yard starts with. Each interval says where it comes from; published numbers disagree, so every one is
 * a setting. What is asked for before each tow (lamps, pressures, latch, chains, breakaway pin) has no date of its own:
 * it stands on the sheets `pre-trip`, `road-stop` and `return`, which have no trigger and never fall due by themselves.
 */
export const DEFAULT_CHECK_KINDS: readonly DefaultCheckKind[] = [
  check({
    code: 'hub-repack',
    name: 'Wheel bearings: open, inspect, repack',
    triggers: [
      { kind: 'months', every: 12, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(12_000) },
      { kind: 'event', event: 'submerged', atKm: [] },
      { kind: 'event', event: 'idle-half-year', atKm: [] },
    ],
    appliesTo: { ...ANY, lubricants: ['grease'] },
    safety: true,
    blocks: 'all-jobs',
    work: {
      hours: 2,
      place: 'shop',
      parts: ['a seal for each hub', 'bearing grease', 'cotter pins'],
      bundle: 'hub',
      together: ['seals', 'shoes', 'magnets'],
    },
    leadDays: LEAD.partsThenShop,
    source: `${SOURCE.manuals} 12 months or 12,000 mi; others say 6 months or 6,000 mi, or 3,000 mi on gravel; at once after going under water, and before use after six months of standing. A grease fitting is no repack.`,
    lines: [
      tick('races', 'Rollers and races: no pits, no blue, no spin on the spindle', true),
      tick('seals', 'New seals, no grease on lining or magnet', true),
      measure('end-play', 'End play, 0.001 to 0.010 in (the axle maker governs)', 'end-play-mm', true),
      tick('nut-locked', 'Spindle nut locked, cap on', true),
      tick('spins', 'Wheel spins quietly, no wobble when rocked at 12 and 6', true),
      photo('bearings', 'Bearings as they came out'),
    ],
  }),
  check({
    code: 'hub-oil-service',
    name: 'Oil-bath hubs: open, inspect, new seals and oil',
    triggers: [
      { kind: 'months', every: 12, toMonthEnd: false },
      { kind: 'event', event: 'submerged', atKm: [] },
    ],
    appliesTo: { ...ANY, lubricants: ['oil'] },
    safety: true,
    blocks: 'all-jobs',
    work: {
      hours: 3,
      place: 'shop',
      parts: ['a seal for each hub', 'hub oil', 'cap gaskets'],
      bundle: 'hub',
      together: ['seals', 'shoes', 'magnets'],
    },
    leadDays: LEAD.partsThenShop,
    source: `${SOURCE.practice} All hubs open once a year; at once after going under water.`,
    lines: [
      tick('races', 'Rollers and races: no pits, no blue, no spin on the spindle', true),
      measure('end-play', 'End play (the axle maker governs)', 'end-play-mm', true),
      tick('level', 'Oil between the marks, cap dry', true),
    ],
  }),
  check({
    code: 'hub-oil-level',
    name: 'Oil-bath hubs: level and leaks',
    triggers: [
      { kind: 'months', every: 1, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(5_000) },
    ],
    appliesTo: { ...ANY, lubricants: ['oil'] },
    safety: true,
    work: quick(0.2),
    leadDays: LEAD.quick,
    source:
      "Carriers' guides: level weekly or every 5,000 mi; monthly by date is our choice, since each tow looks too.",
    lines: [
      tick('level', 'Oil between the marks in every sight glass', true),
      tick('dry', 'Hubs dry, no ring of wet dust', true),
      tick('clear', 'Oil neither dark nor milky', true),
    ],
  }),
  check({
    code: 'wheel-nut-torque',
    name: 'Wheel nuts: torque',
    triggers: [
      { kind: 'event', event: 'wheel-off', atKm: [miles(10), miles(25), miles(50)] },
      { kind: 'months', every: 6, toMonthEnd: false },
    ],
    safety: true,
    blocks: 'all-jobs',
    work: { hours: 0.25, place: 'road', parts: ['torque wrench'], bundle: null, together: [] },
    leadDays: LEAD.quick,
    source: `${SOURCE.manuals} At 10, 25 and 50 mi after any wheel was off. Every 6 months: ${SOURCE.cargoTrailer}`,
    lines: [
      measure('nuts', "Every nut at the wheel maker's torque, in star order", 'torque-nm', true),
      tick('studs', 'No nut missing, no rust streak, no oval hole', true),
    ],
  }),
  check({
    code: 'brake-adjust',
    name: 'Electric brakes: adjust',
    triggers: [
      { kind: 'event', event: 'brakes-new', atKm: [miles(200)] },
      { kind: 'distance', everyKm: miles(3_000) },
    ],
    appliesTo: { ...ANY, brakes: ['electric'] },
    safety: true,
    blocks: 'all-jobs',
    work: { hours: 1, place: 'shop', parts: [], bundle: null, together: [] },
    leadDays: LEAD.shop,
    source: `${SOURCE.manuals} Manual adjusters: first at 200 mi, then every 3,000 mi; one dealer's list says 2,000.`,
    lines: [
      tick('drag', 'Each wheel: light drag, then spins free', true),
      tick('even', 'Road test: stops straight, no wheel skids', true),
    ],
  }),
  check({
    code: 'brake-inspect',
    name: 'Brakes: clean, inspect, adjust, road test',
    triggers: [
      { kind: 'months', every: 6, toMonthEnd: false },
      { kind: 'event', event: 'submerged', atKm: [] },
      { kind: 'event', event: 'salt-half-time', atKm: [] },
    ],
    appliesTo: BRAKED,
    safety: true,
    blocks: 'all-jobs',
    work: {
      hours: 2,
      place: 'shop',
      parts: ['shoes or pads at hand'],
      bundle: 'hub',
      together: ['magnets measured', 'drums measured'],
    },
    leadDays: LEAD.partsThenShop,
    source: `${SOURCE.cargoTrailer} After going under water within days, and at half the time on salt: ${SOURCE.practice}`,
    lines: [
      measure('lining', 'Lining, fails at 1/16 in and less (Appendix A to 49 CFR 396, 1.a(6)(c))', 'lining-mm', true),
      measure('magnets', 'Electric brakes: thickness of each magnet', 'magnet-mm', true),
      measure('magnet-current', 'Electric brakes: current of each magnet, full on', 'magnet-a', false),
      tick('drums', "Drums inside the maker's limit, round, no grease", true),
      tick('wiring', 'Magnets, wires or hoses sound and fastened', true),
      tick('road-test', 'Road test: stops straight', true),
    ],
  }),
  check({
    code: 'tire-pressure',
    name: 'Tires: cold pressure, spare too',
    triggers: [
      { kind: 'months', every: 1, toMonthEnd: false },
      { kind: 'event', event: 'idle', atKm: [] },
    ],
    safety: true,
    blocks: 'all-jobs',
    work: quick(0.2, ['gauge', 'air']),
    leadDays: LEAD.quick,
    source: `${SOURCE.manuals} Before each tow; written down once a month. A standing tire loses 1 to 3 psi a month.`,
    lines: [measure('pressure', 'Cold: parked three hours', 'cold-pressure-kpa', true)],
  }),
  check({
    code: 'tire-tread',
    name: 'Tires: tread, sidewalls, rims',
    triggers: [
      { kind: 'months', every: 3, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(3_000) },
      { kind: 'event', event: 'overloaded', atKm: [] },
    ],
    safety: true,
    work: quick(0.4, ['depth gauge']),
    leadDays: LEAD.quick,
    source: `${SOURCE.manuals} Rims at least yearly and after a kerb. Replace at 2/32 in (Maryland COMAR 11.22.04.06; one manual says 1/16 in, the same).`,
    lines: [
      measure('tread', 'Depth, the least of three points across', 'tread-depth-mm', true),
      tick('sidewalls', 'No bulge, no cord, no deep cracks, inner side too', true),
      tick('even', 'Worn evenly: the inside edge alone tells of a bent axle or overload', false),
      tick('rims', 'Rims: no crack, no bend', true),
    ],
  }),
  check({
    code: 'breakaway',
    name: 'Breakaway: battery, switch, cable',
    triggers: [
      { kind: 'months', every: 3, toMonthEnd: false },
      { kind: 'event', event: 'idle', atKm: [] },
    ],
    appliesTo: BRAKED,
    safety: true,
    blocks: 'all-jobs',
    work: quick(0.2, ['voltmeter', 'charger']),
    leadDays: LEAD.quick,
    source: `Must hold the brakes for 15 minutes: 49 CFR 393.43(d). Charge every 3 months: owner manual. ${SOURCE.practice}`,
    lines: [
      measure('battery', 'Battery at rest; below 11.9 V it is flat', 'battery-v', true),
      tick('holds', 'Pin pulled: the wheels will not roll', true),
      tick('cable', 'Cable sound and long enough to reach the truck itself', true),
    ],
  }),
  check({
    code: 'springs-u-bolts',
    name: 'Spring leaves and U-bolt torque',
    triggers: [
      { kind: 'months', every: 6, toMonthEnd: false },
      { kind: 'event', event: 'overloaded', atKm: [] },
      { kind: 'event', event: 'salt-half-time', atKm: [] },
    ],
    appliesTo: ON_SPRINGS,
    safety: true,
    work: { hours: 0.75, place: 'shop', parts: ['torque wrench'], bundle: 'suspension', together: [] },
    leadDays: LEAD.shop,
    source: `${SOURCE.cargoTrailer} U-bolts also after the first loaded run on new ones, after an overload, and at half the time on salt: ${SOURCE.practice}`,
    lines: [
      tick('leaves', 'No leaf cracked, broken or shifted (49 CFR 393.207)', true),
      measure('u-bolts', "U-bolts at the axle maker's torque", 'torque-nm', true),
      tick('keepers', 'Slipper springs: keeper bolts in, hanger pads not worn through', true),
    ],
  }),
  check({
    code: 'shackles',
    name: 'Shackles, bushings, equalizer pin',
    triggers: [
      { kind: 'months', every: 12, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(12_000) },
    ],
    appliesTo: ON_SPRINGS,
    safety: true,
    work: {
      hours: 2,
      place: 'shop',
      parts: ['bushings', 'shackle bolts'],
      bundle: 'suspension',
      together: ['spring leaves', 'U-bolts'],
    },
    leadDays: LEAD.partsThenShop,
    source: SOURCE.practice,
    lines: [
      tick('play', 'No play under the pry bar, no oval hole', true),
      tick('equalizer', 'Equalizer swings free and is not flipped', true),
      tick('greased', 'Wet bolts greased', false),
    ],
  }),
  check({
    code: 'torsion-arms',
    name: 'Torsion axles: arms, rubber, brackets',
    triggers: [
      { kind: 'months', every: 12, toMonthEnd: false },
      { kind: 'event', event: 'overloaded', atKm: [] },
    ],
    appliesTo: { ...ANY, suspensions: ['torsion'] },
    safety: true,
    work: { hours: 0.75, place: 'shop', parts: [], bundle: 'suspension', together: [] },
    leadDays: LEAD.shop,
    source: SOURCE.practice,
    lines: [
      tick('drop', 'Jacked up: each wheel drops the same', true),
      tick('welds', 'Bracket welds: no crack, no rust line', true),
      tick('toe', 'Wheels upright and straight ahead', false),
    ],
  }),
  check({
    code: 'structure',
    name: 'Frame, welds, hinges, tongue',
    triggers: [
      { kind: 'months', every: 3, toMonthEnd: false },
      { kind: 'distance', everyKm: miles(3_000) },
      { kind: 'event', event: 'overloaded', atKm: [] },
    ],
    safety: true,
    blocks: 'all-jobs',
    work: quick(0.5, ['lamp', 'wire brush']),
    leadDays: LEAD.quick,
    source: `${SOURCE.manuals} At once after an accident. Cracked, sagging or loose frames may not roll: 49 CFR 393.201.`,
    lines: [
      tick('welds', 'Weld ends, hangers, axle brackets: no crack, no bleeding rust line', true),
      tick('tongue', 'Tongue straight, no crack where it meets the frame', true),
      tick('hinges', 'Hinges and pins sound', true),
      tick('rub-marks', 'No rub marks of tires under the deck', true),
      photo('frame', 'Anything that looks like a crack'),
    ],
  }),
  check({
    code: 'deck-probe',
    name: 'Deck boards: probe',
    triggers: [{ kind: 'months', every: 1, toMonthEnd: false }],
    appliesTo: WOODEN_DECK,
    safety: true,
    work: quick(0.3, ['awl or screwdriver']),
    leadDays: LEAD.quick,
    source: 'Common practice: monthly, and before steel tracks or small wheels; a trade list says weekly in use.',
    lines: [
      measure(
        'probe',
        'Each board at ends and crossmembers: over 1/4 in mark it, over 1/2 in replace it',
        'probe-depth-mm',
        true,
      ),
      measure('sag', 'The softest board, under one person: how far it sinks', 'board-sag-mm', true),
      tick('from-below', 'From below: no dark stain, no split', true),
      tick('fasteners', 'Boards fastened, none proud', false),
    ],
  }),
  check({
    code: 'ramps',
    name: 'Ramps: hinges, springs, feet',
    triggers: [{ kind: 'months', every: 3, toMonthEnd: false }],
    appliesTo: WITH_RAMPS,
    safety: true,
    work: quick(0.25),
    leadDays: LEAD.quick,
    source: `${SOURCE.manuals} As welds and hinges; looked at with each load besides.`,
    lines: [
      tick('straight', 'Straight, no crack at hinge or hook', true),
      tick('stowed', 'Stow and lock as they should', true),
      tick('supports', 'Rear supports reach the ground and hold', true),
    ],
  }),
  check({
    code: 'tilt-hydraulics',
    name: 'Tilt deck: cylinder, latch, creep',
    triggers: [{ kind: 'months', every: 1, toMonthEnd: false }],
    appliesTo: TILTING,
    safety: true,
    work: quick(0.4),
    leadDays: LEAD.quick,
    source: 'Common practice: monthly; any creep that can be seen in ten minutes is too much.',
    lines: [
      tick('creep', 'Held tilted ten minutes: no creep. Nobody under it', true),
      tick('latch', 'Latch pin full, not worn', true),
      tick('leaks', 'No oil film on rod or hoses', true),
    ],
  }),
  check({
    code: 'power-unit',
    name: 'Power unit: battery, pump, fluid',
    triggers: [{ kind: 'months', every: 12, toMonthEnd: false }],
    appliesTo: WITH_POWER_UNIT,
    work: { hours: 0.75, place: 'yard', parts: ['hydraulic fluid'], bundle: null, together: [] },
    leadDays: LEAD.parts,
    source: 'Common practice: fluid yearly; 12.4 V at rest is a good battery.',
    lines: [
      measure('battery', 'Battery at rest', 'battery-v', false),
      tick('fluid', 'Fluid clean and at its mark', false),
      tick('terminals', 'Terminals clean and tight', false),
    ],
  }),
  check({
    code: 'coupler-latch',
    name: 'Coupler, latch, chains, gooseneck lock',
    triggers: [{ kind: 'months', every: 12, toMonthEnd: false }],
    safety: true,
    work: quick(0.4, ['grease']),
    leadDays: LEAD.quick,
    source: SOURCE.practice,
    lines: [
      tick('latch', 'Closes under the ball, pinned, no play felt', true),
      tick('bolts', 'Mounting bolts and ball nut at torque, no crack', true),
      measure('chain-wear', 'Safety chains: the thinnest link, across its wire', 'chain-mm', true),
      tick('chains', 'Links not worn a tenth, hooks with latches', true),
    ],
  }),
  check({
    code: 'jack-grease',
    name: 'Jack: grease, full range',
    triggers: [{ kind: 'months', every: 12, toMonthEnd: false }],
    work: quick(0.2, ['grease']),
    leadDays: LEAD.quick,
    source: SOURCE.manuals,
    lines: [
      tick('range', 'Cranks through its range without binding', false),
      tick('pins', 'Pin, snap ring and foot in place', true),
    ],
  }),
  check({
    code: 'supports',
    name: 'Jacks, stands, supports',
    triggers: [{ kind: 'months', every: 6, toMonthEnd: false }],
    safety: true,
    work: quick(0.2),
    leadDays: LEAD.quick,
    source: SOURCE.cargoTrailerStand,
    lines: [
      tick('straight', 'Legs, tubes and feet straight, no crack where they are fastened', true),
      tick('pins', 'Pins and snap rings in place, lock as they should', true),
      tick('wheel', 'Jack wheel turns, its bearing greased once a year', false),
    ],
  }),
  check({
    code: 'first-use',
    name: 'First use after standing',
    triggers: [{ kind: 'event', event: 'idle', atKm: [] }],
    safety: true,
    blocks: 'all-jobs',
    work: quick(0.75, ['gauge', 'voltmeter']),
    leadDays: LEAD.quick,
    source: `After 90 days of standing. ${SOURCE.practice}`,
    lines: [
      measure('battery', 'Breakaway battery at rest; below 11.9 V it is flat', 'battery-v', true),
      measure('pressure', 'Cold pressure of every tire', 'cold-pressure-kpa', true),
      tick('brakes-free', 'Brakes free, each wheel spins quietly', true),
      tick('lamps', 'Lamps work, no nest in them', true),
      tick('boards', 'Boards sound, no rot', true),
      tick('flat-spots', 'No flat spots on the tires', false),
    ],
  }),
  check({
    code: 'salt-rinse',
    name: 'Rinse after road salt',
    triggers: [{ kind: 'event', event: 'salted', atKm: [] }],
    work: quick(0.4),
    leadDays: LEAD.quick,
    source: `After each trip over salt. ${SOURCE.practice}`,
    lines: [
      tick('rinsed', 'Underside, brakes, plugs and wiring rinsed', false),
      tick('crust', 'No white crust left under the deck', false),
    ],
  }),
  check({
    code: 'annual-inspection',
    name: 'Annual inspection',
    triggers: [{ kind: 'months', every: 12, toMonthEnd: true }],
    blocks: 'commercial-jobs',
    proof: { what: 'annual inspection report or decal', keepMonths: 14 },
    work: { hours: 1.5, place: 'shop', parts: [], bundle: null, together: [] },
    leadDays: LEAD.shop,
    source: SOURCE.law,
    lines: ANNUAL_LINES,
  }),
  check({
    code: 'registration',
    name: 'Registration',
    triggers: [{ kind: 'fixed-date', date: 'registration' }],
    blocks: 'all-jobs',
    work: quick(0.5),
    leadDays: LEAD.papers,
    source: 'The day on the registration. State law.',
    lines: [tick('plate', 'Plate and sticker on the trailer, new day entered', false)],
  }),
  check({
    code: 'insurance',
    name: 'Insurance',
    triggers: [{ kind: 'fixed-date', date: 'insurance' }],
    blocks: 'all-jobs',
    work: quick(0.5),
    leadDays: LEAD.papers,
    source: 'The day on the policy.',
    lines: [tick('card', 'Card with the trailer, new day entered', false)],
  }),
  check({
    code: 'pre-trip',
    name: 'Before each tow',
    safety: true,
    work: quick(0.1),
    leadDays: 0,
    source: `${SOURCE.manuals} Before each tow, so it has no date of its own.`,
    lines: [
      tick('latch', 'Latch closed and pinned, clamp under the ball, tongue lifted against it', true),
      tick('chains', 'Chains crossed, breakaway cable to the truck', true),
      tick('lamps', 'Every lamp works', true),
      measure('pressure', 'Cold pressure, spare too', 'cold-pressure-kpa', true),
      tick('nuts', 'Wheel nuts: none missing, none loose', true),
      tick('hubs', 'Hubs: no grease flung', true),
      tick('deck', 'Deck and ramps sound and stowed', true),
      tick('brakes', 'Brakes felt at walking pace', true),
      tick('papers', 'Papers aboard', false),
    ],
  }),
  check({
    code: 'road-stop',
    name: 'First stop on the road',
    safety: true,
    work: { ...quick(0.1, ['infrared thermometer']), place: 'road' },
    leadDays: 0,
    source: `Compare the hubs with each other, not with a fixed limit. ${SOURCE.practice}`,
    lines: [
      measure('hub-temperature', 'Each hub; the odd one out is looked at', 'temperature-c', true),
      tick('tires', 'Tires: none hotter than the others', true),
      tick('load', 'Chains and binders still tight', true),
    ],
  }),
  check({
    code: 'return',
    name: 'Back in the yard',
    safety: true,
    work: quick(0.1),
    leadDays: 0,
    source: `The same route each time, after each trip or hire. ${SOURCE.practice}`,
    lines: [
      photo('left', 'Left side'),
      photo('right', 'Right side'),
      photo('rear', 'Rear'),
      tick('underside', 'Underside of the deck over the tires: no rub marks', true),
      tick('tires', 'Tires are the ones that went out: make, code, load range', true),
      tick('coupler', 'Coupler throat and latch free', true),
      tick('ramps', 'Ramps straight, pins there', true),
      tick('lamps', 'Lamps and plug whole', true),
    ],
  }),
];

/** A check for every build that stops no job, unless said otherwise. */
function check(
  said: Pick<DefaultCheckKind, 'code' | 'name' | 'work' | 'leadDays' | 'source' | 'lines'> & Partial<DefaultCheckKind>,
): DefaultCheckKind {
  return {
    triggers: [],
    appliesTo: ANY,
    safety: false,
    blocks: 'none',
    proof: null,
    ownerPersonId: null,
    backupPersonId: null,
    ...said,
  };
}

function quick(hours: number, parts: readonly string[] = []): CheckWork {
  return { hours, place: 'yard', parts, bundle: null, together: [] };
}

function tick(code: string, text: string, safety: boolean): SheetLine {
  return { code, text, kind: 'tick', quantity: null, safety };
}

function measure(code: string, text: string, quantity: MeasuredQuantity, safety: boolean): SheetLine {
  return { code, text, kind: 'measure', quantity, safety };
}

function photo(code: string, text: string): SheetLine {
  return { code, text, kind: 'photo', quantity: null, safety: false };
}
