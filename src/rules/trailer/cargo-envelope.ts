import { type BestPlace, bestPlace } from '../envelope/best-place.js';
import { boundsOf, type Envelope, type EnvelopeLack, envelope } from '../envelope/envelope.js';
import { type PayloadAt, payloadAt } from '../envelope/payload-at.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import type { Load, Machine } from '../facts/load.js';
import { machinesAboard } from '../load/aboard.js';
import type { LoadLimits } from '../load/load-limits.js';
import { weightOf } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilograms, kg } from '../units/mass.js';
import { deckSpan } from './deck-span.js';
import { parkingRange } from './machine-room.js';

/** A build with its limits, torsion axles held at a height above (positive) the one at which it stands level loaded. */
export interface Carrier {
  readonly build: BuildSheet;
  readonly limits: LoadLimits;
  /** Asked for torsion axles only; null: nobody said. */
  readonly raisedM: Metres | null;
}

/** The allowed region of balance point and cargo weight of a build, over its own deck. */
export function cargoEnvelope({ build, limits, raisedM }: Carrier): Envelope {
  return envelope({ limits, deck: deckSpan(build), raisedM });
}

/** What a build may carry with the cargo's balance point in one place, and what governs there; or what is missing. */
export type PayloadFound =
  | { readonly kind: 'known'; readonly payload: PayloadAt }
  | { readonly kind: 'unknown'; readonly lacks: readonly EnvelopeLack[] };

export function payloadWith({ build, limits, raisedM }: Carrier, balancePointM: Metres): PayloadFound {
  const found = boundsOf({ limits, deck: deckSpan(build), raisedM });
  if (found.kind === 'unknown') return found;
  const payload = payloadAt(found.bounds, balancePointM);
  return payload === null ? { kind: 'unknown', lacks: ['ratings'] } : { kind: 'known', payload };
}

/** Where a machine is best parked on a build. Places rearward from the coupler. */
export interface Parking extends BestPlace {
  readonly machineId: string;
  /** The machine, and what of the cargo has no place of its own and is taken to ride on it. */
  readonly massKg: Kilograms;
  /** Where its front then stands, driven on forwards; null while its own balance point is unknown. */
  readonly frontM: Metres | null;
  /** False while nobody said where the deck lies: the place may then be off it. */
  readonly deckKnown: boolean;
}

/**
 * The best place for the heaviest machine of a load: most left of the tightest limit that any place can change. What has
 * a place of its own stays there. Null without a machine aboard, without an empty weight, while a fact of the envelope
 * is missing, or when the machine is longer than the deck.
 */
export function bestParking(carrier: Carrier, load: Load, machines: readonly Machine[]): Parking | null {
  const { build, limits, raisedM } = carrier;
  const [heaviest] = machinesAboard(load, machines);
  const found = boundsOf({ limits, deck: deckSpan(build), raisedM });
  if (heaviest === undefined || found.kind === 'unknown' || limits.emptyKg === null) return null;
  const { machine } = heaviest;
  const { deckKnown, span } = found.bounds;
  const range = deckKnown ? parkingRange(build, machine) : { fromM: span.frontM, toM: span.rearM };
  if (range === null) return null;
  const stays = load.cargo.flatMap(({ machineId, massKg, fromCouplerM }) =>
    machineId === machine.id || fromCouplerM === null ? [] : [{ massKg, fromCouplerM }],
  );
  const moves = load.cargo.filter(({ machineId, fromCouplerM }) => machineId === machine.id || fromCouplerM === null);
  const massKg = kg(moves.reduce<number>((sum, item) => sum + item.massKg, 0));
  const best = bestPlace(found.bounds, weightOf(limits.emptyKg), { massKg, alongside: stays, ...range });
  if (best === null) return null;
  return {
    ...best,
    machineId: machine.id,
    massKg,
    frontM: machine.balancePointM === null ? null : metres(best.balancePointM - machine.balancePointM),
    deckKnown,
  };
}
