import type { Machine } from '../facts/load.js';
import { type Newtons, newtons, weightOf } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';

type Contact = NonNullable<Machine['contact']>;

/** What one wheel, track or pad presses on the deck with. */
export interface ContactLoad {
  readonly stance: Stance;
  readonly loadN: Newtons;
  /** What at least one of them carries, however the weight lies: the weight over their number. */
  readonly leastN: Newtons;
  /** Length along the plank; null when unknown, and then a point stands for it. */
  readonly patchM: Metres | null;
  readonly widthM: Metres | null;
}

/** `climbing`: while it drives onto or off the deck. `parked`: as it rides. */
export type Stance = 'climbing' | 'parked';

/**
 * Share of the weight on the heavier end's contacts. A skid loader without bucket load stands about 70 : 30, and throws
 * more onto one end on a ramp; lifts and pads are nearer to even. Common practice, no source; a machine's own axle
 * weights beat it.
 */
const HEAVY_END_SHARE: Readonly<Record<Contact, Readonly<Record<Stance, number>>>> = {
  tires: { parked: 0.7, climbing: 0.8 },
  'small-wheels': { parked: 0.6, climbing: 0.7 },
  pads: { parked: 0.6, climbing: 0.6 },
  'rubber-tracks': { parked: 0.7, climbing: 0.8 },
  'steel-tracks': { parked: 0.7, climbing: 0.8 },
};

/** Share of its length on which a track stands as it tips over the ramp's crest. Common practice, no source. */
const TRACK_AT_CREST = 0.5;

export const CONTACT_LACKS = ['machine-mass', 'contact', 'contact-count'] as const;
export type ContactLack = (typeof CONTACT_LACKS)[number];

export interface StandingMachine {
  /** With everything that hangs on it: bucket, attachment, mud. */
  readonly massKg: Kilograms | null;
  readonly contact: Contact | null;
  readonly contactCount: number | null;
  readonly contactLengthM: Metres | null;
  readonly contactWidthM: Metres | null;
}

/**
 * What the hardest pressed contact carries, climbing and parked; or what is missing to say so. Two tracks carry half
 * each, on half their length at the crest. Wheels and pads: the heavier end's share over its half of them (rounded
 * down, so three wheels have one at an end). Pads are set down, never driven.
 */
export function contactLoads(machine: StandingMachine): readonly ContactLoad[] | readonly ContactLack[] {
  const { massKg, contact, contactCount } = machine;
  if (massKg === null || contact === null || contactCount === null) {
    const lacks: ContactLack[] = [];
    if (massKg === null) lacks.push('machine-mass');
    if (contact === null) lacks.push('contact');
    if (contactCount === null) lacks.push('contact-count');
    return lacks;
  }
  const stances: readonly Stance[] = contact === 'pads' ? ['parked'] : ['climbing', 'parked'];
  return stances.map((stance) => contactLoad(machine, massKg, contact, contactCount, stance));
}

export function isLacking(found: readonly ContactLoad[] | readonly ContactLack[]): found is readonly ContactLack[] {
  return typeof found[0] === 'string';
}

function contactLoad(
  { contactLengthM, contactWidthM }: StandingMachine,
  massKg: Kilograms,
  contact: Contact,
  count: number,
  stance: Stance,
): ContactLoad {
  const weightN = weightOf(massKg);
  const isTracks = contact === 'rubber-tracks' || contact === 'steel-tracks';
  // One or two of anything stand side by side: there is no heavier end to share with.
  const share = count <= 2 ? 1 / count : HEAVY_END_SHARE[contact][stance] / Math.floor(count / 2);
  const part = isTracks && stance === 'climbing' ? TRACK_AT_CREST : 1;
  return {
    stance,
    loadN: newtons(weightN * Math.max(share, 1 / count)),
    leastN: newtons(weightN / count),
    patchM: contactLengthM === null ? null : metres(contactLengthM * part),
    widthM: contactWidthM,
  };
}

/** The machine's weight as it stands on the deck: itself and what hangs on it, but not what was laid beside it. */
export function standingMass(machineKg: Kilograms, attachmentsKg: readonly Kilograms[]): Kilograms {
  return kg(attachmentsKg.reduce<number>((sum, mass) => sum + mass, machineKg));
}
