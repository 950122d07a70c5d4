import { addMonths, type CivilDate } from '../calendar/civil-date.js';

const MONTHS_A_YEAR = 12;

/** A carrier keeps a file on a vehicle it controls for this many days in a row. Source: 49 CFR 396.3(b). */
const FILE_FROM_DAYS = 30;

/** Whether whoever controls a vehicle so long must keep its inspection, repair and maintenance file. A renter of 29 days need not; the yard must. */
export function fileRequired(daysControlled: number): boolean {
  return daysControlled >= FILE_FROM_DAYS;
}

/** Whether a property carrier's driver must write the day's report: only of a defect found. Source: 49 CFR 396.11(a)(2)(i). */
export function driverReportRequired(defectsFound: number): boolean {
  return defectsFound > 0;
}

/**
 * Whether driver reports are asked of a carrier at all: not of one with a single commercial vehicle.
 * Source: 49 CFR 396.11(a)(5). A truck and a trailer are two.
 */
export function driverReportsApply(vehiclesOperated: number): boolean {
  return vehiclesOperated > 1;
}

/**
 * Whether an annual inspector's time is enough: a government-sponsored course or a State or provincial certificate, or a
 * year of training and experience together. Knowledge and tools are asked besides. Source: 49 CFR 396.19(a)(3).
 */
export function inspectorTimeIsEnough(inspector: {
  readonly certificate: boolean;
  readonly trainingMonths: number;
  readonly experienceMonths: number;
}): boolean {
  return inspector.certificate || inspector.trainingMonths + inspector.experienceMonths >= MONTHS_A_YEAR;
}

/** Last day on which the evidence of an inspector's qualification is kept: a year after he stopped. Source: 49 CFR 396.19(b), 396.25(e). */
export function keepEvidenceThrough(stoppedOn: CivilDate): CivilDate {
  return addMonths(stoppedOn, MONTHS_A_YEAR);
}

/** A vehicle of a combination, and through which day its periodic inspection is good; null when it never passed. */
export interface InspectedVehicle {
  readonly name: string;
  readonly goodThrough: CivilDate | null;
}

/** The vehicles of a combination whose periodic inspection is not good on a day: each needs its own. Source: 49 CFR 396.17(a). */
export function notInspected(vehicles: readonly InspectedVehicle[], on: CivilDate): readonly string[] {
  return vehicles.filter(({ goodThrough }) => goodThrough === null || goodThrough < on).map(({ name }) => name);
}
