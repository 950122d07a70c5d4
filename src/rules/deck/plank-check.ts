import type { Deck } from '../facts/build-sheet.js';
import { exceeds } from '../units/compare.js';
import { type Newtons, newtons } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import { type Kilopascals, kPa } from '../units/pressure.js';
import { clearWood } from './clear-wood.js';
import {
  CONTACT_LACKS,
  type ContactLoad,
  contactLoads,
  isLacking,
  type Stance,
  type StandingMachine,
} from './contact-load.js';
import type { LoadDuration } from './design-factors.js';
import { type AllowableStress, allowableStress, type WoodGrade } from './design-values.js';
import { bendingStress, boardsUnder, momentAtMiddle, sag, shearStress } from './plank-bending.js';
import { PLATE_YIELD, plateStress } from './tread-plate.js';

/** A fact without which a deck cannot be held against a machine. */
export const DECK_LACKS = [
  ...CONTACT_LACKS,
  'contact-size',
  'deck-material',
  'deck-wood',
  'wood-grade',
  'wood-strength',
  'plank-thickness',
  'plank-width',
  'crossmember-spacing',
] as const;
export type DeckLack = (typeof DECK_LACKS)[number];

/** What the stress is held against, and how far that number can be trusted. */
export type StrengthOrigin = 'design-value' | 'clear-wood' | 'plate-yield';

/**
 * One machine on one deck, where it presses hardest.
 *
 * `breaks`: even shared evenly, the weight passes the average strength of faultless wood. `over`: past the published
 * strength. `doubtful`: past a strength that is unverified or only a bound; it blocks nothing. `unknown`: `lacks` says why.
 */
export interface PlankCheck {
  readonly standing: 'inside' | 'doubtful' | 'over' | 'breaks' | 'unknown';
  readonly lacks: readonly DeckLack[];
  readonly worst: PlankStress | null;
}

export interface PlankStress {
  readonly stance: Stance;
  /** What one wheel, track or pad presses with. */
  readonly contactN: Newtons;
  readonly boards: number;
  readonly bendingKpa: Kilopascals;
  readonly shearKpa: Kilopascals | null;
  readonly sagM: Metres | null;
  readonly allowedKpa: Kilopascals;
  readonly allowedShearKpa: Kilopascals | null;
  /** The contact load at which the board is as stressed as it may be. */
  readonly allowedN: Newtons;
  readonly origin: StrengthOrigin;
  readonly verified: boolean;
  readonly lostM: Metres;
}

/** What of a build sheet's deck a plank is judged by. */
export type PlankedDeck = Pick<
  Deck,
  'material' | 'plankThicknessM' | 'plankWidthM' | 'crossmemberSpacingM' | 'wood' | 'woodGrade' | 'treated'
>;

/**
 * A deck is rained on wherever it goes, so its wood is judged wet. How long the full load stands on one board in all,
 * over the deck's life: driving on and off well under seven days; riding, 1,200 hauls of an hour, two months. Our choice.
 */
const DURATION: Readonly<Record<Stance, LoadDuration>> = { climbing: 'seven-days', parked: 'two-months' };

/** Faults halve a board's strength against clear wood (from memory, unverified): past it a board without a published design value is doubtful. */
const FAULTS = 0.5;

/**
 * One machine against the planks of a deck: simple span between crossmembers, the load in the middle, boards under a
 * contact rounded down, `lostM` rotted off one face. Unknown lengths of contact are taken as a point, unknown widths as one board:
 * what passes so, passes; what does not is unknown.
 */
export function checkPlank(deck: PlankedDeck, machine: StandingMachine, lostM: Metres = metres(0)): PlankCheck {
  const missing = deckLacks(deck);
  const loads = contactLoads(machine);
  if (isLacking(loads)) return unknown([...missing, ...loads]);
  if (missing.length > 0) return unknown(missing);
  const checks = loads.map((load) =>
    deck.material === 'tread-plate' ? onPlate(deck, load) : onPlanks(deck, load, lostM),
  );
  return checks.reduce((worst, next) => (isWorse(next, worst) ? next : worst));
}

function deckLacks({ material, plankThicknessM, plankWidthM, crossmemberSpacingM, wood }: PlankedDeck): DeckLack[] {
  const lacks: DeckLack[] = [];
  if (material === null) lacks.push('deck-material');
  if (plankThicknessM === null) lacks.push('plank-thickness');
  if (crossmemberSpacingM === null) lacks.push('crossmember-spacing');
  if (material === 'tread-plate') return lacks;
  if (plankWidthM === null) lacks.push('plank-width');
  if (wood === null) lacks.push('deck-wood');
  return lacks;
}

