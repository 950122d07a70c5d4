import type { PlankStress } from '../deck/plank-check.js';
import { type MachineOnDeck, machinesOnDeck } from '../history/machines-on-deck.js';
import { probedDeck, REPLACE_BOARD } from '../inspection/soft-boards.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST, worstVerdict } from './judgement.js';

/**
 * The machine on the boards it would stand on.
 *
 * Boards that probing found soft: `no-go` for a machine, whatever a forecast says, and `go-after` for anything else.
 * Past the average strength of faultless wood: `no-go`. Past a published design value: `go-after`, since the load can be
 * spread over more boards. Past an unverified strength, or where a fact is missing: said beside the answer.
 */
export function judgeDeck(fitCase: FitCase): Judgement {
  const { trailer, input } = fitCase;
  const build = trailer.buildOn(input.startsOn);
  if (build === null || input.load.cargo.length === 0) return NOTHING_AGAINST;
  const probed = probedDeck(trailer);
  const machines = machinesOnDeck({ machineId: null, load: input.load }, build, trailer.facts.machines, probed.lostM);
  const judged = [softBoards(probed.soft, build.deck.boardCount, machines.length > 0), ...machines.map(onPlanks)];
  return {
    verdict: worstVerdict(judged.map((one) => one.verdict)),
    reasons: judged.flatMap((one) => one.reasons),
    remedies: judged.flatMap((one) => one.remedies),
  };
}

function softBoards(
  soft: ReturnType<typeof probedDeck>['soft'],
  boardCount: number | null,
  hasMachine: boolean,
): Judgement {
  if (soft.length === 0) return NOTHING_AGAINST;
  return {
    verdict: hasMachine ? 'no-go' : 'go-after',
    reasons: [{ kind: 'soft-deck', boards: soft, boardCount, replaceM: REPLACE_BOARD }],
    remedies: [{ kind: 'replace-boards', boards: soft.map((one) => one.board) }],
  };
}

function onPlanks({ name, check }: MachineOnDeck): Judgement {
  const { standing, worst, lacks } = check;
  if (standing === 'inside') return NOTHING_AGAINST;
  if (standing === 'unknown' || worst === null) {
    return { verdict: 'go', reasons: [{ kind: 'deck-unknown', machine: name, lacks }], remedies: [] };
  }
  const reason: FitReason = { kind: 'deck-plank', machine: name, standing, stress: worst };
  const remedies = standing === 'over' ? [spread(worst)] : [];
  return { verdict: VERDICTS[standing], reasons: [reason], remedies };
}

const VERDICTS: Readonly<Record<'breaks' | 'over' | 'doubtful', Verdict>> = {
  breaks: 'no-go',
  over: 'go-after',
  doubtful: 'go',
};

/** Boards that must share what one contact presses with, by something stiff laid across them. */
function spread({ boards, contactN, allowedN }: PlankStress): FitRemedy {
  return { kind: 'spread-load', boards: Math.ceil((boards * contactN) / allowedN - 1e-9) };
}
