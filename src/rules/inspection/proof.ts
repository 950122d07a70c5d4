import { addMonths, type CivilDate, latest } from '../calendar/civil-date.js';

/**
 * How long papers are kept: through the day that many months on, clamped to the month's end.
 * Periodic inspection report 14 months from its date: 49 CFR 396.21(b)(1). Driver report 3 months: 396.11(a)(4).
 * Maintenance record 1 year, and 6 months after the trailer has left: 396.3(c).
 */
export const KEEP_MONTHS = { periodicReport: 14, driverReport: 3, maintenanceRecord: 12, afterLeaving: 6 } as const;

/** Last day a paper must be kept. */
export function keepThrough(dated: CivilDate, months: number): CivilDate {
  return addMonths(dated, months);
}

/** Last day a maintenance record must be kept. The later of the two periods: a cautious reading of 49 CFR 396.3(c). */
export function keepMaintenanceThrough(dated: CivilDate, leftOn: CivilDate | null): CivilDate {
  const aYear = keepThrough(dated, KEEP_MONTHS.maintenanceRecord);
  return leftOn === null ? aYear : (latest([aYear, keepThrough(leftOn, KEEP_MONTHS.afterLeaving)]) ?? aYear);
}
