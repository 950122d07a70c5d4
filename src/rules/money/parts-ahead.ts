import type { Assessment } from '../assess.js';
import type { CivilDate } from '../calendar/civil-date.js';
import type { PartKind } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { agedTires } from '../history/tire-ages.js';
import type { WearQuantity } from '../wear/wear-quantity.js';
import { countsIn, timesOf } from './times.js';
import type { Wanted } from './wanted.js';

/** Which part is replaced when a measure comes to its limit. Brakes come off as a set; what a shop does beyond is its check. */
const REPLACED: Readonly<Partial<Record<WearQuantity, PartKind>>> = {
  'tread-depth-mm': 'tire',
  'lining-mm': 'brake-set',
  'magnet-mm': 'brake-set',
  'battery-v': 'battery',
};

/** Parts whose end can be foreseen: tires by their age, and whatever wears toward a limit. Each at whichever is sooner. */
export function partsAhead(facts: TrailerFacts, assessment: Assessment, to: CivilDate): readonly Wanted[] {
  const { asOf } = assessment;
  const ends = new Map<string, Wanted>();
  const see = (key: string, wanted: Wanted) => {
    const other = ends.get(key);
    if (other === undefined || wanted.times.mean > other.times.mean) ends.set(key, wanted);
  };
  for (const { position, pastFrom } of agedTires(
    partsOn(facts.parts, 'tire', asOf),
    asOf,
    facts.policy.tireAgeLimitYears,
  )) {
    const times = timesOf(countsIn({ p10: pastFrom, p50: pastFrom, p90: pastFrom }, null, asOf, to));
    see(`tire ${position}`, { purpose: { kind: 'part', part: 'tire' }, times, byUse: false });
  }
  for (const { quantity, position, isPast, toLimit } of assessment.wear) {
    const part = REPLACED[quantity];
    if (part === undefined) continue;
    const on = toLimit.kind === 'reached-by' ? toLimit.on : null;
    const dates = isPast
      ? { p10: asOf, p50: asOf, p90: asOf }
      : { p10: on?.early ?? null, p50: on?.middle ?? null, p90: on?.late ?? null };
    see(`${part} ${position}`, {
      purpose: { kind: 'part', part },
      times: timesOf(countsIn(dates, null, asOf, to)),
      byUse: true,
    });
  }
  return together([...ends.values()]);
}

/** Four tires are one item: those that hang on use come together, the others each by itself. */
function together(ends: readonly Wanted[]): readonly Wanted[] {
  const groups = Map.groupBy(ends, ({ purpose, byUse }) => `${JSON.stringify(purpose)} ${byUse}`);
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const mean = group.reduce((sum, { times }) => sum + times.mean, 0);
    const apart = group.reduce((sum, { times }) => sum + times.variance, 0);
    const atOnce = group.reduce((sum, { times }) => sum + Math.sqrt(times.variance), 0) ** 2;
    return { ...first, times: { mean, variance: first.byUse ? atOnce : apart } };
  });
}
