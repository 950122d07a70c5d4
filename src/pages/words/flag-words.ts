import { type CivilDate, daysBetween } from '../../rules/calendar/civil-date.js';
import type { Flag, FlagRule } from '../../rules/flags/flag.js';
import type { TireMismatch, TireTrait } from '../../rules/tire/tire-mismatch.js';
import { kPa } from '../../rules/units/pressure.js';
import {
  showCount,
  showDate,
  showLength,
  showMass,
  showNumber,
  showPressure,
  showShare,
} from '../components/show-quantity.js';
import { listWords, positionWords } from './build-words.js';
import { boardsOf, boardsWords, stressFrom, stressWords } from './deck-words.js';
import { driftEvidence, driftTodo } from './drift-words.js';
import { comparisonWords, limitWords, measuredWords, originWords } from './limit-words.js';
import { loadingFlagWords } from './loading-flag-words.js';
import { measuredUnit, measuredWords as measureWords } from './measured-words.js';
import { wearingEvidence, wearingHow, wearingTitle, wearingTodo } from './wear-words.js';

/** What flags call by id: the page puts the names in. */
export interface Names {
  readonly machines: ReadonlyMap<string, string>;
  readonly checkKinds: ReadonlyMap<string, string>;
}

export interface FlagWords {
  /** What is wrong, in a line. */
  readonly title: string;
  /** The evidence, in a sentence or two. */
  readonly evidence: string;
  /** How it was worked out and where the limit comes from. */
  readonly how: string;
  readonly todo: string;
}

