import { describe, expect, it } from 'vitest';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import { bestParking, type Carrier, cargoEnvelope, payloadWith } from '../../../src/rules/trailer/cargo-envelope.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { lbf } from '../../../src/rules/units/force.js';
import { feet, inch, metres, toInch } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { build, item, load, placedAxles, tires, unknownBuild } from '../sample-facts.js';
import { machine } from '../sample-trailer.js';

/** The trailer of case S1, its deck from 60 to 252 in. */
function carrier(more: Partial<BuildSheet> = {}): Carrier {
  const sheet = build({
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: placedAxles(180),
    deck: { ...unknownBuild().deck, frontFromCouplerM: inch(60), lengthM: inch(192) },
    ...more,
  });
  const limits = loadLimits({ build: sheet, tires: tires(2), coldPressures: new Map(), towVehicle: null });
  return { build: sheet, limits, raisedM: null };
}

const loader = machine('loader', 9_000, { lengthM: feet(11), balancePointM: inch(60) });
const parked = (cargo: Parameters<typeof load>[0], on = carrier(), machines = [loader]) =>
  bestParking(on, load(cargo), machines);

describe('where to park a machine', () => {
  const alone = [item('loader', 9_000, { machineId: 'loader' })];

  it('S2: 9,000 lb alone belong where 12 % rest on the tongue', () => {
    const best = parked({ cargo: alone });
    expect(toInch(best?.balancePointM ?? metres(0))).toBeCloseTo(156.35, 2);
    expect(toInch(best?.frontM ?? metres(0))).toBeCloseTo(96.35, 2);
    expect(best).toMatchObject({ deckKnown: true, machineId: 'loader' });
  });

  it('what has a place of its own stays, what has none rides on the machine', () => {
    const beside = parked({
      cargo: [...alone, item('chain box', 300, { fromCouplerM: inch(40) }), item('mud', 200)],
    });
    expect(toLb(beside?.massKg ?? kg(0))).toBeCloseTo(9_200, 6);
    // 12 % of 12,300 lb is 1,476: 233.33 + 300 × 140 / 180 + 9,200 (180 − x) / 180.
    expect(toInch(beside?.balancePointM ?? metres(0))).toBeCloseTo(
      180 - ((1_476 - 233.333 - 233.333) * 180) / 9_200,
      2,
    );
  });

  it('the machine stays on the deck: one with its weight far back is stopped by its front', () => {
    const tail = { ...loader, lengthM: feet(12), balancePointM: feet(10) };
    const best = parked({ cargo: alone }, carrier(), [tail]);
    // Its front at the deck's, 60 in: the balance point cannot come ahead of 180.
    expect(toInch(best?.balancePointM ?? metres(0))).toBeCloseTo(180, 6);
    expect(best?.tightest.share).toBeLessThan(0);
    expect(best?.inside).toBeNull();
  });

  it('with the deck’s place unknown it is worked out all the same, and said', () => {
    const nowhere = carrier({ deck: unknownBuild().deck });
    expect(parked({ cargo: alone }, nowhere)).toMatchObject({ deckKnown: false });
  });

  it('without a machine, or a fact of the envelope, there is no answer', () => {
    expect(parked({ cargo: [item('pallets', 2_000)] })).toBeNull();
    expect(parked({ cargo: alone }, carrier({ suspension: null }))).toBeNull();
    expect(parked({ cargo: alone }, carrier(), [{ ...loader, lengthM: feet(20) }])).toBeNull();
  });
});

describe('payload with the balance point in one place', () => {
  it('is the plate’s in the middle, and says so', () => {
    const found = payloadWith(carrier(), inch(155));
    expect(found.kind === 'known' && found.payload.governedBy?.kind).toBe('plate');
    expect(toLb(found.kind === 'known' ? found.payload.mostKg : kg(0))).toBeCloseTo(11_200, 6);
  });

  it('names what is missing', () => {
    expect(payloadWith(carrier({ suspension: 'torsion' }), inch(155))).toEqual({
      kind: 'unknown',
      lacks: ['torsion-level'],
    });
    expect(cargoEnvelope(carrier({ suspension: null })).kind).toBe('unknown');
  });
});
