import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Flag } from '../../rules/flags/flag.js';
import type { TireMismatch, TireTrait } from '../../rules/tire/tire-mismatch.js';
import { kPa } from '../../rules/units/pressure.js';
import { boardsWords, stressWords } from './deck-words.js';
import { bandWords, boundWords } from './fit-words.js';
import { comparisonWords } from './limit-words.js';
import { loadingFlagWords } from './loading-flag-words.js';
import { capital, count, list, number, onDay, percent, pounds, psiOf, sentence, wheel } from './show.js';
import { wearingWords } from './wear-words.js';

export interface FlagNames {
  readonly asOf: CivilDate;
  readonly checkKinds: ReadonlyMap<string, { readonly name: string }>;
  readonly machines: ReadonlyMap<string, string>;
}

export interface FlagWords {
  /** What is wrong, in a few words. */
  readonly title: string;
  /** The evidence, with numbers. */
  readonly says: string;
  readonly todo: string;
}

const MM_PER_INCH = 25.4;

/** A flag as a letter tells it: what, on what evidence, and what to do. What would clear it: `clearance-words.ts`. */
export function flagWords({ evidence }: Flag, names: FlagNames): FlagWords {
  switch (evidence.kind) {
    case 'over-limit': {
      const { on, comparison } = evidence.worst;
      return {
        title: 'Loaded over a rating',
        says: `${onDay(on, names.asOf)}: ${comparisonWords(comparison)}. ${capital(count(evidence.trips.length, 'trip'))} on record went over it.`,
        todo:
          evidence.attitude !== null
            ? 'Bring the hitch to the height at which the deck is level and weigh each axle again; carrying less is the second choice.'
            : 'Do not load it like this again. Look for what an overload leaves: cracks at the hangers, a leaning axle, flat springs, wear on the inside edge of the tires, rub marks under the deck.',
      };
    }
    case 'tongue-share': {
      const light = evidence.share < evidence.low;
      return {
        title: light ? 'Too little weight on the tongue' : 'Too much weight on the tongue',
        says: `${boundWords(evidence.bound)}${percent(evidence.share)} of the weight was on the tongue; ${bandWords(evidence.low, evidence.high)} is wanted.`,
        todo: light ? 'Put the load further forward and weigh again.' : 'Put the load further back and weigh again.',
      };
    }
    case 'deck-plank': {
      const machine = names.machines.get(evidence.machineId) ?? 'a machine';
      return {
        title: evidence.breaks ? 'It would break a plank' : 'A plank past its strength',
        says: `${capital(machine)}: ${stressWords(evidence.stress)}.${evidence.stress.verified ? '' : ' That strength is unverified.'}`,
        todo: evidence.breaks
          ? 'Do not load it on this deck.'
          : 'Spread it over more boards with something stiff, or use another trailer.',
      };
    }
    case 'soft-deck': {
      const machines = evidence.machineIds.map((id) => names.machines.get(id) ?? 'a machine');
      const isSoft = evidence.boards.some((board) => board.depthM > evidence.replaceM);
      return {
        title: isSoft ? 'Soft boards in the deck' : 'Boards to be marked',
        says: `${capital(boardsWords(evidence.boards, evidence.boardCount))}.${machines.length === 0 ? '' : ` Booked onto them: ${list(machines)}.`}`,
        todo: isSoft ? 'Replace them before a machine drives onto them.' : 'Mark them and probe them again next month.',
      };
    }
    case 'tires-past-age': {
      const tires = evidence.tires.map(
        ({ position, dateCode, years, months }) => `${wheel(position)} (${dateCode}: ${years} y ${months} mo)`,
      );
      return {
        title: `Tires past ${count(evidence.limitYears, 'year')}`,
        says: `${capital(list(tires))}. The limit of ${count(evidence.limitYears, 'year')} is the yard's own; no law sets one.`,
        todo: 'Replace them, whatever the tread.',
      };
    }
    case 'tires-soft': {
      const tires = evidence.tires.map(
        ({ position, foundKpa, wantedKpa, carriesKg }) =>
          `${wheel(position)} ${psiOf(kPa(foundKpa))} of ${psiOf(kPa(wantedKpa))}${carriesKg === null ? '' : `, good for ${pounds(carriesKg)}`}`,
      );
      return {
        title: 'Tires too soft',
        says: `${capital(list(tires))}. A soft tire carries less than its sidewall says.`,
        todo: 'Pump them up cold and look for the leak.',
      };
    }
    case 'tires-mismatched':
      return {
        title: `Tires of axle ${evidence.axle} are no set`,
        says: evidence.mismatches.map(mismatchWords).join(' '),
        todo: 'Look at the sidewalls and fit tires that match.',
      };
    case 'worn-past-limit': {
      const inInches = (mm: number) => `${(mm / MM_PER_INCH).toFixed(3)} in`;
      const each = evidence.parts.map(
        ({ position, value }) => `${position === null ? 'measured' : wheel(position)} ${inInches(value)}`,
      );
      return {
        title: evidence.quantity === 'tread-depth-mm' ? 'Tread worn out' : 'Brake lining worn out',
        says: `${capital(list(each))}; ${evidence.passesAtLimit ? 'less than' : 'at or below'} ${inInches(evidence.limit)} fails (${evidence.source}).`,
        todo: 'Renew the part before the next load and record it.',
      };
    }
    case 'licence-line':
      return {
        title: `With ${evidence.towVehicle} a commercial licence may be asked`,
        says: `${pounds(evidence.combinationKg)} together on ${count(evidence.jobIds.length, 'booked job')}; the federal line stands at ${pounds(evidence.thresholdKg)}. Uses, exemptions and states differ.`,
        todo: `Check your state, or name a driver who holds class ${evidence.group}.`,
      };
    case 'check-overdue': {
      const name = names.checkKinds.get(evidence.checkKindId)?.name ?? evidence.code;
      return {
        title: `${name} overdue`,
        says:
          evidence.dueOn === null
            ? `${name} was wanted before the next trip.`
            : `${name} was due by ${onDay(evidence.dueOn, names.asOf)}.`,
        todo: 'Do it and record it, or record the day it was done.',
      };
    }
    case 'wearing':
      return wearingWords(evidence, names.asOf);
    case 'battery-flat':
      return {
        title: 'Breakaway battery flat',
        says: `It was read at ${number(evidence.volts, 1)} V at rest; below ${number(evidence.limit, 1)} V it is flat.`,
        todo: 'Charge or replace it, then pull the pin and see that the wheels hold.',
      };
    case 'proof-missing':
      return {
        title: `Not on the trailer: ${evidence.what}`,
        says: `${capital(evidence.what)} was not seen on the trailer at the last look.`,
        todo: 'Put it on the trailer and record that it is there.',
      };
    case 'class-drift': {
      const machine = evidence.machineId === null ? undefined : names.machines.get(evidence.machineId);
      return {
        title: 'Used beyond its class',
        says: `${heavyLoads(evidence)}${machine === undefined ? '' : ` Mostly ${machine}.`}${weakestWords(evidence)}`,
        todo: 'Use a trailer with more payload for these loads, or carry less.',
      };
    }
    case 'outgrown': {
      const machine = names.machines.get(evidence.machineId) ?? 'Its machine';
      return {
        title: `Outgrown by ${machine}`,
        says: `${capital(machine)} weighs ${pounds(evidence.machineKg)}, the trailer carries ${pounds(evidence.payloadKg)}: ${pounds(evidence.overKg)} too little.`,
        todo: 'Use another trailer for this machine.',
      };
    }
    case 'jack-load':
    case 'over-ramp':
    case 'rear-lift':
    case 'too-wide':
    case 'too-long':
    case 'tie-downs-short':
      return loadingFlagWords(evidence, names);
    case 'lowered':
      return {
        title: 'Its new tires carry less',
        says: `Since ${onDay(evidence.on, names.asOf)} it carries ${pounds(evidence.nowKg)} where it carried ${pounds(evidence.beforeKg)}: the tires at ${list(evidence.positions.map(wheel))}.`,
        todo: 'Fit tires of the load range it came with, or load it for the ones it has.',
      };
    case 'hold':
      return {
        title: 'On hold',
        says: sentence(evidence.reason),
        todo: 'Keep it in the yard.',
      };
  }
}

const TRAIT_WORDS: Readonly<Record<TireTrait, string>> = {
  size: 'size',
  construction: 'radial or bias',
  'load-range': 'load range',
  kind: 'kind',
  age: 'date code',
};

/** `Load range: left rear D, right rear E.` */
function mismatchWords({ trait, positions, marked }: TireMismatch): string {
  return `${capital(TRAIT_WORDS[trait])}: ${list(positions.map((position, place) => `${wheel(position)} ${marked[place] ?? ''}`))}.`;
}

function heavyLoads({ trips, over90, over100, payloadKg }: Extract<Flag['evidence'], { kind: 'class-drift' }>): string {
  const payload = `its payload of ${pounds(payloadKg)}`;
  if (trips === 1) return `The only load so far was over ${over100 === 1 ? payload : `90 % of ${payload}`}.`;
  return `Of the last ${count(trips, 'load')}, ${over90} went over 90 % and ${over100} over all of ${payload}.`;
}

/** Which limit the heaviest load came nearest, or went over. */
function weakestWords({ weakest }: Extract<Flag['evidence'], { kind: 'class-drift' }>): string {
  return weakest === null ? '' : ` With the heaviest, ${comparisonWords(weakest)}.`;
}