export function flagWords(flag: Flag, names: Names, today: CivilDate): FlagWords {
  const { evidence } = flag;
  switch (evidence.kind) {
    case 'over-limit': {
      const { comparison, on } = evidence.worst;
      return {
        title: `${limitWords(comparison.limit)}: loaded past its limit`,
        evidence: `Worst on ${showDate(on)}: ${comparisonWords(comparison)}. ${showCount(evidence.trips.length, 'trip')} on record went over it.`,
        how: `The limit is from ${originWords(comparison.limit.origin)}; ${measuredWords(comparison.measured)}.`,
        todo:
          evidence.attitude !== null
            ? `Bring the hitch to the height at which the deck is level and weigh each axle again: riding ${evidence.attitude.standing === 'nose-high' ? 'nose high, the rear' : 'nose low, the front'} torsion axle takes more than its share. Carrying less is the second choice.`
            : 'Carry less, or use a trailer with a higher rating. Have it looked over for what an overload does: axle lean, inside-edge tire wear, flat springs, cracks at the hangers, rub marks under the deck.',
      };
    }
    case 'tongue-share':
      return {
        title: evidence.share < evidence.low ? 'Too little weight on the tongue' : 'Too much weight on the tongue',
        evidence: `${boundWords(evidence.bound)}${showShare(evidence.share)} of the whole weight on the hitch, where ${bandWords(evidence.low, evidence.high)} is wanted. Seen on ${showCount(evidence.tripIds.length, 'trip')}.`,
        how: 'Tongue weight over the weight of trailer and load together. The band is common practice for this hitch; the ratings of hitch and tow vehicle come first.',
        todo:
          evidence.share < evidence.low
            ? 'Put the load further forward and weigh again: a tail-heavy trailer sways.'
            : 'Put the load further back and weigh again: the tow vehicle steers and brakes on its front axle.',
      };
    case 'deck-plank': {
      const machine = names.machines.get(evidence.machineId) ?? 'A machine';
      const hauls = [
        ...(evidence.trips.length > 0 ? [showCount(evidence.trips.length, 'trip')] : []),
        ...(evidence.jobIds.length > 0 ? [`${showCount(evidence.jobIds.length, 'booked job')}`] : []),
      ];
      return {
        title: evidence.breaks ? `${machine} would break a plank` : `${machine} presses a plank past its strength`,
        evidence: `${capital(stressWords(evidence.stress))}. Seen on ${listWords(hauls)}.`,
        how: stressFrom(evidence.stress),
        todo: evidence.breaks
          ? 'Do not load it on this deck.'
          : 'Lay something stiff across the boards so that more of them share it, or use a trailer with thicker planks or closer crossmembers.',
      };
    }
    case 'soft-deck': {
      const isSoft = evidence.boards.some((board) => board.depthM > evidence.replaceM);
      const machines = evidence.machineIds.map((id) => names.machines.get(id) ?? 'a machine');
      const booked = machines.length === 0 ? '' : ` Booked onto them: ${listWords(machines)}.`;
      return {
        title: `${boardsOf(evidence.boards, evidence.boardCount)} ${isSoft ? 'soft' : 'to be marked'}`,
        evidence: `${capital(boardsWords(evidence.boards))}.${booked}`,
        how: `As last probed. Past ${showLength(evidence.replaceM)} a board is replaced, past half of that marked (common practice, no source). What was found beats any forecast.`,
        todo: isSoft ? 'Replace them before a machine drives onto them.' : 'Mark them and probe again next month.',
      };
    }
    case 'tires-past-age':
      return {
        title: `${showCount(evidence.tires.length, 'tire')} past ${evidence.limitYears} years`,
        evidence: tiresByAge(evidence.tires),
        how: `Week and year read from the code on the sidewall (49 CFR 574.5). The ${evidence.limitYears} years are this yard's own limit; no federal law sets one.`,
        todo: 'Replace them whatever their tread. Rubber ages standing still, the spare too.',
      };
    case 'tires-soft':
      return {
        title: `${showCount(evidence.tires.length, 'tire')} found soft`,
        evidence: `${listWords(
          evidence.tires.map(
            (tire) =>
              `${positionWords(tire.position)} ${showPressure(kPa(tire.foundKpa))} where ${showPressure(kPa(tire.wantedKpa))} is wanted${softLoad(tire)}`,
          ),
        )}.`,
        how: 'The cold pressures last recorded on a check sheet against the cold pressure of plate or sidewall; what a tire carries by the published row at or below that pressure.',
        todo: 'Inflate them cold, three hours parked, and look for the leak.',
      };
    case 'tires-mismatched':
      return {
        title: `Tires of axle ${evidence.axle} are no set`,
        evidence: evidence.mismatches.map(mismatchWords).join(' '),
        how: 'Marks of the tires as recorded. One size, construction, kind and load range on an axle is common practice; two years apart in age is our own line.',
        todo: 'Look at the sidewalls. If they are as recorded, fit tires that match; until then the weakest sets what the axle carries.',
      };
    case 'worn-past-limit': {
      const { quantity, limit } = evidence;
      const each = evidence.parts.map(
        ({ position, value }) =>
          `${position === null ? 'measured' : positionWords(position)} ${measureWords(quantity, value)}`,
      );
      return {
        title: `${capital(measuredUnit(quantity).what)} past the annual inspection's limit`,
        evidence: `${listWords(each)}; ${evidence.passesAtLimit ? 'less than' : 'at or below'} ${measureWords(quantity, limit)} fails.`,
        how: `The last measure on a check sheet against ${evidence.source}. The maker may ask for more.`,
        todo: 'Renew the part before the next load and record it.',
      };
    }
    case 'wearing':
      return {
        title: wearingTitle(evidence),
        evidence: wearingEvidence(evidence),
        how: wearingHow(evidence),
        todo: wearingTodo(evidence),
      };
    case 'licence-line':
      return {
        title: `With ${evidence.towVehicle} a commercial licence may be asked`,
        evidence: `${showMass(evidence.combinationKg)} together on ${showCount(evidence.jobIds.length, 'booked job')}, where the federal line stands at ${showMass(evidence.thresholdKg)}. No driver with a class ${evidence.group} licence is named.`,
        how: 'Ratings or actual weights of truck and trailer, whichever are greater (49 CFR 383.91). What the haul is for, exemptions and your state decide; check your state.',
        todo: 'Ask the licence office, name a driver who holds the class, or take a lighter truck or trailer.',
      };
    case 'check-overdue': {
      const name = names.checkKinds.get(evidence.checkKindId) ?? evidence.code;
      return {
        title: `${name} is overdue`,
        evidence:
          evidence.dueOn === null
            ? 'It was wanted before the next trip and is not on record.'
            : `Last good day was ${showDate(evidence.dueOn)}, ${showCount(Math.max(0, daysBetween(evidence.dueOn, today)), 'day')} ago.`,
        how: `The interval and its source are set under Yard.${evidence.safety ? ' Someone can be hurt if it is left out.' : ''}`,
        todo: 'Do it and record it here. If it was done already, record it on the day it was done.',
      };
    }
    case 'battery-flat':
      return {
        title: 'Breakaway battery flat',
        evidence: `${showNumber(evidence.volts, 1)} V at rest; below ${showNumber(evidence.limit, 1)} V it is flat.`,
        how: 'As last read. It must put the brakes on by itself and hold them for 15 minutes (49 CFR 393.43(d)); the voltage is common practice, no source.',
        todo: 'Charge or replace it, then pull the pin and see that the wheels hold.',
      };
    case 'proof-missing':
      return {
        title: `No proof aboard: ${evidence.what}`,
        evidence: `The last record of ${names.checkKinds.get(evidence.checkKindId) ?? evidence.code} says the proof was not on the trailer, or nobody looked.`,
        how: 'The report may be in date; the paper or decal that shows it is its own item.',
        todo: `Put the ${evidence.what} on the trailer and record that it was seen there.`,
      };
    case 'class-drift': {
      const machine = evidence.machineId === null ? null : (names.machines.get(evidence.machineId) ?? null);
      return {
        title: 'Used beyond its class',
        evidence: driftEvidence(evidence, machine),
        how: `Loads from ${showDate(evidence.from)} to ${showDate(evidence.to)}. Payload is what the weakest rating leaves after the empty weight. Classes are common practice, by frame depth and axle rating. Wear by load: bearings to the 10/3 power (ISO 281), welds to the third (EN 1993-1-9), springs to the 4.5th (from memory, unverified); for comparing use with use only.`,
        todo: driftTodo(evidence),
      };
    }
    case 'outgrown': {
      const machine = names.machines.get(evidence.machineId) ?? 'its machine';
      const before = evidence.replacedMachineId === null ? null : names.machines.get(evidence.replacedMachineId);
      return {
        title: `Outgrown by ${machine}`,
        evidence: `${machine} weighs ${showMass(evidence.machineKg)}; the trailer carries ${showMass(evidence.payloadKg)}, ${showMass(evidence.overKg)} too little.${before ? ` It took over from ${before}.` : ''}`,
        how: 'The machine with all that last rode along (attachments, chains, mud), or as it is on file, against the payload its weakest rating leaves.',
        todo: 'Pick another trailer for this machine. Check fit shows which part stops it and by how much.',
      };
    }
    case 'jack-load':
    case 'over-ramp':
    case 'rear-lift':
    case 'too-wide':
    case 'too-long':
    case 'tie-downs-short':
      return loadingFlagWords(evidence, names.machines);
    case 'lowered':
      return {
        title: 'Its new tires carry less',
        evidence: `Since ${showDate(evidence.on)} it carries ${showMass(evidence.nowKg)}; on the tires before it carried ${showMass(evidence.beforeKg)}. Fitted that day: ${listWords(evidence.positions.map(positionWords))}.`,
        how: 'The weakest tire holds every wheel of its axle to itself, and on springs that share, every axle (49 CFR 393.75(g)).',
        todo: 'Fit tires of the load range it came with, or load it for the ones it has.',
      };
    case 'hold':
      return {
        title: 'On hold',
        evidence: evidence.reason,
        how: 'Somebody of this yard put it on hold, or a safety line of a check failed.',
        todo: 'Keep it in the yard.',
      };
  }
}

