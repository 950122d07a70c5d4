import { machinesAboard } from '../load/aboard.js';
import { lengthRoom, tooLong, tooWide, widthRoom } from '../trailer/machine-room.js';
import type { FitCase, FitReason, FitRemedy, Verdict } from './fit-answer.js';
import { type Judgement, NOTHING_AGAINST, worstVerdict } from './judgement.js';

/**
 * Whether each machine aboard fits between the fenders and on the deck, or on the tilting part of one that tilts.
 *
 * Too wide is `no-go`. Too long is `no-go` when not even its wheels or tracks have room; it is said beside the answer when
 * they have and the rest sticks out; `go-after` while that is unknown: fold in what sticks out, or measure. An unknown
 * width or length is said beside the answer.
 */
export function judgeOnDeck({ trailer, input }: FitCase): Judgement {
  const build = trailer.buildOn(input.startsOn);
  if (build === null) return NOTHING_AGAINST;
  const reasons: FitReason[] = [];
  const remedies: FitRemedy[] = [];
  const verdicts: Verdict[] = [];
  for (const { machine } of machinesAboard(input.load, trailer.facts.machines)) {
    const wide = tooWide(build, machine);
    if (wide !== null) {
      reasons.push({ kind: 'too-wide', machineId: machine.id, ...wide });
      verdicts.push('no-go');
    }
    const unmeasured =
      (machine.widthM === null && widthRoom(build) !== null) ||
      (machine.lengthM === null && lengthRoom(build) !== null);
    if (unmeasured) reasons.push({ kind: 'unknown', lacks: 'machine-size', stops: 'room-check' });
    const long = tooLong(build, machine);
    if (long !== null) {
      reasons.push({ kind: 'too-long', machineId: machine.id, ...long });
      verdicts.push(long.stands === null ? 'go-after' : long.stands ? 'go' : 'no-go');
      if (long.stands === null) remedies.push({ kind: 'fold-in', machineId: machine.id, lengthM: long.roomM });
    }
  }
  return { verdict: worstVerdict(verdicts), reasons, remedies };
}
