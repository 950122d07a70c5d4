import type { CivilDate } from '../../calendar/civil-date.js';
import type { CheckKind, CheckRecord } from '../../facts/check.js';
import type { TrailerOn } from '../../history/trailer-on.js';
import type { DueRange } from '../due-range.js';
import type { DueUnknown, DueUse } from '../due-use.js';
import type { EventStops } from '../event-stops.js';
import type { UseSoFar } from '../use-so-far.js';

/** What a trigger is told about the check it belongs to. */
export interface CheckSoFar {
  readonly kind: CheckKind;
  readonly trailer: TrailerOn;
  readonly use: UseSoFar;
  readonly lastPass: CheckRecord | null;
  readonly passes: () => readonly CheckRecord[];
}

/** When one trigger of a check falls due. */
export interface Falls {
  /** Last good day. */
  readonly dueOn: CivilDate | null;
  /** True when it is wanted before the next use, whenever that is. */
  readonly wanted: boolean;
  readonly used: DueUse | null;
  /** How sure the day is, where use still to come decides it. */
  readonly range: DueRange | null;
  readonly unknown: DueUnknown | null;
  readonly stops: EventStops | null;
}

/** Nothing to say: not due by this trigger as things stand. */
export const NOT_DUE: Falls = { dueOn: null, wanted: false, used: null, range: null, unknown: null, stops: null };

export function fallsOn(dueOn: CivilDate, used: DueUse | null = null): Falls {
  return { dueOn, wanted: false, used, range: null, unknown: null, stops: null };
}

/** By use still to come: on the day that is as likely too early as too late. */
export function fallsWithin(range: DueRange, used: DueUse): Falls {
  return { dueOn: range.p50, wanted: false, used, range, unknown: null, stops: null };
}

export function cannotSay(unknown: DueUnknown): Falls {
  return { dueOn: null, wanted: false, used: null, range: null, unknown, stops: null };
}