function unknown(lacks: readonly DeckLack[]): PlankCheck {
  return { standing: 'unknown', lacks, worst: null };
}

/** Share of a board's thickness that counts as lost at most: 1/400 of its strength is then left. */
const MOST_LOST = 0.95;

/** The deck's numbers, once none of them is missing. */
interface Board {
  readonly widthM: Metres;
  readonly thicknessM: Metres;
  readonly spanM: Metres;
  readonly lostM: Metres;
}

function onPlanks(deck: PlankedDeck, load: ContactLoad, lostM: Metres): PlankCheck {
  const board: Board = {
    widthM: deck.plankWidthM as Metres,
    thicknessM: deck.plankThicknessM as Metres,
    spanM: deck.crossmemberSpacingM as Metres,
    // A board rotted through bears nothing; this leaves it next to nothing, and its stress a number.
    lostM: metres(Math.min(lostM, MOST_LOST * (deck.plankThicknessM as Metres))),
  };
  const boards = load.widthM === null ? 1 : boardsUnder(load.widthM, board.widthM);
  const clear = clearWood(deck.wood as NonNullable<Deck['wood']>);
  const stress = stressOf(load.loadN, load, board, boards);
  const sized = load.patchM !== null && load.widthM !== null;
  if (clear?.green.verified === true && sized) {
    const leastKpa = stressOf(load.leastN, load, board, boards).bendingKpa;
    if (exceeds(leastKpa, clear.green.ruptureKpa)) {
      return { standing: 'breaks', lacks: [], worst: against(stress, load, boards, lostM, broken(clear.green)) };
    }
  }
  const allowed = gradesOf(deck).map((grade) => allowedIn(deck, grade, board, load.stance));
  const [weakest, strongest] = [allowed[0] ?? null, allowed.at(-1) ?? null];
  if (weakest === null || strongest === null) {
    if (clear === null) return unknown(['wood-strength']);
    const faulty = { ...broken(clear.green), bendingKpa: kPa(clear.green.ruptureKpa * FAULTS), verified: false };
    const worst = against(stress, load, boards, lostM, faulty);
    return exceeds(stress.bendingKpa, faulty.bendingKpa)
      ? { standing: 'doubtful', lacks: ['wood-strength'], worst }
      : { standing: 'unknown', lacks: ['wood-strength'], worst };
  }
  return judged(against(stress, load, boards, lostM, weakest), against(stress, load, boards, lostM, strongest), sized);
}

/**
 * Between the weakest and the strongest grade it may be, and with a contact of unknown size, only what is sure is said.
 * Past shear alone is doubtful: the whole load beside a crossmember is a bound, design codes stand it a little off.
 */
function judged(weakest: PlankStress, strongest: PlankStress, sized: boolean): PlankCheck {
  if (!isOver(weakest)) return { standing: 'inside', lacks: [], worst: weakest };
  if (!sized) return { standing: 'unknown', lacks: ['contact-size'], worst: weakest };
  if (isBentOver(strongest)) return { standing: strongest.verified ? 'over' : 'doubtful', lacks: [], worst: strongest };
  if (isBentOver(weakest)) return { standing: 'unknown', lacks: ['wood-grade'], worst: weakest };
  return { standing: 'doubtful', lacks: [], worst: strongest };
}

function isBentOver({ bendingKpa, allowedKpa }: PlankStress): boolean {
  return exceeds(bendingKpa, allowedKpa);
}

function isOver(stress: PlankStress): boolean {
  if (isBentOver(stress)) return true;
  const { shearKpa, allowedShearKpa } = stress;
  return shearKpa !== null && allowedShearKpa !== null && exceeds(shearKpa, allowedShearKpa);
}

const ALL_GRADES: readonly WoodGrade[] = ['no-3', 'no-2', 'no-1', 'select-structural'];

/** Weakest first. A grade nobody knows may be any of them. */
function gradesOf({ woodGrade }: PlankedDeck): readonly WoodGrade[] {
  return woodGrade === null ? ALL_GRADES : [woodGrade];
}

