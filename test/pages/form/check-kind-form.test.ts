import { describe, expect, test } from 'vitest';
import { fillCheckKindForm, readCheckKindForm, readTriggers } from '../../../src/pages/form/check-kind-form.js';
import { FormReader } from '../../../src/pages/form/read-form.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';

describe('a check put into its form and read back', () => {
  test.each(DEFAULT_CHECK_KINDS.map((kind) => [kind.code, kind] as const))('%s is the same check', (_code, kind) => {
    const form = new FormReader(fillCheckKindForm({ ...kind, id: 'k' }));
    const { triggers, ...read } = readCheckKindForm(form, readTriggers(form));
    const { triggers: asked, ...rest } = kind;
    expect(read).toEqual(rest);
    const inOrder = [...asked].sort((a, b) => order(a.kind) - order(b.kind));
    expect(triggers).toHaveLength(inOrder.length);
    for (const [place, trigger] of (triggers ?? []).entries()) {
      // Miles are typed with four decimals, far below what any meter shows.
      expect(round(trigger)).toEqual(round(inOrder[place]));
    }
  });
});

const order = (kind: string) => ['days', 'months', 'distance', 'trips', 'event', 'fixed-date'].indexOf(kind);

function round(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value), (_key, one) => (typeof one === 'number' ? Number(one.toFixed(3)) : one));
}
