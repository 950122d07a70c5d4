import type { Seen, SeenCondition, SeenThing } from '../facts/handover.js';
import type { TireMarks } from '../facts/part.js';
import { exceeds } from '../units/compare.js';

/** One difference between how a trailer went out and how it came back. */
export interface Change {
  readonly thing: SeenThing;
  readonly position: string | null;
  /** Null where nobody looked at it on the way out: then nothing can be charged for. */
  readonly was: Seen | null;
  readonly is: Seen;
  /** Of a tire: the marks that differ. */
  readonly differs: readonly TireDifference[];
  readonly answer: ChangeAnswer;
  /** Someone can be hurt if the trailer goes out like this. */
  readonly keepsIn: boolean;
}

/**
 * `chargeable`: broken, bent, missing or swapped, and sound when it went out. `wear`: what use does. `inspect`: may be
 * either; the shop looks before anybody is charged.
 */
type ChangeAnswer = 'chargeable' | 'wear' | 'inspect';

export type TireDifference = 'size' | 'kind' | 'load-range' | 'max-load' | 'date-code';

/**
 * What changed while the trailer was out: each thing seen on its return against the same thing on its way out.
 * A thing that came back as it went, damaged or not, is no change. Things seen only on the way out are not in it:
 * `unseen` names them.
 */
export function changes(out: readonly Seen[], back: readonly Seen[]): readonly Change[] {
  return back.flatMap((is) => {
    const was = out.find((one) => sameThing(one, is)) ?? null;
    const differs = was === null ? [] : tireDifferences(was.tire, is.tire);
    const isWorse = RANK[is.condition] > (was === null ? RANK.sound : RANK[was.condition]);
    if (!isWorse && differs.length === 0) return [];
    const swapped = differs.length > 0;
    return [
      {
        ...{ thing: is.thing, position: is.position, was, is, differs },
        answer: answerTo(was, is, swapped),
        keepsIn: KEEPS_IN.has(is.thing) && (HURTS.has(is.condition) || isWeaker(was?.tire ?? null, is.tire)),
      },
    ];
  });
}

/** Things looked at on the way out that nobody looked at on the return. */
export function unseen(out: readonly Seen[], back: readonly Seen[]): readonly Seen[] {
  return out.filter((was) => !back.some((is) => sameThing(was, is)));
}

function sameThing(a: Seen, b: Seen): boolean {
  return a.thing === b.thing && a.position === b.position;
}

/** From what use leaves to what must not go out. Of two, the later one is worse. */
const RANK: Readonly<Record<SeenCondition, number>> = {
  sound: 0,
  rubbed: 1,
  worn: 2,
  stiff: 3,
  bent: 4,
  broken: 5,
  missing: 6,
};

/** Common practice, no source: normal wear is the owner's, damage the customer's, and what may be either is looked at first. */
function answerTo(was: Seen | null, { condition }: Seen, swapped: boolean): ChangeAnswer {
  if (was === null) return 'inspect';
  if (swapped || condition === 'bent' || condition === 'broken' || condition === 'missing') return 'chargeable';
  return condition === 'stiff' ? 'inspect' : 'wear';
}

const KEEPS_IN: ReadonlySet<SeenThing> = new Set([
  ...(['tire', 'wheel', 'lamp', 'plug', 'coupler', 'safety-chain', 'breakaway'] as const),
  ...(['jack', 'deck', 'frame', 'ramp', 'pin'] as const),
]);

/** A stiff coupler may not have closed; the rest is bent, broken or gone. */
const HURTS: ReadonlySet<SeenCondition> = new Set(['stiff', 'bent', 'broken', 'missing']);

/** Marks that differ, as far as both were read. A date code tells a swap even between tires of one make and size. */
export function tireDifferences(was: TireMarks | null, is: TireMarks | null): readonly TireDifference[] {
  if (was === null || is === null) return [];
  const found: TireDifference[] = [];
  const see = (name: TireDifference, before: unknown, now: unknown) => {
    if (before !== null && now !== null && before !== now) found.push(name);
  };
  see('size', was.size, is.size);
  see('kind', was.kind, is.kind);
  see('load-range', was.loadRange, is.loadRange);
  see('max-load', was.maxLoadSingleKg, is.maxLoadSingleKg);
  see('date-code', was.dateCode, is.dateCode);
  return found;
}

function isWeaker(was: TireMarks | null, is: TireMarks | null): boolean {
  const before = was?.maxLoadSingleKg ?? null;
  const now = is?.maxLoadSingleKg ?? null;
  return before !== null && now !== null && exceeds(before, now);
}
