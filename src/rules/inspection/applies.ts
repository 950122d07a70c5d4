import type { BuildSheet } from '../facts/build-sheet.js';
import type { AppliesTo } from '../facts/check.js';

/** Whether a check is for this build. Every condition set must hold; what the build does not say counts as "it may". */
export function applies(to: AppliesTo, build: BuildSheet | null): boolean {
  if (build === null) return true;
  return (
    mayBe(to.bodies, [build.body]) &&
    mayBe(to.suspensions, [build.suspension]) &&
    mayBe(to.brakes, anyOf(build.axles.map((axle) => axle.brakes))) &&
    mayBe(to.hitches, [build.hitch.kind]) &&
    mayBe(to.deckMaterials, [build.deck.material]) &&
    mayBe(to.lubricants, anyOf(build.axles.map((axle) => axle.lubricant))) &&
    mayBe(to.ramps, [build.rear.ramps])
  );
}

/** One axle is enough. A build with no axle entered has not said. */
function anyOf(values: readonly (string | null)[]): readonly (string | null)[] {
  return values.length === 0 ? [null] : values;
}

function mayBe(wanted: readonly string[] | null, has: readonly (string | null)[]): boolean {
  return wanted === null || has.some((value) => value === null || wanted.includes(value));
}
