import type { CivilDate } from '../calendar/civil-date.js';
import type { Envelope } from '../envelope/envelope.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import type { Load } from '../facts/load.js';
import { partsOn } from '../facts/parts-on.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import type { TowVehicle } from '../facts/use.js';
import { type MachineOnDeck, machinesOnDeck } from '../history/machines-on-deck.js';
import { type TrailerOn, trailerOn } from '../history/trailer-on.js';
import { probedDeck } from '../inspection/soft-boards.js';
import { balancePointOf } from '../load/balance-point.js';
import { checkLoad, type LoadCheck } from '../load/load-check.js';
import type { LoadLimits } from '../load/load-limits.js';
import { asWorkedOut, movedTicket } from '../load/moved-load.js';
import { attitudeOf } from '../load/torsion.js';
import { cargoEnvelope } from '../trailer/cargo-envelope.js';
import { checkJacks, type JackCheck } from '../trailer/jacks.js';
import { loadLimits } from '../trailer/load-limits.js';
import { axleWheelPositions } from '../trailer/wheel-positions.js';
import type { Metres } from '../units/length.js';
import type { Kilograms } from '../units/mass.js';
import type { Kilopascals } from '../units/pressure.js';
import { judgeCombination } from './combination-rules.js';
import { judgeDeck } from './deck-under.js';
import type { Fit, FitCase, FitInput } from './fit-answer.js';
import { haulLimits } from './haul-limits.js';
import { judgeHolds } from './holds.js';
import { type Judgement, worstVerdict } from './judgement.js';
import { judgeLegalWidth } from './legal-width.js';
import { judgeOnDeck } from './on-deck.js';
import { parkingFor } from './parking.js';
import { judgeRamp } from './ramp.js';
import { judgeRoad } from './road.js';
import { judgeUnknowns } from './unknown-facts.js';
import { weighedOnce } from './weighed-once.js';
import { judgeWeights } from './weights.js';

/** One load as it is to stand on one trailer, today. */
export interface LoadQuestion {
  readonly load: Load;
  readonly towVehicle: TowVehicle | null;
  /** The cold pressure every tire is taken at; null: as last found, or what the plate asks for. */
  readonly coldKpa: Kilopascals | null;
  /** How far the heaviest item was moved forward since the load's ticket was written; back where it is negative. */
  readonly movedForwardM: Metres | null;
}

/** The answer, and what its pictures are drawn from. */
export interface LoadAnswer extends Fit {
  /** Worked out from a ticket after the load was moved. */
  readonly isMoved: boolean;
  readonly build: BuildSheet | null;
  readonly limits: LoadLimits;
  readonly envelope: Envelope;
  /** Where the load stands in the envelope; null while its balance point or its weight is unknown. */
  readonly point: { readonly balancePointM: Metres; readonly cargoKg: Kilograms } | null;
  readonly planks: readonly MachineOnDeck[];
  /** Unhitched with the load on; null while the tongue or every jack's capacity is unknown. */
  readonly jack: JackCheck | null;
}

const NO_BUILD: Envelope = { kind: 'unknown', lacks: ['ratings'] };

/**
 * Whether a trailer takes this load where it stands: weights, room, ramps, planks, tow vehicle and holds. What falls due,
 * who drives and what ties it down belong to a haul on a day: `fit` answers that. Pure and quick enough to be asked while
 * a machine is dragged along the deck.
 */
export function loadAnswer(facts: TrailerFacts, question: LoadQuestion, today: CivilDate): LoadAnswer {
  const trailer = trailerOn(facts, today);
  const input: FitInput = {
    load: question.load,
    startsOn: today,
    endsOn: today,
    commercial: null,
    towVehicle: question.towVehicle,
    driver: null,
  };
  const limits = limitsFor(trailer, input, question.coldKpa);
  const { load, check } = standing(limits, question, facts);
  const fitCase: FitCase = { trailer, input: { ...input, load }, asOf: today, limits, check };
  const isMoved = question.load.scale !== null && (question.movedForwardM ?? 0) !== 0;
  return { ...judged(fitCase, isMoved), ...pictured(fitCase), isMoved };
}

/** A load moved since its ticket was worked out, not weighed: the best answer is to weigh it again. */
const WEIGH_AGAIN: Judgement = { verdict: 'weigh-first', reasons: [], remedies: [{ kind: 'weigh' }] };

function judged(fitCase: FitCase, isMoved: boolean): Fit {
  const judgements: readonly Judgement[] = [
    judgeHolds(fitCase),
    judgeWeights(fitCase),
    judgeOnDeck(fitCase),
    judgeRamp(fitCase),
    judgeDeck(fitCase),
    judgeCombination(fitCase),
    judgeLegalWidth(fitCase),
    judgeUnknowns(fitCase),
    judgeRoad(fitCase),
    ...(isMoved ? [WEIGH_AGAIN] : []),
  ];
  return {
    verdict: worstVerdict(judgements.map((judgement) => judgement.verdict)),
    loadCheck: fitCase.check,
    reasons: judgements.flatMap((judgement) => judgement.reasons),
    remedies: weighedOnce(judgements.flatMap((judgement) => judgement.remedies)),
    parking: parkingFor(fitCase),
  };
}

function pictured({ trailer, input, limits, check }: FitCase): Omit<LoadAnswer, keyof Fit | 'isMoved'> {
  const { build } = trailer;
  const { load } = input;
  const raisedM = limits.torsion === null ? null : (attitudeOf(limits.torsion, load)?.raisedM ?? null);
  const balancePointM = balancePointOf(load);
  return {
    build,
    limits,
    envelope: build === null ? NO_BUILD : cargoEnvelope({ build, limits, raisedM }),
    point: balancePointM === null || check.cargoKg === null ? null : { balancePointM, cargoKg: check.cargoKg },
    planks:
      build === null
        ? []
        : machinesOnDeck({ machineId: null, load }, build, trailer.facts.machines, probedDeck(trailer).lostM),
    jack: build === null || check.tongueN === null ? null : checkJacks(build, check.tongueN, limits.axleCentreM),
  };
}

/** A pressure that was typed stands for every tire. */
function limitsFor(trailer: TrailerOn, input: FitInput, coldKpa: Kilopascals | null): LoadLimits {
  const { build } = trailer;
  if (coldKpa === null || build === null) return haulLimits(trailer, input);
  return loadLimits({
    build,
    tires: partsOn(trailer.facts.parts, 'tire', input.startsOn),
    coldPressures: new Map(build.axles.flatMap(axleWheelPositions).map((position) => [position, coldKpa])),
    towVehicle: input.towVehicle,
  });
}

/** The load as a ticket has it, or as it would read after the move; a move that cannot be worked out leaves no ticket. */
function standing(
  limits: LoadLimits,
  { load, movedForwardM }: LoadQuestion,
  { policy }: Pick<TrailerFacts, 'policy'>,
): { readonly load: Load; readonly check: LoadCheck } {
  const heaviest = load.cargo.toSorted((a, b) => b.massKg - a.massKg)[0];
  if (load.scale === null || movedForwardM === null || movedForwardM === 0 || heaviest === undefined) {
    return { load, check: checkLoad(limits, load, policy) };
  }
  const scale = movedTicket(limits, load.scale, heaviest.massKg, movedForwardM);
  const moved: Load = { ...load, scale };
  return { load: moved, check: asWorkedOut(checkLoad(limits, moved, policy), policy) };
}
