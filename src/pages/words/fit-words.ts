import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Fit, FitReason, FitRemedy } from '../../rules/fit/fit.js';
import { newtons } from '../../rules/units/force.js';
import { kg } from '../../rules/units/mass.js';
import {
  showFeet,
  showForce,
  showLength,
  showMass,
  showMassUp,
  showNearDate,
  showPressure,
  showShare,
} from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';
import { boardNames, boardsOf, boardsWords, deckLackWords, stressFrom, stressWords } from './deck-words.js';
import { dueWhen } from './due-words.js';
import type { Names } from './flag-words.js';
import { bandWords, boundWords } from './flag-words.js';
import { comparisonWords, limitWords, measuredWords, originWords } from './limit-words.js';
import { loadingWords, moreTieDowns, tieDownWords } from './loading-words.js';
import { lacksWords, stopsWords } from './unknown-words.js';

/** One reason in a sentence, and where its number comes from. */
export interface ReasonWords {
  readonly says: string;
  readonly from: string | null;
}

export function reasonWords(reason: FitReason, names: Names, today: CivilDate): ReasonWords {
  switch (reason.kind) {
    case 'over':
      return {
        says: `${limitWords(reason.comparison.limit)}: ${comparisonWords(reason.comparison)}.`,
        from: `Limit from ${originWords(reason.comparison.limit.origin)}; ${measuredWords(reason.comparison.measured)}.`,
      };
    case 'near':
      return {
        says: `${limitWords(reason.comparison.limit)}: ${comparisonWords(reason.comparison)}. Too near to go on an unmeasured weight.`,
        from: `Limit from ${originWords(reason.comparison.limit.origin)}; ${measuredWords(reason.comparison.measured)}.`,
      };
    case 'tongue-share':
      return {
        says: `${boundWords(reason.bound)}${showShare(reason.share)} of the weight is on the tongue, where ${bandWords(reason.low, reason.high)} is wanted.`,
        from: 'Common practice for this hitch; the ratings of hitch and tow vehicle come first.',
      };
    case 'attitude':
      return {
        says: `The trailer rides ${reason.standing === 'nose-high' ? 'nose high' : 'nose low'}${reason.raisedM === null ? '' : `, its hitch ${showInches(Math.abs(reason.raisedM))} in off level`}: on torsion axles that puts more on the ${reason.standing === 'nose-high' ? 'rear' : 'front'} axle.`,
        from: 'Torsion axles are separate springs; nothing between them evens the load.',
      };
    case 'road':
      return roadWords(reason);
    case 'hold':
      return { says: `On hold: ${reason.reason}.`, from: null };
    case 'due': {
      const name = names.checkKinds.get(reason.due.checkKindId) ?? reason.due.code;
      return {
        says:
          reason.when === 'before'
            ? `${name}: ${lowerFirst(dueWhen(reason.due, today))}.`
            : `${name} falls due while it is away: ${lowerFirst(dueWhen(reason.due, today))}.`,
        from: 'Interval and source under Yard.',
      };
    }
    case 'never-proven':
      return {
        says: `No proof on record: ${reason.what}.`,
        from: `Asked for by ${names.checkKinds.get(reason.checkKindId) ?? 'a check'}.`,
      };
    case 'tires-past-age':
      return {
        says: `Tires past the yard's age limit: ${listWords(reason.positions.map(positionWords))}.`,
        from: "The yard's own policy; no federal law sets an age.",
      };
    case 'licence':
      return {
        says: `Trailer and tow vehicle together come to ${showMass(reason.combinationKg)}, and from ${showMass(reason.thresholdKg)} a class ${reason.threshold === 'cdl-a' ? 'A' : 'B'} commercial license is asked for, even empty. ${driverWords(reason.driverHolds)}`,
        from: '49 CFR 383.5 and 383.91, by the greater of ratings and actual weights. Check your state: its rules may be stricter.',
      };
    case 'commercial-rules':
      return {
        says: `Trailer and tow vehicle together come to ${showMass(reason.combinationKg)}. From ${showMass(reason.thresholdKg)} in commerce the commercial-vehicle rules apply, the annual inspection among them.`,
        from: '49 CFR 390.5. Check your state: its rules may be stricter.',
      };
    case 'ball-size':
      return {
        says: `The coupler takes a ${showLength(reason.couplerM)} ball; the tow vehicle carries ${showLength(reason.ballM)}. A smaller ball lets go.`,
        from: 'The size stamped on the coupler.',
      };
    case 'wider-than-law':
      return {
        says: `It is ${showLength(reason.widthM)} wide with its load; past ${showLength(reason.limitM)} the road asks for a permit.`,
        from: '23 CFR 658.15, commercial vehicles on the National Network; cargo counts. Check your state.',
      };
    case 'too-wide':
    case 'too-long':
    case 'ramp-rating':
    case 'rear-lift':
    case 'hangs-up':
    case 'tilt-stays-up':
      return loadingWords(reason, names.machines.get(reason.machineId) ?? 'The machine');
    case 'tie-downs':
    case 'tie-downs-unsaid':
      return tieDownWords(reason);
    case 'deck-plank':
      return {
        says: `${reason.machine} on the planks: ${stressWords(reason.stress)}.${reason.standing === 'breaks' ? ' Even shared evenly it would break them.' : ''}`,
        from: stressFrom(reason.stress),
      };
    case 'deck-unknown':
      return {
        says: `Whether the planks bear ${reason.machine} cannot be worked out. Not known: ${deckLackWords(reason.lacks)}.`,
        from: null,
      };
    case 'soft-deck':
      return {
        says: `${boardsOf(reason.boards, reason.boardCount)} soft: ${boardsWords(reason.boards)}.`,
        from: `As last probed; past ${showLength(reason.replaceM)} a board is replaced (common practice, no source). It beats any forecast.`,
      };
    case 'unknown':
      return { says: `${lacksWords(reason.lacks)} is not known, so ${stopsWords(reason.stops)}.`, from: null };
  }
}

