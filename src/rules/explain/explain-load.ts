import type { Comparison, Limit } from '../load/limit.js';
import { checkLoad } from '../load/load-check.js';
import { type LoadCase, loadLeaves } from './load-leaves.js';
import { type Leaf, type Working, workOut } from './working.js';

const STATICS = 'Balance of forces and of moments about the coupler, standing still.';

/**
 * How a load check was worked out: the whole, the tongue, the axle group, and how much is left to the tightest limit of
 * each kind. An input that moves none of it is left out.
 */
export function explainLoad(base: LoadCase): readonly Working[] {
  const leaves = loadLeaves(base);
  const check = checkLoad(base.limits, base.load, base.policy);
  const byScale = check.method === 'scale';
  const sums = [
    sum('gross', 'kg', byScale ? 'by the scale ticket' : 'empty trailer + everything on the deck', 'Sum of masses.'),
    sum(
      'tongue',
      'N',
      byScale ? 'by the scale ticket' : 'moments of every weight about the middle of the axles',
      STATICS,
    ),
    sum('axle-group', 'N', 'weight of the whole − tongue weight', STATICS),
  ];
  const answers = { gross: 'grossKg', tongue: 'tongueN', 'axle-group': 'axleGroupN' } as const;
  const explained = sums.map((one) =>
    workOut({
      ...one,
      ...{ subject: null, base, leaves },
      compute: ({ limits, load, policy }) => checkLoad(limits, load, policy)[answers[one.of]],
    }),
  );
  const margins = tightestOfEachKind(check.comparisons).map((one) => explainMargin(base, leaves, one.limit));
  return [...explained, ...margins].filter((one) => one !== null).map(withoutIdleInputs);
}

function sum<Of extends 'gross' | 'tongue' | 'axle-group'>(of: Of, unit: 'kg' | 'N', formula: string, source: string) {
  return { of, unit, formula, source };
}

/** What is left to one limit. */
function explainMargin(base: LoadCase, leaves: readonly Leaf<LoadCase>[], limit: Limit): Working | null {
  const rating: Leaf<LoadCase> = {
    ...{ name: 'rating', subject: limit.subject, value: limit.limitN, unit: 'N', basis: 'rated' },
    put: (one) => one,
  };
  return workOut({
    of: 'margin',
    subject: limit.subject === null ? limit.kind : `${limit.kind} ${limit.subject}`,
    unit: 'N',
    formula: FORMULA_OF[limit.kind] ?? 'rating − load',
    source: STATICS,
    base,
    leaves: [rating, ...leaves],
    compute: (one) => marginOf(one, limit),
  });
}

const FORMULA_OF: Partial<Record<Limit['kind'], string>> = {
  plate: 'rating of the plate − weight of the whole',
  coupler: 'rating of the coupler − weight of the whole',
  'tow-hitch': 'rating of the hitch − weight of the whole',
  'axle-group': 'rating of the axles together − (weight of the whole − tongue weight)',
  axle: 'rating of the axle − its share of (weight of the whole − tongue weight)',
  tire: 'what the tire carries at its pressure − load of its axle ÷ wheels',
  'coupler-tongue': 'vertical rating of the coupler − tongue weight',
  'tow-hitch-tongue': 'tongue rating of the hitch − tongue weight',
  'legal-axles': 'legal weight of the axles − their share of (weight of the whole − tongue weight)',
};

function marginOf({ limits, load, policy }: LoadCase, limit: Limit): number | null {
  const { comparisons } = checkLoad(limits, load, policy);
  const same = comparisons.find((one) => one.limit.kind === limit.kind && one.limit.subject === limit.subject);
  return same?.marginN ?? null;
}

function tightestOfEachKind(comparisons: readonly Comparison[]): readonly Comparison[] {
  const tightest = new Map<string, Comparison>();
  for (const one of comparisons) {
    const other = tightest.get(one.limit.kind);
    if (other === undefined || one.marginN < other.marginN) tightest.set(one.limit.kind, one);
  }
  return [...tightest.values()];
}

/** A fact that this answer does not rest on tells its reader nothing. The rating always stays. */
function withoutIdleInputs(working: Working): Working {
  const most = working.mattersMost === null ? null : working.inputs[working.mattersMost];
  const inputs = working.inputs.filter((input) => input.sway > 0 || input.basis === 'rated');
  return { ...working, inputs, mattersMost: most === null || most === undefined ? null : inputs.indexOf(most) };
}
