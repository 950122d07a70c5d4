import type { CivilDate } from '../calendar/civil-date.js';
import { buildOn } from '../facts/build-on.js';
import type { CheckRecord, MeasuredQuantity } from '../facts/check.js';
import { partsOn } from '../facts/parts-on.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { order } from '../history/order.js';

/** What a check may have found that decides what the trailer carries today. */
const FOUND: ReadonlySet<MeasuredQuantity> = new Set(['cold-pressure-kpa', 'probe-depth-mm', 'board-sag-mm']);

/**
 * The facts of a trailer that a load check of one day rests on, and no others: its build, tires and deck, open holds, and
 * the pressures and boards last found. A thousand trips need not go to a phone. `loadAnswer` of these and of all the
 * facts is the same.
 */
export function factsForLoad(facts: TrailerFacts, on: CivilDate): TrailerFacts {
  const build = buildOn(facts.builds, on);
  return {
    trailer: facts.trailer,
    builds: build === null ? [] : [build],
    parts: [...partsOn(facts.parts, 'tire', on), ...partsOn(facts.parts, 'deck', on)],
    trips: [],
    readings: [],
    jobs: [],
    checkKinds: [],
    checkRecords: recordsThatCount(facts.checkRecords, on),
    holds: facts.holds.filter((hold) => hold.openedOn <= on && (hold.liftedOn === null || hold.liftedOn > on)),
    machines: facts.machines,
    decks: [],
    policy: facts.policy,
  };
}

/** Of each kind of check that ever found such a thing, its last pass, which makes all before it void, and what came after. */
function recordsThatCount(records: readonly CheckRecord[], on: CivilDate): readonly CheckRecord[] {
  const kinds = new Set(records.filter(hasFound).map((record) => record.checkKindId));
  const known = records
    .filter((record) => kinds.has(record.checkKindId) && record.doneOn <= on)
    .sort((a, b) => order(a.doneOn, b.doneOn) || order(a.id, b.id));
  return [...Map.groupBy(known, (record) => record.checkKindId).values()].flatMap((ofKind) => {
    const lastPass = ofKind.findLastIndex((record) => record.outcome === 'pass');
    return ofKind.slice(Math.max(0, lastPass)).map((record) => ({
      ...record,
      lines: record.lines.filter(({ measured }) => measured !== null && FOUND.has(measured.quantity)),
    }));
  });
}

function hasFound({ lines }: CheckRecord): boolean {
  return lines.some(({ measured }) => measured !== null && FOUND.has(measured.quantity));
}
