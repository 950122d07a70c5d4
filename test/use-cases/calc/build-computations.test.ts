import { describe, expect, test } from 'vitest';
import { calculate } from '../../../src/use-cases/calc/calculate.js';
import { EXAMPLE_BUILD, EXAMPLE_LOAD, EXAMPLE_TIRES } from '../../../src/use-cases/calc/example-build.js';

const BARE = { build: {}, tires: [] };
const RIG = { coldPressures: [], towVehicle: null };
const HAUL = { startsOn: '2026-06-02', endsOn: '2026-06-03', commercial: null, driverHolds: null, towVehicle: null };

describe('a build of which nobody has said anything', () => {
  test('has no ratings, and contradicts nothing', () => {
    expect(calculate('build-ratings', BARE)).toMatchObject({
      ok: true,
      value: { limits: [], governing: null, payloadKg: null, trailerClass: null, workings: [] },
    });
    expect(calculate('build-contradictions', BARE)).toEqual({ ok: true, value: { contradictions: [] } });
  });

  test('leaves a load unjudged, and names what is missing', () => {
    const answer = calculate('build-load-check', { ...BARE, ...RIG, load: EXAMPLE_LOAD });
    expect(answer).toMatchObject({ ok: true, value: { grossKg: null, comparisons: [] } });
    expect(JSON.stringify(answer)).toContain('"lacks":"gvwr"');
    expect(calculate('build-envelope', { ...BARE, ...RIG, raisedM: null })).toMatchObject({
      ok: true,
      value: { edges: null, lacks: expect.arrayContaining(['empty-mass']) },
    });
    expect(calculate('haul-fit', { ...BARE, ...HAUL, load: EXAMPLE_LOAD, machine: null })).toMatchObject({
      ok: true,
      value: { verdict: 'cannot-say' },
    });
  });
});

test('a bad fact inside a build is named by its path, with the range of every other door', () => {
  const build = {
    ...EXAMPLE_BUILD,
    axles: [
      { gawrKg: 3_175, fromCouplerM: 4 },
      { gawrKg: -1, fromCouplerM: 5 },
    ],
  };
  expect(calculate('build-ratings', { build, tires: [] })).toMatchObject({
    ok: false,
    problem: {
      kind: 'invalid',
      fields: [{ field: 'build.axles[1].gawrKg', message: expect.stringMatching(/^Enter /) }],
    },
  });
});

test('a tire where the build has no wheel is refused, not passed over', () => {
  const tires = [{ ...EXAMPLE_TIRES[0], position: '3L' }];
  expect(calculate('build-ratings', { build: EXAMPLE_BUILD, tires })).toMatchObject({
    ok: false,
    problem: { fields: [{ message: expect.stringMatching(/^"tires" .*3L.*use one of 1L, 1R, 2L, 2R/) }] },
  });
});

test('a machine joins the cargo at its own weight, and is told where to stand', () => {
  const machine = { name: 'machine', massKg: 4_000, basis: 'weighed', lengthM: 3, widthM: 1.8, balancePointM: 1.4 };
  const given = { build: EXAMPLE_BUILD, tires: EXAMPLE_TIRES, ...HAUL };
  expect(calculate('haul-fit', { ...given, load: { balancePointM: 3.97 }, machine })).toMatchObject({
    ok: true,
    value: { loadCheck: { cargoKg: expect.closeTo(4_000, 6) }, parking: { deckKnown: true } },
  });
  const rest = { cargo: [{ name: 'chains', massKg: 70, basis: 'weighed' }] };
  expect(calculate('haul-fit', { ...given, load: rest, machine: { ...machine, massKg: null } })).toMatchObject({
    ok: false,
    problem: { fields: [{ message: expect.stringMatching(/^"machine"/) }] },
  });
});

test('what a tire was found at counts before the plate', () => {
  const at = (coldKpa: number) =>
    calculate('build-load-check', {
      ...{ build: EXAMPLE_BUILD, tires: EXAMPLE_TIRES, load: EXAMPLE_LOAD, towVehicle: null },
      coldPressures: [{ position: '1L', coldKpa }],
    });
  // The published row of ST235/80R16: 2,600 lb at 50 psi. 5,484 lb on the axle is 2,742 on the wheel.
  expect(JSON.stringify(at(344.738))).toMatch(
    /"subject":"1L","limitN":11565[^}]*\},"loadN":12195[^}]*"standing":"over"/,
  );
  expect(JSON.stringify(at(551.581))).not.toContain('"over"');
});
