import type { CivilDate } from '../calendar/civil-date.js';
import type { BuildSheet } from './build-sheet.js';

/**
 * The build of a day: the version that took effect last, on or before it.
 * A day before the first version reads the first one, since records often begin after a trailer was built.
 * Null when there is none at all.
 */
export function buildOn(builds: readonly BuildSheet[], on: CivilDate): BuildSheet | null {
  let standing: BuildSheet | null = null;
  let first: BuildSheet | null = null;
  for (const build of builds) {
    if (first === null || isLater(first, build)) first = build;
    if (build.effectiveFrom <= on && (standing === null || isLater(build, standing))) standing = build;
  }
  return standing ?? first;
}

/** Ties go by id, so that the order in which versions are listed never decides. */
function isLater(a: BuildSheet, b: BuildSheet): boolean {
  return a.effectiveFrom === b.effectiveFrom ? a.id > b.id : a.effectiveFrom > b.effectiveFrom;
}
