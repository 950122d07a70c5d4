import { describe, expect, test } from 'vitest';
import { ANNUAL_LINES } from '../../../src/rules/inspection/annual-lines.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import periodic from '../reference/periodic-inspection.json' with { type: 'json' };

/** What only a trailer with air brakes, a dolly or a kingpin has. */
const NOT_OURS = /air brakes|air drum|air disc|wedge|fitted \(air\)/;

/** `1.a(6)(c)` is told by a line that names it, or any paragraph it lies in: `1.a(6)`, `1.a`, `1`. */
function paragraphsAbove(paragraph: string): readonly string[] {
  const [first = ''] = paragraph.split(/[-, ]/);
  const steps = [first];
  for (let rest = first; /\([^()]*\)$|\.\w$/.test(rest); ) {
    rest = rest.replace(/\([^()]*\)$|\.\w$/, '');
    steps.push(rest);
  }
  return steps;
}

describe('the sheet of the annual inspection', () => {
  const named = ANNUAL_LINES.flatMap(({ text }) => / \((\d.*)\)$/.exec(text)?.[1]?.split(', ') ?? []);
  const ours = periodic.paragraphs.filter(({ applies }) => !NOT_OURS.test(applies));

  test.each(ours.map(({ id, paragraph }) => [id, paragraph] as const))('has a line for %s (%s)', (_id, paragraph) => {
    expect(paragraphsAbove(paragraph).filter((one) => named.includes(one))).not.toEqual([]);
  });

  test('leaves out only what no equipment trailer without air brakes has', () => {
    expect(periodic.paragraphs).toHaveLength(57);
    expect(periodic.paragraphs.length - ours.length).toBe(7);
  });

  test('names no paragraph that Appendix A does not have', () => {
    const known = new Set(periodic.paragraphs.flatMap(({ paragraph }) => paragraphsAbove(paragraph)));
    expect(named.filter((one) => !known.has(one))).toEqual([]);
  });

  test('is the one a new yard starts with', () => {
    expect(DEFAULT_CHECK_KINDS.find(({ code }) => code === 'annual-inspection')?.lines).toBe(ANNUAL_LINES);
  });
});