export function remedyWords(remedy: FitRemedy, names: Names): string {
  switch (remedy.kind) {
    case 'lighten': {
      const items = listWords(remedy.items);
      const after = showMass(remedy.grossKg);
      if (remedy.standing === 'over')
        return `Without ${items}: ${after} in all, still ${showMass(remedy.overKg)} over.`;
      if (remedy.standing === 'near')
        return `Without ${items}: ${after} in all, ${showMass(kg(Math.abs(remedy.overKg)))} inside. Too near to trust: weigh it first.`;
      return `Without ${items}: ${after} in all, ${showMass(kg(Math.abs(remedy.overKg)))} inside.`;
    }
    case 'move-load': {
      const direction = remedy.forwardFromM >= 0 && remedy.forwardToM >= 0 ? 'forward' : 'back';
      const [least, most] = [Math.abs(remedy.forwardFromM), Math.abs(remedy.forwardToM)].sort((a, b) => a - b);
      return `Move the load ${showInches(least ?? 0)} to ${showInches(most ?? 0)} in ${direction}: ${showForce(newtons(Math.min(remedy.tongueFromN, remedy.tongueToN)))} to ${showForce(newtons(Math.max(remedy.tongueFromN, remedy.tongueToN)))} on the tongue. Weigh again afterwards.`;
    }
    case 'inflate':
      return `Inflate ${listWords(remedy.positions.map(positionWords))} to at least ${showPressure(remedy.toKpa)} cold: each then carries ${showForce(remedy.carriesN)}.${remedy.askedByPlateKpa === null ? '' : ` The plate asks for ${showPressure(remedy.askedByPlateKpa)}.`}`;
    case 'do-check': {
      const name = names.checkKinds.get(remedy.checkKindId) ?? remedy.code;
      return remedy.by === null ? `Do and record: ${name}.` : `Do and record by ${showNearDate(remedy.by)}: ${name}.`;
    }
    case 'replace-tires':
      return `Replace the tires: ${listWords(remedy.positions.map(positionWords))}.`;
    case 'level':
      return levelWords(remedy);
    case 'unload':
      return remedy.leastKg === null
        ? 'Or take weight off the deck and weigh each axle again.'
        : `Or take at least ${showMassUp(remedy.leastKg)} off the deck, and weigh each axle again.`;
    case 'fold-in':
      return `Fold in what sticks out of ${names.machines.get(remedy.machineId) ?? 'the machine'}, or measure it as hauled: no more than ${showFeet(remedy.lengthM)}.`;
    case 'prop-tail':
      return 'Block or prop the tail of the trailer before the machine drives on, and only then.';
    case 'flatten-ramp':
      return 'Make the slope less: longer ramps, the tail toward rising ground, or planks where ramp and deck meet.';
    case 'tie-down':
      return moreTieDowns(remedy);
    case 'spread-load':
      return `Lay something stiff across the boards, so that ${remedy.boards} of them share what one wheel, track or pad presses with.`;
    case 'replace-boards':
      return `Replace ${boardNames(remedy.boards)} and record a probing that passes.`;
    case 'weigh':
      return 'Weigh it loaded and enter the ticket.';
    case 'another-driver':
      return 'Send a driver who holds the license, or a lighter combination.';
    case 'permit':
      return 'Ask the state for a width permit, or carry it narrower.';
    case 'lift-hold':
      return 'Record the repair, or have a named person lift the hold.';
  }
}

