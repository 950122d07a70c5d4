import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Change } from '../../rules/handover/changes.js';
import type { TakenBack } from '../../rules/handover/take-back.js';
import type { YardTx } from '../../store/database.js';
import type { HoldStore } from '../../store/hold-store.js';
import type { Caller } from '../caller.js';

const LONGEST_REASON = 200;

/** Holds a trailer for what changed while it was out, if someone can be hurt by it. Null when there is nothing. */
export async function holdForChanges(
  tx: YardTx,
  holds: HoldStore,
  caller: Caller,
  back: { readonly id: string; readonly trailerId: string; readonly on: CivilDate },
  { hold }: TakenBack,
): Promise<string | null> {
  if (hold === null) return null;
  const reason = `Came back with ${hold.because.map(sayChange).join(', ')}`;
  return holds.open(tx, back.trailerId, {
    openedOn: back.on,
    reason: reason.length > LONGEST_REASON ? `${reason.slice(0, LONGEST_REASON - 1)}…` : reason,
    openedBy: caller.personId,
    openedByName: caller.name,
    handoverId: back.id,
    recordedAt: caller.now,
  });
}

/** `tire 2L swapped`, `right ramp bent`. */
function sayChange({ thing, position, is, differs }: Change): string {
  const what = thing.replace('-', ' ');
  const name = position === null ? what : thing === 'tire' ? `tire ${position}` : `${position} ${what}`;
  const how = differs.length > 0 ? ['swapped'] : [];
  return `${name} ${[...how, ...(is.condition === 'sound' ? [] : [is.condition])].join(' and ')}`;
}
