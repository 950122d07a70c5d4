import type { BuildSheet } from '../facts/build-sheet.js';
import type { Part } from '../facts/part.js';
import { ratings } from '../trailer/ratings.js';
import { kg } from '../units/mass.js';
import { type Leaf, type Working, workOut } from './working.js';

interface RatingsCase {
  readonly build: BuildSheet;
  readonly tires: readonly Part[];
}

/** How the payload of a build was worked out; null while the plate or the empty mass is unknown. */
export function explainPayload(build: BuildSheet, tires: readonly Part[]): Working | null {
  const { governing, tongueShareAssumed } = ratings(build, tires);
  if (governing === null) return null;
  const onHitch = SHARES_THE_HITCH.has(governing.kind);
  const fixed: Leaf<RatingsCase>[] = [
    {
      ...{ name: 'rating', subject: governing.kind, value: governing.limitN, unit: 'N', basis: 'rated' },
      put: (one) => one,
    },
  ];
  if (onHitch) {
    fixed.push({
      ...{ name: 'tongue-share', value: tongueShareAssumed, unit: 'share', basis: 'published' },
      put: (one) => one,
    });
  }
  return workOut({
    ...{ of: 'payload', subject: null, unit: 'kg', base: { build, tires } },
    formula: onHitch
      ? 'what the axles and tires carry ÷ (1 − share on the hitch) − empty trailer'
      : 'the least rating − empty trailer',
    source: 'Ratings as marked; a load must keep within each of them (49 CFR 571.120 for plate, axles and tires).',
    leaves: [...fixed, ...emptyLeaf(build)],
    compute: (one) => ratings(one.build, one.tires).payloadKg,
  });
}

/** Limits that the tongue weight takes a share off. */
const SHARES_THE_HITCH: ReadonlySet<string> = new Set(['axle-group', 'axle', 'tire', 'coupler-tongue', 'legal-axles']);

function emptyLeaf({ empty }: BuildSheet): Leaf<RatingsCase>[] {
  if (empty.massKg === null) return [];
  const basis = empty.basis === 'weighed' ? 'measured' : empty.basis;
  return [
    {
      ...{ name: 'empty-mass', value: empty.massKg, unit: 'kg', basis },
      put: ({ build, tires }, value) => ({ build: { ...build, empty: { ...build.empty, massKg: kg(value) } }, tires }),
    },
  ];
}