function roadWords(reason: Extract<FitReason, { kind: 'road' }>): ReasonWords {
  const over = reason.ratedN !== null && reason.mostN > reason.ratedN;
  const rated = over && reason.ratedN !== null ? `, rated ${showForce(reason.ratedN)}` : '';
  const lifts =
    reason.liftsAtM === null
      ? ''
      : ` From ${showInches(reason.liftsAtM)} in on, axle ${reason.lifts} is off the ground.`;
  return {
    says: `Over a ${showInches(reason.heightM)} in ${reason.way}, axle ${reason.axle} carries ${reason.ratesAssumed ? 'up to ' : ''}${showForce(reason.mostN)}${rated}.${lifts} Take it slowly and square.`,
    from: reason.ratesAssumed
      ? 'Torsion axles as separate springs, taken as stiff as they may be; how stiff they are nobody has entered.'
      : 'Torsion axles as separate springs of the stiffness entered.',
  };
}

function levelWords(remedy: Extract<FitRemedy, { kind: 'level' }>): string {
  const to = remedy.hitchHeightM === null ? '' : ` (coupler at ${showInches(remedy.hitchHeightM)} in)`;
  const axles =
    remedy.axleN === null ? '' : ` Level, the axles come to about ${listWords(remedy.axleN.map(showForce))}.`;
  const share =
    remedy.tongueN === null || remedy.tongueShare === null
      ? ''
      : ` About ${showForce(remedy.tongueN)} (${showShare(remedy.tongueShare)}) is then left on the tongue.`;
  return `Raise or lower the ball mount until the deck is level${to}, then weigh each axle again.${axles}${share} The hitch share changes with it: see that it keeps ${showShare(remedy.tongueShareWanted)}.`;
}

/** The answer in one sentence, for the head of the page: the verdict and what decides it. */
export function verdictSentence(fit: Fit): string {
  switch (fit.verdict) {
    case 'go':
      return 'By what was entered, it may go.';
    case 'go-after':
      return 'It may go after what stands below is done.';
    case 'weigh-first':
      return fit.reasons.some(({ kind }) => kind === 'near')
        ? 'Too near a limit to go unmeasured.'
        : 'What its axles or tires carry is not known: weigh it first.';
    case 'no-go':
      return noGoSentence(fit);
    case 'cannot-say': {
      const lacks = fit.reasons.flatMap((reason) =>
        reason.kind === 'unknown' ? [lowerFirst(lacksWords(reason.lacks))] : [],
      );
      return lacks.length === 0
        ? 'A fact is missing, so there is no answer yet.'
        : `No answer yet. Not known: ${listWords([...new Set(lacks)])}.`;
    }
  }
}

function noGoSentence({ loadCheck, reasons }: Fit): string {
  const worst = loadCheck.comparisons
    .filter((comparison) => comparison.standing === 'over')
    .sort((a, b) => a.marginN - b.marginN)[0];
  if (worst)
    return `Not this trailer: ${lowerFirst(limitWords(worst.limit))} over by ${showForce(newtons(-worst.marginN))}.`;
  if (reasons.some(({ kind }) => kind === 'soft-deck')) return 'Not this trailer: boards of its deck are soft.';
  if (reasons.some((reason) => reason.kind === 'deck-plank' && reason.standing === 'breaks'))
    return 'Not this trailer: the machine would break its planks.';
  if (reasons.some(({ kind }) => kind === 'hold')) return 'Not this trailer: it is on hold.';
  if (reasons.some(({ kind }) => kind === 'too-wide')) return 'Not this trailer: the machine is too wide for it.';
  if (reasons.some((reason) => reason.kind === 'too-long' && reason.stands === false)) {
    return 'Not this trailer: the machine is too long for it.';
  }
  if (reasons.some((reason) => reason.kind === 'ramp-rating' && reason.standing === 'over')) {
    return 'Not up these ramps: the machine is heavier than they carry.';
  }
  if (reasons.some(({ kind }) => kind === 'tilt-stays-up'))
    return 'Not this trailer: its deck would not lie down under the machine.';
  const licence = reasons.find((reason) => reason.kind === 'licence');
  if (licence) {
    return `Not with this driver: the combination asks for a class ${licence.threshold === 'cdl-a' ? 'A' : 'B'} license.`;
  }
  if (reasons.some(({ kind }) => kind === 'ball-size')) return 'Not with this ball: it is not the coupler’s size.';
  return 'Not as it stands.';
}

function driverWords(holds: 'A' | 'B' | 'none' | null): string {
  if (holds === null) return 'What the driver holds is not known.';
  return holds === 'none' ? 'The driver holds none.' : `The driver holds class ${holds}.`;
}

function showInches(lengthM: number): string {
  return (lengthM / 0.0254).toFixed(1).replace(/\.0$/, '');
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
