import { dayNumber } from '../calendar/day-number.js';
import type { Due } from '../inspection/due.js';
import type { UseSoFar } from '../inspection/use-so-far.js';
import { type Leaf, type Working, type WorkingUnit, workOut } from './working.js';

/** When a check falls due, as a sum: what is left of its interval at the usual use. Kilometres or trips, and days. */
interface DueCase {
  readonly day: number;
  readonly interval: number;
  readonly used: number;
  /** Null while no usual use is known; then only booked jobs bring the day nearer. */
  readonly aDay: number | null;
}

/** How the day of one check was worked out; null when there is no day. */
export function explainDue(due: Due, use: UseSoFar): Working | null {
  if (due.dueOn === null || due.trigger === null) return null;
  const { trigger, used } = due;
  const base: DueCase = {
    day: dayNumber(due.dueOn),
    interval: intervalOf(due),
    used: used === null ? 0 : used.kind === 'distance' ? used.usedKm : used.used,
    aDay: used?.kind === 'distance' ? (used.loadKm > 0 ? use.bearingsToCome : use.countedToCome).kmPerDay : null,
  };
  return workOut({
    ...{ of: 'due', subject: due.checkKindId, unit: 'day', base },
    formula: FORMULA_OF[trigger.kind],
    source: 'The interval is a setting of the yard; its source stands beside the check. Days by the calendar.',
    leaves: [...lastDone(due), ...intervalLeaf(due, base), ...usedLeaves(due, base)],
    compute: (one) => one.day + movedBy(one, base),
  });
}

const FORMULA_OF: Readonly<Record<NonNullable<Due['trigger']>['kind'], string>> = {
  days: 'the day it was last done + the interval',
  months: 'the day it was last done + the interval in calendar months',
  distance:
    'the day on which used distance + booked jobs on their days + usual use on the others reaches the interval, or the ' +
    'day before the job that would cross it',
  trips: 'the end of the booked job with which used trips + booked jobs reach the interval',
  event: 'the event + the distance after it',
  'fixed-date': 'the date on the paper',
};

/** Days by which a change of use or interval shifts the day, at the usual use and apart from booked jobs. */
function movedBy(one: DueCase, base: DueCase): number {
  if (base.aDay === null || one.aDay === null || base.aDay <= 0 || one.aDay <= 0) return 0;
  return (one.interval - one.used) / one.aDay - (base.interval - base.used) / base.aDay;
}

function intervalOf({ trigger, used }: Due): number {
  if (used?.kind === 'distance') return used.limitKm;
  if (used?.kind === 'trips') return used.limit;
  return trigger !== null && 'every' in trigger ? trigger.every : 0;
}

function lastDone({ lastDoneOn }: Due): Leaf<DueCase>[] {
  if (lastDoneOn === null) return [];
  const value = dayNumber(lastDoneOn);
  return [{ name: 'last-done', value, unit: 'day', basis: 'measured', doubt: 0, put: (one) => one }];
}

function intervalLeaf({ trigger }: Due, { interval }: DueCase): Leaf<DueCase>[] {
  const unit = trigger === null ? null : INTERVAL_UNIT[trigger.kind];
  if (unit === null || interval === 0) return [];
  return [{ name: 'interval', value: interval, unit, basis: 'setting', put: (one) => one }];
}

const INTERVAL_UNIT: Readonly<Record<NonNullable<Due['trigger']>['kind'], WorkingUnit | null>> = {
  days: 'days',
  months: 'months',
  distance: 'km',
  trips: 'trips',
  event: null,
  'fixed-date': null,
};

function usedLeaves({ used }: Due, base: DueCase): Leaf<DueCase>[] {
  if (used === null) return [];
  if (used.kind === 'trips') {
    return [{ name: 'used', value: base.used, unit: 'trips', basis: 'measured', doubt: 0, put: (one) => one }];
  }
  const leaves: Leaf<DueCase>[] = [
    {
      ...{ name: 'used', value: base.used, unit: 'km', basis: 'stated' },
      put: (one, value) => ({ ...one, used: value }),
    },
  ];
  if (base.aDay !== null) {
    leaves.push({
      ...{ name: 'use-a-day', value: base.aDay, unit: 'km/day', basis: 'assumed' },
      put: (one, value) => ({ ...one, aDay: value }),
    });
  }
  return leaves;
}
