import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { MeasuredQuantity } from '../../rules/facts/check.js';

/** What a page hands the script of a check sheet. */
export interface CheckSheetData {
  /** Whose page it is. */
  readonly person: string;
  readonly path: string;
  readonly trailerId: string;
  readonly yardNumber: string;
  readonly check: string;
  /** The day the page was made: a kept page is opened on later ones. */
  readonly today: CivilDate;
  readonly timeZone: string;
  readonly lookAlikes: readonly string[];
  /** What is measured in each field. */
  readonly measures: Readonly<Record<string, MeasuredQuantity>>;
  /** Lines that keep people safe, by their code. */
  readonly safety: Readonly<Record<string, string>>;
}

/** What a page hands the script that has pages kept on the phone. */
export interface SheetKeeperData {
  readonly person: string;
  readonly paths: readonly string[];
}

/** What the page of all that waits hands its script. */
export interface SheetsData {
  readonly person: string;
}

/** Where a sheet is filled in: under the one folder that a phone keeps. */
export function sheetPath(trailerId: string, checkKindId: string): string {
  return `/sheets/${trailerId}/${checkKindId}`;
}
