import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { WeightBasis } from '../../rules/facts/build-sheet.js';
import type { CargoItem, Load, Machine } from '../../rules/facts/load.js';
import { PLAUSIBLE_LOAD, PLAUSIBLE_TIRE, type Plausible } from '../../rules/facts/plausible.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import type { TowVehicle } from '../../rules/facts/use.js';
import { type LoadAnswer, loadAnswer } from '../../rules/fit/load-answer.js';
import { parkingRange } from '../../rules/trailer/machine-room.js';
import { inch, type Metres, metres, toInch } from '../../rules/units/length.js';
import { type Kilograms, toLb } from '../../rules/units/mass.js';
import { toPsi } from '../../rules/units/pressure.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { showNumber } from '../components/show-quantity.js';
import type { FormReader } from '../form/read-form.js';
import { readTicket } from './read-ticket.js';

/** What was chosen by its id, looked up. */
export interface Chosen {
  readonly facts: TrailerFacts;
  readonly machine: Machine | null;
  readonly towVehicle: TowVehicle | null;
}

/** The form of a load check as read: SI, null where nothing was typed. */
export interface AskedLoad {
  readonly name: string;
  readonly massKg: Kilograms | null;
  readonly basis: WeightBasis;
  /** The machine's own balance point, behind the coupler. */
  readonly placeM: Metres | null;
  readonly otherKg: Kilograms | null;
  readonly otherPlaceM: Metres | null;
  readonly hitchHeightM: Metres | null;
  readonly coldKpa: ReturnType<FormReader['psi']>;
  readonly scale: Load['scale'];
  readonly movedForwardM: Metres | null;
  readonly problems: readonly FieldProblem[];
}

/** An answer, and where the machine stands in it. */
export interface AnsweredLoad {
  readonly answer: LoadAnswer;
  readonly asked: AskedLoad;
  /** The machine, or what stands for a load that is none of the yard's, at the weight asked about. */
  readonly machine: Machine;
  /** As drawn and worked out: where it was typed to stand, less what it was moved since a ticket; null while unknown. */
  readonly placeM: Metres | null;
  /** Nobody said where it stands: it was put in its best place, or in the middle of the deck. */
  readonly placedBy: 'typed' | 'best' | 'middle' | null;
  /** Between where it may be dragged. */
  readonly range: { readonly fromM: Metres; readonly toM: Metres } | null;
  /** Machine and what else is aboard, as they balance together with the machine in its best place. */
  readonly bestLoadM: Metres | null;
}

/** Reads the fields of a load check. Used by the page and, while it is open, by the browser. */
export function readAskedLoad(form: FormReader, machine: Machine | null): AskedLoad {
  const problems: FieldProblem[] = [];
  const within = <Q extends number>(
    name: string,
    value: Q | null,
    range: Plausible,
    show: (end: never) => string,
  ): Q | null => {
    if (value === null || (value >= range.low && value <= range.high)) return value;
    problems.push({
      field: name,
      message: `Enter ${range.what} as a number from ${show(range.low as never)} to ${show(range.high as never)}.`,
    });
    return null;
  };
  const pounds = (mass: Kilograms) => `${showNumber(toLb(mass))} lb`;
  const inches = (length: Metres) => `${showNumber(toInch(length), 1)} in`;
  const typedKg = within('mass', form.pounds('mass'), PLAUSIBLE_LOAD.machineMass, pounds);
  const ticket = readTicket(form);
  problems.push(...ticket.problems);
  return {
    name: machine?.name ?? 'The load',
    massKg: typedKg ?? machine?.massKg ?? null,
    basis:
      typedKg === null && machine !== null ? machine.basis : form.text('basis') === 'weighed' ? 'weighed' : 'stated',
    placeM: within('at', form.inches('at'), PLAUSIBLE_LOAD.itemPlace, inches),
    otherKg: within('other', form.pounds('other'), PLAUSIBLE_LOAD.cargo, pounds),
    otherPlaceM: within('otherAt', form.inches('otherAt'), PLAUSIBLE_LOAD.itemPlace, inches),
    hitchHeightM: within('hitch', form.inches('hitch'), PLAUSIBLE_LOAD.hitchHeight, inches),
    coldKpa: within('psi', form.psi('psi'), PLAUSIBLE_TIRE.maxColdPressure, (end) => `${showNumber(toPsi(end))} psi`),
    scale: ticket.scale,
    movedForwardM: within('moved', form.inches('moved'), MOVED, inches),
    problems,
  };
}

