import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { CheckKind } from '../../rules/facts/check.js';
import type { FitReason, FitRemedy, Verdict } from '../../rules/fit/fit.js';
import { type Metres, metres } from '../../rules/units/length.js';
import { boardNames, boardsWords, deckLackWords, stressWords } from './deck-words.js';
import { duePhrase, PLACE } from './due-words.js';
import { comparisonWords } from './limit-words.js';
import { feetOf, loadingWords, moreTieDowns, needWords, tiedWords } from './loading-words.js';
import {
  ballSize,
  capital,
  hours,
  inches,
  list,
  onDay,
  percent,
  pounds,
  poundsOf,
  poundsUp,
  psiOf,
  sentence,
  wheel,
} from './show.js';
import { unknownWords } from './unknown-words.js';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  go: 'Go',
  'go-after': 'Fix first',
  'weigh-first': 'Weigh it first',
  'no-go': 'Not this trailer',
  'cannot-say': 'Cannot say',
};

export interface FitNames {
  readonly asOf: CivilDate;
  readonly checkKinds: ReadonlyMap<string, Pick<CheckKind, 'name' | 'work'>>;
}

/** Why the answer is not plain go, in a sentence. */
export function reasonWords(reason: FitReason, names: FitNames): string {
  switch (reason.kind) {
    case 'over':
    case 'near':
      return `${capital(comparisonWords(reason.comparison))}.`;
    case 'tongue-share':
      return `${boundWords(reason.bound)}${percent(reason.share)} of the weight would be on the tongue; ${bandWords(reason.low, reason.high)} is wanted.`;
    case 'attitude': {
      const high = reason.standing === 'nose-high';
      const by = reason.raisedM === null ? '' : ` by ${inches(positive(reason.raisedM))}`;
      return `The trailer rides ${high ? 'nose high' : 'nose low'}${by}: the ${high ? 'rear' : 'front'} torsion axle carries more.`;
    }
    case 'road': {
      const lifts =
        reason.liftsAtM === null ? '' : ` From ${inches(reason.liftsAtM)} on, axle ${reason.lifts} leaves the ground.`;
      return `Over a ${inches(reason.heightM)} ${reason.way} axle ${reason.axle} carries ${reason.ratesAssumed ? 'up to ' : ''}${poundsOf(reason.mostN)}.${lifts}`;
    }
    case 'hold':
      return `On hold: ${sentence(reason.reason)}`;
    case 'due': {
      const name = checkName(names, reason.due);
      const due = capital(duePhrase(reason.due, names.asOf));
      return reason.when === 'before' ? `${due}: ${name}.` : `${due}, while it is away: ${name}.`;
    }
    case 'never-proven':
      return `Nothing on record proves: ${reason.what}.`;
    case 'tires-past-age':
      return `Tires past the yard's age limit: ${list(reason.positions.map(wheel))}.`;
    case 'licence':
      return `Truck and trailer are rated ${pounds(reason.combinationKg)} together; from ${pounds(reason.thresholdKg)} a class ${reason.threshold === 'cdl-a' ? 'A' : 'B'} licence is asked for, even empty. ${driverWords(reason.driverHolds)} State rules may be stricter.`;
    case 'commercial-rules':
      return `Truck and trailer are rated ${pounds(reason.combinationKg)} together: from ${pounds(reason.thresholdKg)} in commerce the commercial vehicle rules apply. Check your state.`;
    case 'ball-size':
      return `The coupler takes a ${ballSize(reason.couplerM)} ball, the truck has ${ballSize(reason.ballM)}.`;
    case 'wider-than-law':
      return `It is ${inches(reason.widthM)} wide with its load; past ${inches(reason.limitM)} the road asks for a permit (23 CFR 658.15). Check your state.`;
    case 'too-wide':
    case 'too-long':
    case 'ramp-rating':
    case 'rear-lift':
    case 'hangs-up':
    case 'tilt-stays-up':
      return loadingWords(reason);
    case 'tie-downs':
      return `${tiedWords(reason.tied)} ${capital(needWords(reason.tied.need))}.`;
    case 'tie-downs-unsaid':
      return `What ties it down is not recorded. ${capital(needWords(reason.need))}.`;
    case 'deck-plank':
      return `${capital(reason.machine)} on the planks: ${stressWords(reason.stress)}.${reason.stress.verified ? '' : ' That strength is unverified.'}`;
    case 'deck-unknown':
      return `Whether the planks bear ${reason.machine} cannot be worked out. Not known: ${deckLackWords(reason.lacks)}.`;
    case 'soft-deck':
      return `Soft boards in the deck, ${boardsWords(reason.boards, reason.boardCount)}.`;
    case 'unknown':
      return unknownWords(reason.lacks, [reason.stops]);
  }
}

