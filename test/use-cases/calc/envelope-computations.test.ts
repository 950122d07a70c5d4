import { expect, test } from 'vitest';
import { inch, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { calculate } from '../../../src/use-cases/calc/calculate.js';
import { COMPUTATIONS } from '../../../src/use-cases/calc/computations.js';

const example = (name: string) => COMPUTATIONS.find((one) => one.name === name)?.example ?? {};

function answered(name: string, more: object = {}) {
  const outcome = calculate(name, { ...example(name), ...more });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value as never;
}

test('the best place of case S2: 12 % on the tongue', () => {
  const { balancePointM, mostKg, governedBy } = answered('best-place') as {
    balancePointM: number;
    mostKg: number;
    governedBy: { kind: string };
  };
  expect(toInch(metres(balancePointM))).toBeCloseTo(156.35, 2);
  expect(toLb(kg(mostKg))).toBeCloseTo(11_200, 2);
  expect(governedBy.kind).toBe('plate');
});

test('the envelope’s corners are those worked out by hand', () => {
  const { edges } = answered('cargo-envelope') as { edges: { from: { balancePointM: number; cargoKg: number } }[] };
  const corners = edges.map(({ from }) => [
    Math.round(toInch(metres(from.balancePointM)) * 100) / 100,
    Math.round(toLb(kg(from.cargoKg))),
  ]);
  // Plate against 15 and 10 % of the gross: test/rules/envelope has the working.
  expect(corners).toEqual(
    expect.arrayContaining([
      [150, 11_200],
      [161.25, 11_200],
    ]),
  );
});

test('a whole build sheet has the envelope of the same trailer told by its bare numbers', () => {
  type Edges = { edges: { kind: string; from: { balancePointM: number; cargoKg: number } }[] };
  const rounded = ({ edges }: Edges) =>
    edges.map(({ kind, from }) => [kind, from.balancePointM.toFixed(6), from.cargoKg.toFixed(3)]);
  expect(rounded(answered('build-envelope'))).toEqual(rounded(answered('cargo-envelope')));
});

test('what a build may carry at a place is the envelope’s edge over it', () => {
  const at = (balancePointM: number) => answered('build-payload-at-place', { balancePointM }) as { mostKg: number };
  expect(toLb(kg(at(inch(161.25)).mostKg))).toBeCloseTo(11_200, 0);
  expect(toLb(kg(at(inch(156)).mostKg))).toBeCloseTo(11_200, 2);
});

test('a deck that ends ahead of where it begins is refused by its field', () => {
  const outcome = calculate('best-place', { ...example('best-place'), deckRearM: inch(10), machineKg: lb(9_000) });
  expect(outcome).toMatchObject({ ok: false, problem: { kind: 'invalid' } });
  expect(JSON.stringify(outcome)).toContain('deckRearM');
});
