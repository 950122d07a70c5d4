import type { CivilDate } from '../calendar/civil-date.js';
import type { MeasuredQuantity } from '../facts/check.js';
import { partsOn } from '../facts/parts-on.js';
import { order } from '../history/order.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { inch, type Metres, metres } from '../units/length.js';

/** A board that sinks, or takes the probe, deeper than the first is marked, than the second replaced. Common practice, no source. */
const MARK_BOARD: Metres = inch(1 / 4);
export const REPLACE_BOARD: Metres = inch(1 / 2);

/** What probing last found of one board. */
export interface FoundBoard {
  /** As it was named on the sheet; null where nobody numbered it. */
  readonly board: string | null;
  readonly on: CivilDate;
  readonly depthM: Metres;
  readonly kind: 'sinks' | 'probe';
}

/** What probing says of the deck that lies now. */
export interface ProbedDeck {
  /** Deeper than a replaceable board may be; the worst first. Each board once. */
  readonly soft: readonly FoundBoard[];
  /** Deeper than the mark, not yet to be replaced. */
  readonly marked: readonly FoundBoard[];
  /** The deepest the probe went into any board: taken as rotted off one face. */
  readonly lostM: Metres;
}

const SOUND: ProbedDeck = { soft: [], marked: [], lostM: metres(0) };

/**
 * The last finding of each board. A deck laid on or after the finding's day, or a later pass of the same check that found
 * nothing there, makes it void: somebody has seen to it.
 */
export function probedDeck(trailer: TrailerOn): ProbedDeck {
  const found = new Map<string, FoundBoard & { readonly checkKindId: string }>();
  for (const record of trailer.records) {
    if (record.outcome === 'pass') {
      for (const [key, earlier] of found) if (earlier.checkKindId === record.checkKindId) found.delete(key);
    }
    for (const { code, position, measured } of record.lines) {
      const kind = measured === null ? null : kindOf(measured.quantity);
      if (kind === null || measured === null) continue;
      const depthM = metres(measured.value / 1000);
      found.set(`${kind} ${position ?? code}`, {
        board: position,
        on: record.doneOn,
        depthM,
        kind,
        checkKindId: record.checkKindId,
      });
    }
  }
  if (found.size === 0) return SOUND;
  const laidOn = deckLaidOn(trailer);
  const standing = [...found.values()].filter((one) => laidOn === null || one.on > laidOn);
  const worst = worstOfEach(standing.map(({ checkKindId: _checkKindId, ...one }) => one));
  return {
    soft: worst.filter((one) => one.depthM > REPLACE_BOARD),
    marked: worst.filter((one) => one.depthM > MARK_BOARD && one.depthM <= REPLACE_BOARD),
    lostM: metres(Math.max(0, ...standing.filter((one) => one.kind === 'probe').map((one) => one.depthM))),
  };
}

/** The day the deck that lies now was laid; null when unknown. */
export function deckLaidOn({ facts, asOf }: Pick<TrailerOn, 'facts' | 'asOf'>): CivilDate | null {
  const days = partsOn(facts.parts, 'deck', asOf).flatMap((part) => part.fittedOn ?? []);
  return days.sort().at(-1) ?? null;
}

function kindOf(quantity: MeasuredQuantity): FoundBoard['kind'] | null {
  if (quantity === 'board-sag-mm') return 'sinks';
  return quantity === 'probe-depth-mm' ? 'probe' : null;
}

/** One finding a board, the deepest; boards nobody numbered each stand for themselves. */
function worstOfEach(found: readonly FoundBoard[]): readonly FoundBoard[] {
  const sorted = found.toSorted(
    (a, b) => b.depthM - a.depthM || order(a.board ?? '', b.board ?? '') || order(a.kind, b.kind),
  );
  return sorted.filter(
    (one, at) => one.board === null || sorted.findIndex((other) => other.board === one.board) === at,
  );
}