/** Tires of one code in one breath: `Axle 1 left and axle 1 right: code 4419, made from Sun 3 Nov 2019, 6 y 3 mo.` */
function tiresByAge(tires: Extract<Flag['evidence'], { kind: 'tires-past-age' }>['tires']): string {
  return [...Map.groupBy(tires, (tire) => tire.dateCode)]
    .map(([code, group]) => {
      const where = listWords(group.map((tire) => positionWords(tire.position)));
      const [first] = group;
      const age = first ? `, made from ${showDate(first.madeFrom)}, ${first.years} y ${first.months} mo` : '';
      return `${where.charAt(0).toUpperCase()}${where.slice(1)}: code ${code}${age}.`;
    })
    .join(' ');
}

const RULE_WORDS: Readonly<Record<FlagRule, string>> = {
  'over-plate': 'Over the plate',
  'over-axle-group': 'Over the axles together',
  'over-axle': 'Over one axle',
  'over-tire': 'Over a tire',
  'over-coupler': 'Over the coupler',
  'over-law': 'Over a legal axle weight',
  'tongue-share': 'Tongue weight out of its band',
  'jack-load': 'Jack too small',
  'ramp-support': 'Ramps or rear support',
  'too-wide': 'Machine too wide',
  'too-long': 'Machine too long',
  'tie-downs-short': 'Tied down with too little',
  'deck-plank': 'Plank past its strength',
  'soft-deck': 'Boards soft',
  'tire-age': 'Tires past age',
  'tire-pressure': 'Tires soft',
  'tire-mismatch': 'Tires do not match',
  'licence-line': 'Near a licence line',
  'worn-past-limit': 'Worn past a limit',
  'battery-flat': 'Battery flat',
  wearing: 'Near a wear limit',
  'overdue-check': 'Check overdue',
  'missing-proof': 'Proof missing',
  'class-drift': 'Used beyond its class',
  outgrown: 'Outgrown',
  lowered: 'Carries less than it did',
  'on-hold': 'On hold',
};

/** `, 2,600 lb at that pressure, and has carried 2,663 lb since`; nothing where no published row tells. */
function softLoad({
  carriesKg,
  carriedKg,
}: Extract<Flag['evidence'], { kind: 'tires-soft' }>['tires'][number]): string {
  if (carriesKg === null) return '';
  const since = carriedKg === null ? '' : `, has carried ${showMass(carriedKg)} since`;
  return ` (good for ${showMass(carriesKg)} at that${since})`;
}

const TRAIT_WORDS: Readonly<Record<TireTrait, string>> = {
  size: 'Size',
  construction: 'Radial or bias',
  'load-range': 'Load range',
  kind: 'Kind',
  age: 'Date code',
};

/** `Load range: axle 2 left D, axle 2 right E.` */
function mismatchWords({ trait, positions, marked }: TireMismatch): string {
  const each = positions.map((position, place) => `${positionWords(position)} ${marked[place] ?? ''}`);
  return `${TRAIT_WORDS[trait]}: ${listWords(each)}.`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

export function ruleWords(rule: FlagRule): string {
  return RULE_WORDS[rule];
}

/** `At most ` where no more is known of a share. */
export function boundWords(bound: 'at-most' | 'at-least' | null): string {
  if (bound === null) return '';
  return bound === 'at-most' ? 'At most ' : 'At least ';
}

export function bandWords(low: number, high: number | null): string {
  return high === null ? `at least ${showShare(low)}` : `${showShare(low)} to ${showShare(high)}`;
}
