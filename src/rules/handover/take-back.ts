import type { Handover } from '../facts/handover.js';
import type { TireMarks } from '../facts/part.js';
import { owesBall } from './ball.js';
import { type Change, changes, unseen } from './changes.js';

/** What taking a hired trailer back comes to. */
export interface TakenBack {
  readonly customer: string;
  readonly changes: readonly Change[];
  /** What was seen on the way out and not looked at again: nothing can be said of it. */
  readonly unseen: Handover['seen'];
  /** Why it must stay in; null when nothing that changed can hurt anybody. */
  readonly hold: { readonly because: readonly Change[] } | null;
  /** Tires that are on it now in place of those that went out. */
  readonly swappedTires: readonly { readonly position: string; readonly marks: TireMarks }[];
  /** The yard changed the ball on the customer's mount and has not put it back. */
  readonly owesBall: boolean;
}

/**
 * Holds a return against the way out. Whoever was handed the trailer last before is the customer, whatever name is
 * given at the gate.
 */
export function takeBack(out: Handover, back: Pick<Handover, 'seen'>): TakenBack {
  const found = changes(out.seen, back.seen);
  const keepsIn = found.filter((change) => change.keepsIn);
  return {
    customer: out.customer,
    changes: found,
    unseen: unseen(out.seen, back.seen),
    hold: keepsIn.length === 0 ? null : { because: keepsIn },
    swappedTires: found.flatMap(swappedTire),
    owesBall: owesBall(out.hitch, back.seen),
  };
}

/** The spare is kept among the tires, by its place. */
function swappedTire({ thing, position, is, differs }: Change): TakenBack['swappedTires'] {
  const place = thing === 'spare' ? 'spare' : thing === 'tire' ? position : null;
  return place === null || is.tire === null || differs.length === 0 ? [] : [{ position: place, marks: is.tire }];
}
