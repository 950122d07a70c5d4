import type { CivilDate } from '../rules/calendar/civil-date.js';

/** How a day goes into a `date` column: Prisma wants an instant and keeps only its day in UTC. */
export function toColumn(date: CivilDate): Date;
export function toColumn(date: CivilDate | null): Date | null;
export function toColumn(date: CivilDate | null | undefined): Date | null | undefined;
export function toColumn(date: CivilDate | null | undefined): Date | null | undefined {
  return date === null || date === undefined ? date : new Date(`${date}T00:00:00Z`);
}

/** How a day comes out of a `date` column. */
export function fromColumn(date: Date): CivilDate;
export function fromColumn(date: Date | null): CivilDate | null;
export function fromColumn(date: Date | null): CivilDate | null {
  return date === null ? null : (date.toISOString().slice(0, 10) as CivilDate);
}