const MOVED: Plausible = { what: 'how far it was moved', low: -inch(480), high: inch(480), unit: 'm', whole: false };

/** Answers what was asked; null while neither a weight nor a ticket says what is carried. */
export function answerLoad(chosen: Chosen, asked: AskedLoad, today: CivilDate): AnsweredLoad | null {
  const { massKg, scale } = asked;
  if (massKg === null && scale === null) return null;
  const machine: Machine = { ...(chosen.machine ?? UNKNOWN_MACHINE), massKg };
  const facts: TrailerFacts = { ...chosen.facts, machines: [machine] };
  const ask = (placeM: Metres | null) =>
    loadAnswer(
      facts,
      {
        load: loadOf(asked, machine, placeM),
        towVehicle: chosen.towVehicle,
        coldKpa: asked.coldKpa,
        movedForwardM: asked.movedForwardM,
      },
      today,
    );
  const first = ask(asked.placeM);
  const build = first.build;
  const range = build === null ? null : parkingRange(build, machine);
  const bestM = first.parking?.balancePointM ?? null;
  const middleM = range === null ? null : metres((range.fromM + range.toM) / 2);
  const stoodM = asked.placeM ?? (scale === null ? (bestM ?? middleM) : middleM);
  const answer = asked.placeM === null && stoodM !== null && scale === null ? ask(stoodM) : first;
  return {
    answer,
    asked,
    machine,
    placeM: stoodM === null ? null : metres(stoodM - (scale === null ? 0 : (asked.movedForwardM ?? 0))),
    placedBy: asked.placeM !== null ? 'typed' : stoodM === null ? null : stoodM === bestM ? 'best' : 'middle',
    range,
    bestLoadM: bestM === null ? null : balanceOf(asked, bestM),
  };
}

function loadOf(asked: AskedLoad, machine: Machine, placeM: Metres | null): Load {
  const { name, massKg, basis, otherKg, otherPlaceM, scale, hitchHeightM } = asked;
  const item = (
    of: Pick<CargoItem, 'name' | 'massKg' | 'machineId' | 'remedy'>,
    fromCouplerM: Metres | null,
  ): CargoItem => ({
    ...of,
    basis,
    fromCouplerM,
  });
  const main = massKg === null ? [] : [item({ name, massKg, machineId: machine.id, remedy: null }, placeM)];
  const others =
    otherKg === null || otherKg === 0
      ? []
      : [
          item(
            { name: 'What else is on the deck', massKg: otherKg, machineId: null, remedy: 'leave-off' },
            otherPlaceM ?? placeM,
          ),
        ];
  return { cargo: [...main, ...others], balancePointM: null, scale, hitchHeightM, offCentreM: null, tieDowns: null };
}

/** Where everything on the deck balances with the machine at a place. */
function balanceOf({ massKg, otherKg, otherPlaceM }: AskedLoad, placeM: Metres): Metres {
  const [main, other] = [massKg ?? 0, otherKg ?? 0];
  return main + other > 0 ? metres((main * placeM + other * (otherPlaceM ?? placeM)) / (main + other)) : placeM;
}

/** Stands for a load whose weight was typed and that is no machine of the yard. */
const UNKNOWN_MACHINE: Machine = {
  id: 'typed',
  name: 'The load',
  massKg: null,
  basis: 'stated',
  lengthM: null,
  widthM: null,
  balancePointM: null,
  contact: null,
  contactCount: null,
  contactLengthM: null,
  contactWidthM: null,
  wheelbaseM: null,
  clearanceM: null,
  replacesMachineId: null,
};
