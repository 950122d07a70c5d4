import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { calculate } from '../../../src/use-cases/calc/calculate.js';
import { COMPUTATIONS } from '../../../src/use-cases/calc/computations.js';
import { isAbout, shortened, spoiled } from '../../support/spoiled.js';

describe.each(COMPUTATIONS.map((one) => [one.name, one] as const))('%s', (name, one) => {
  test('works its example out, and answers as its schema says', () => {
    const outcome = calculate(name, one.example);
    expect(outcome).toMatchObject({ ok: true });
    if (!outcome.ok) return;
    expect(one.output.strict().safeParse(outcome.value)).toMatchObject({ success: true });
    // What goes over the wire is what was worked out: no NaN and no infinity, which JSON would turn into null.
    expect(JSON.parse(JSON.stringify(outcome.value))).toEqual(outcome.value);
  });

  test('says what it is, where it comes from and what it takes', () => {
    expect(one.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(one.about).toMatch(/^[A-Z].{15,}\.$/);
    expect(one.source).toMatch(/^.{10,}\.$/);
    const schema = z.toJSONSchema(one.input.strict(), { io: 'input' });
    expect(
      Object.values(schema.properties ?? {}).filter((field) => !JSON.stringify(field).includes('description')),
    ).toEqual([]);
  });

  test('refuses each bad field by its name, with the fix', () => {
    const wrong: string[] = [];
    for (const { path, bad, value } of [...spoiled(one.example), ...missing(one.example, one.input)]) {
      const outcome = calculate(name, bad);
      const says = `${path} = ${JSON.stringify(value)?.slice(0, 40)}`;
      if (outcome.ok) {
        // A huge number is believed where no range is known; a wrong kind of value never is.
        if (value !== 1e15 && !Array.isArray(value)) wrong.push(`${says} was taken`);
      } else if (outcome.problem.kind !== 'invalid') wrong.push(`${says}: ${outcome.problem.kind}`);
      else {
        const { fields } = outcome.problem;
        const named = fields.find(({ field }) => isAbout(field, path) || (value === 1e15 && field === 'input'));
        if (named === undefined) wrong.push(`${says} names only ${fields.map(({ field }) => field)}`);
        else if (!/^[A-Z"].{12,}[.]$/s.test(named.message)) wrong.push(`${says} says only: ${named.message}`);
      }
    }
    expect(wrong).toEqual([]);
  });
});

test('numbers far from any example are answered or refused, never half an answer', () => {
  const far = fc.record({
    one: fc.constantFrom(...COMPUTATIONS),
    factors: fc.array(fc.constantFrom(0, 1e-6, 0.01, 0.5, 1, 1, 1, 2, 100, 1e6, -1), { minLength: 7, maxLength: 7 }),
  });
  fc.assert(
    fc.property(far, ({ one, factors }) => {
      const outcome = calculate(one.name, scaled(one.example, factors));
      if (outcome.ok) expect(JSON.parse(JSON.stringify(outcome.value))).toEqual(outcome.value);
      else expect(outcome.problem).toMatchObject({ kind: 'invalid', fields: expect.anything() });
    }),
    { seed: 20_261_128, numRuns: 300 },
  );
});

/** Every number of an example times one of the factors in turn; whole numbers stay whole. */
function scaled(example: object, factors: readonly number[]): unknown {
  let place = 0;
  const again = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(again);
    if (typeof value === 'object' && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, again(one)]));
    }
    if (typeof value !== 'number') return value;
    const far = value * (factors[place++ % factors.length] ?? 1);
    return Number.isInteger(value) ? Math.round(far) : far;
  };
  return again(example);
}

test('what leads beyond all numbers is refused, and not answered with nothing', () => {
  const never = { shape: 100, scale: 1e-6, age: 1e9, span: 1, share: 0.5 };
  expect(calculate('life-of-survivor', never)).toMatchObject({
    ok: false,
    problem: { kind: 'invalid', fields: [{ field: 'input' }] },
  });
});

test('every name is used once', () => {
  const names = COMPUTATIONS.map((one) => one.name);
  expect(new Set(names).size).toBe(names.length);
});

test('a name that nobody has is not found', () => {
  expect(calculate('perpetual-motion', {})).toEqual({ ok: false, problem: { kind: 'not-found', what: 'computation' } });
});

/** The example without one of the fields it needs at a time. */
function missing(example: object, input: z.ZodObject) {
  const needed = z.toJSONSchema(input, { io: 'input' }).required ?? [];
  return shortened(example).filter(({ path }) => needed.includes(path));
}