function allowedIn(deck: PlankedDeck, grade: WoodGrade, board: Board, stance: Stance): Strength | null {
  const found = allowableStress(deck.wood as NonNullable<Deck['wood']>, grade, {
    widthM: board.widthM,
    thicknessM: board.thicknessM,
    duration: DURATION[stance],
    wet: true,
    // Where nobody said, it may be, and then it is weaker.
    treated: deck.treated ?? true,
  });
  return found === null ? null : { ...found, origin: 'design-value' };
}

interface Strength extends Omit<AllowableStress, 'shearKpa'> {
  readonly shearKpa: Kilopascals | null;
  readonly origin: StrengthOrigin;
}

function broken(green: {
  readonly ruptureKpa: Kilopascals;
  readonly elasticityKpa: Kilopascals;
  readonly verified: boolean;
}): Strength {
  return {
    bendingKpa: green.ruptureKpa,
    shearKpa: null,
    elasticityKpa: green.elasticityKpa,
    verified: green.verified,
    origin: 'clear-wood',
  };
}

interface Stress {
  readonly bendingKpa: Kilopascals;
  readonly shearKpa: Kilopascals;
  sagIn(elasticity: Kilopascals): Metres;
}

function stressOf(
  loadN: Newtons,
  { patchM }: ContactLoad,
  { widthM, thicknessM, spanM, lostM }: Board,
  boards: number,
): Stress {
  const patch = { loadN, patchM: patchM ?? metres(0), spanM };
  const carryingM = metres(widthM * boards);
  return {
    bendingKpa: bendingStress(momentAtMiddle(patch), carryingM, thicknessM, lostM),
    shearKpa: shearStress(onSpan(loadN, patch.patchM, spanM), carryingM, thicknessM, lostM),
    sagIn: (elasticity) =>
      sag({ ...patch, loadN: onSpan(loadN, patch.patchM, spanM) }, elasticity, carryingM, thicknessM, lostM),
  };
}

/** A track longer than the span rests partly on the spans beside. */
function onSpan(loadN: Newtons, patchM: Metres, spanM: Metres): Newtons {
  return patchM > spanM ? newtons((loadN * spanM) / patchM) : loadN;
}

function against(stress: Stress, load: ContactLoad, boards: number, lostM: Metres, strength: Strength): PlankStress {
  const { bendingKpa, shearKpa } = stress;
  const share = Math.max(
    bendingKpa / strength.bendingKpa,
    strength.shearKpa === null ? 0 : shearKpa / strength.shearKpa,
  );
  return {
    stance: load.stance,
    contactN: load.loadN,
    boards,
    bendingKpa,
    shearKpa,
    sagM: stress.sagIn(strength.elasticityKpa),
    allowedKpa: strength.bendingKpa,
    allowedShearKpa: strength.shearKpa,
    allowedN: newtons(load.loadN / share),
    origin: strength.origin,
    verified: strength.verified,
    lostM,
  };
}

/** Steel: the strip formula is a safe bound and the steel unknown, so past yield is doubtful and blocks nothing. */
function onPlate(deck: PlankedDeck, load: ContactLoad): PlankCheck {
  if (load.patchM === null || load.widthM === null) return unknown(['contact-size']);
  const spanM = deck.crossmemberSpacingM as Metres;
  const bendingKpa = plateStress(
    { loadN: load.loadN, patchM: load.patchM, spanM },
    load.widthM,
    deck.plankThicknessM as Metres,
  );
  const worst: PlankStress = {
    stance: load.stance,
    contactN: load.loadN,
    boards: 1,
    bendingKpa,
    shearKpa: null,
    sagM: null,
    allowedKpa: PLATE_YIELD,
    allowedShearKpa: null,
    allowedN: newtons((load.loadN * PLATE_YIELD) / bendingKpa),
    origin: 'plate-yield',
    verified: false,
    lostM: metres(0),
  };
  return { standing: exceeds(bendingKpa, PLATE_YIELD) ? 'doubtful' : 'inside', lacks: [], worst };
}

const ORDER: Readonly<Record<PlankCheck['standing'], number>> = {
  breaks: 4,
  over: 3,
  unknown: 2,
  doubtful: 1,
  inside: 0,
};

function isWorse(a: PlankCheck, b: PlankCheck): boolean {
  if (a.standing !== b.standing) return ORDER[a.standing] > ORDER[b.standing];
  return shareOf(a) > shareOf(b);
}

/** How far a contact goes past what the plank may carry, 1 being just so. */
export function shareOf({ worst }: PlankCheck): number {
  return worst === null ? 0 : worst.contactN / worst.allowedN;
}
