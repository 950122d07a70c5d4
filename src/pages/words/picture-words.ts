import type { Edge } from '../../rules/envelope/envelope.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import { inch, metres } from '../../rules/units/length.js';
import { kg } from '../../rules/units/mass.js';
import { showFeet, showForce, showLength, showMass } from '../components/show-quantity.js';
import type { SideLoad, UsualFact } from '../pictures/side-geometry.js';
import { BODY_WORDS, FENDER_WORDS, HITCH_WORDS, listWords, RAMP_WORDS, SUSPENSION_WORDS } from './build-words.js';
import { edgeWords } from './parking-words.js';

const USUAL_WORDS: Readonly<Record<UsualFact, string>> = {
  'deck-place': 'where the deck lies',
  'deck-height': 'how high the deck is',
  'axle-places': 'where the axles are',
  'coupler-height': 'the coupler height when level',
  pivot: 'where the deck turns',
  'ramp-length': 'how long the ramps are',
};

/** A trailer from its side, for whoever cannot see the drawing: front to rear. */
export function sideWords(build: BuildSheet, usual: readonly UsualFact[]): string {
  const { deck, rear, axles, hitch, fenders, jacks } = build;
  const places = axles.toSorted((a, b) => a.number - b.number).flatMap((axle) => axle.fromCouplerM ?? []);
  const parts = [
    build.hitch.kind === null ? null : HITCH_WORDS[hitch.kind as NonNullable<typeof hitch.kind>],
    jacks.count === null || jacks.count === 0 ? null : jacks.count === 1 ? 'one jack' : `${jacks.count} jacks`,
    build.body === null ? null : BODY_WORDS[build.body].toLowerCase(),
    deck.lengthM === null ? null : `deck ${showFeet(deck.lengthM)} long`,
    deck.frontFromCouplerM === null ? null : `its front ${showFeet(deck.frontFromCouplerM)} behind the coupler`,
    deck.heightM === null ? null : `${showLength(deck.heightM)} high`,
    deck.tiltLengthM === null ? null : `the rear ${showFeet(deck.tiltLengthM)} tilts`,
    axles.length === 0 ? null : axles.length === 1 ? 'one axle' : `${axles.length} axles`,
    places.length === 0 ? null : `${listWords(places.map(showFeet))} behind the coupler`,
    build.suspension === null ? null : SUSPENSION_WORDS[build.suspension].toLowerCase(),
    fenders.kind === null || fenders.kind === 'none' ? null : `${FENDER_WORDS[fenders.kind].toLowerCase()} fenders`,
    rear.dovetailM === null || rear.dovetailM === 0 ? null : `dovetail ${showFeet(rear.dovetailM)}`,
    rear.ramps === null || rear.ramps === 'none' ? null : `ramps: ${RAMP_WORDS[rear.ramps].toLowerCase()}`,
    rear.stabilizers === true ? 'stabilizers' : null,
  ].filter((part) => part !== null);
  const said = parts.length === 0 ? 'Nothing of its build is recorded.' : `${capital(parts.join(', '))}.`;
  const drawn = listWords(usual.map((fact) => USUAL_WORDS[fact]));
  return usual.length === 0 ? `${said} Drawn to scale.` : `${said} Not recorded, so drawn as is usual: ${drawn}.`;
}

/** The load on it, and what it presses with. */
export function loadedWords({ name, massKg, balancePointM, tongueN, axleN }: SideLoad): string {
  const weighs = massKg === null ? '' : `, ${showMass(massKg)},`;
  const presses = [
    ...(tongueN === null ? [] : [`${showForce(tongueN)} on the tongue`]),
    ...(axleN === null ? [] : [`${listWords(axleN.map((one) => showForce(one)))} on the axles from the front`]),
  ];
  const said = presses.length === 0 ? '' : `: ${presses.join(', ')}`;
  return `${name}${weighs} balances ${behindWords(balancePointM)}${said}.`;
}

/** A place as a tape shows it: `14 ft 3 in behind the coupler`. */
export function behindWords(placeM: number): string {
  return `${showFeet(metres(Math.abs(placeM)))} ${placeM < 0 ? 'ahead of' : 'behind'} the coupler`;
}

/** One edge of the envelope: which limit, from where to where. */
export function edgeLine({ kind, subject, from, to }: Pick<Edge, 'kind' | 'subject' | 'from' | 'to'>): string {
  const [a, b] = from.balancePointM <= to.balancePointM ? [from, to] : [to, from];
  const places =
    Math.abs(a.balancePointM - b.balancePointM) < inch(0.5)
      ? `${behindWords(a.balancePointM)}, up to ${showMass(kg(Math.max(a.cargoKg, b.cargoKg)))}`
      : `from ${pointWords(a)} to ${pointWords(b)}`;
  return `${kind === 'no-cargo' ? 'An empty deck' : capital(edgeWords({ kind, subject }))}: ${places}`;
}

function pointWords({ balancePointM, cargoKg }: Edge['from']): string {
  return `${showMass(cargoKg)} balancing ${behindWords(balancePointM)}`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