/** What would make it yes, as a step to do. */
export function remedyWords(remedy: FitRemedy, names: FitNames): string {
  switch (remedy.kind) {
    case 'lighten': {
      const what = `Without ${list(remedy.items.map((item) => `“${item}”`))}: ${pounds(remedy.grossKg)}`;
      if (remedy.standing === 'over') return `${what}, still ${pounds(remedy.overKg)} over.`;
      return remedy.standing === 'near'
        ? `${what}, inside, but so near that it must be weighed first.`
        : `${what}, inside the limits.`;
    }
    case 'move-load': {
      const back = remedy.forwardFromM < 0;
      const from = inches(positive(remedy.forwardFromM));
      const to = inches(positive(remedy.forwardToM));
      return `Move the load ${from === to ? from : `${from} to ${to}`} ${back ? 'back' : 'forward'}: ${poundsOf(remedy.tongueFromN)} to ${poundsOf(remedy.tongueToN)} on the tongue. Then weigh again.`;
    }
    case 'inflate': {
      const plate = remedy.askedByPlateKpa === null ? '' : `; the plate asks for ${psiOf(remedy.askedByPlateKpa)}`;
      return `Pump up ${list(remedy.positions.map(wheel))} to ${psiOf(remedy.toKpa)} cold: each then carries ${poundsOf(remedy.carriesN)}${plate}.`;
    }
    case 'do-check': {
      const by = remedy.by === null ? '' : ` by ${onDay(remedy.by, names.asOf)}`;
      return `${checkName(names, remedy)}${by}${workPhrase(names.checkKinds.get(remedy.checkKindId))}.`;
    }
    case 'replace-tires':
      return `Replace the tires: ${list(remedy.positions.map(wheel))}.`;
    case 'level': {
      const share = remedy.tongueShare === null ? '' : ` The tongue then carries about ${percent(remedy.tongueShare)}.`;
      return `Raise or lower the ball mount until the deck is level, then weigh each axle again.${share} See that the tongue keeps ${percent(remedy.tongueShareWanted)}.`;
    }
    case 'unload':
      return remedy.leastKg === null
        ? 'Or take weight off the deck, and weigh each axle again.'
        : `Or take at least ${poundsUp(remedy.leastKg)} off the deck, and weigh each axle again.`;
    case 'fold-in':
      return `Fold in what sticks out of the machine, or measure it as hauled: no more than ${feetOf(remedy.lengthM)}.`;
    case 'prop-tail':
      return 'Block or prop the tail before the machine drives on.';
    case 'flatten-ramp':
      return 'Make the slope less: longer ramps, the tail toward rising ground, or planks where ramp and deck meet.';
    case 'tie-down':
      return moreTieDowns(remedy);
    case 'spread-load':
      return `Lay something stiff across the boards, so that ${remedy.boards} share what one wheel, track or pad presses with.`;
    case 'replace-boards':
      return `Replace ${boardNames(remedy.boards)} and record a probing that passes.`;
    case 'weigh':
      return 'Weigh it loaded, truck and trailer, before it goes.';
    case 'another-driver':
      return 'Send a driver with the licence for it.';
    case 'permit':
      return 'Ask the state for a width permit, or carry it narrower.';
    case 'lift-hold':
      return 'Repair and record it, or have a named person lift the hold.';
  }
}

function checkName(names: FitNames, check: { readonly checkKindId: string; readonly code: string }): string {
  return names.checkKinds.get(check.checkKindId)?.name ?? check.code;
}

/** ` (2 h in the shop; bring 4 seals and grease)`. */
function workPhrase(kind: Pick<CheckKind, 'work'> | undefined): string {
  if (kind === undefined) return '';
  const bring = kind.work.parts.length === 0 ? '' : `; bring ${list(kind.work.parts)}`;
  return ` (${hours(kind.work.hours)} ${PLACE[kind.work.place]}${bring})`;
}

function driverWords(holds: 'A' | 'B' | 'none' | null): string {
  if (holds === null) return 'Nobody has said what the driver holds.';
  return holds === 'none' ? 'The driver holds none.' : `The driver holds class ${holds}.`;
}

/** `At most ` where no more is known of a share. */
export function boundWords(bound: 'at-most' | 'at-least' | null): string {
  if (bound === null) return '';
  return bound === 'at-most' ? 'At most ' : 'At least ';
}

export function bandWords(low: number, high: number | null): string {
  return high === null ? `at least ${percent(low)}` : `${percent(low)} to ${percent(high)}`;
}

function positive(length: Metres): Metres {
  return metres(Math.abs(length));
}
