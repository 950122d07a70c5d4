import { type CivilDate, latest } from '../calendar/civil-date.js';
import { dayNumber } from '../calendar/day-number.js';
import type { Axle } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { type FittedTire, type TireMismatch, tireMismatches } from '../tire/tire-mismatch.js';
import { axleWheelPositions } from '../trailer/wheel-positions.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/**
 * Tires that share an axle or a dual pair and differ in size, construction, load range, kind or, by more than two years,
 * in age. One flag an axle. Severity `watch`: the trade asks for a set on an axle, no federal rule for trailers was
 * found; what the weakest of them carries is held against each load anyway. Since the youngest fitting among them.
 */
export function tireMismatchFlags({ trailer }: FlagContext): readonly Flag[] {
  return (trailer.build?.axles ?? []).flatMap((axle) => {
    const mismatches = mismatchesOf(axle, trailer);
    if (mismatches.length === 0) return [];
    const positions = [...new Set(mismatches.flatMap((one) => one.positions))].sort();
    return [
      {
        key: `tire-mismatch:${axle.number}`,
        rule: 'tire-mismatch' as const,
        severity: 'watch' as const,
        since: lastFittedOn(positions, trailer.tires),
        evidence: { kind: 'tires-mismatched' as const, axle: axle.number, mismatches },
        clears: [
          { kind: 'replace-tires', positions },
          { kind: 'correct', fact: 'part' },
        ] as const,
      },
    ];
  });
}

function mismatchesOf(axle: Axle, { tires, agedTires }: TrailerOn): readonly TireMismatch[] {
  const fitted: FittedTire[] = [];
  for (const position of axleWheelPositions(axle)) {
    const marks = tires.find((part) => part.position === position)?.tire ?? null;
    if (marks === null) continue;
    const madeFrom = agedTires.find((aged) => aged.position === position)?.madeFrom ?? null;
    fitted.push({ position, marks, madeFrom: madeFrom === null ? null : dayNumber(madeFrom) });
  }
  return tireMismatches(fitted);
}

/** The day on which the set became what it is, as far as fitting days are known. */
function lastFittedOn(positions: readonly string[], tires: readonly Part[]): CivilDate | null {
  const fitted = tires.filter((part) => part.position !== null && positions.includes(part.position));
  return latest(fitted.flatMap(({ fittedOn }) => (fittedOn === null ? [] : [fittedOn])));
}
