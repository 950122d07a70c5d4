import { describe, expect, it } from 'vitest';
import { machinesAboard } from '../../../src/rules/load/aboard.js';
import { needOf, tiedDown } from '../../../src/rules/load/tied-down.js';
import { feet, toFeet } from '../../../src/rules/units/length.js';
import { kg, lb, toLb } from '../../../src/rules/units/mass.js';
import { item, load } from '../sample-facts.js';
import { machine } from '../sample-trailer.js';

const LOADER = machine('loader', 8_000, { lengthM: feet(11), contact: 'rubber-tracks' });
const LIFT = machine('lift', 11_000, { lengthM: feet(24), contact: 'pads' });

describe('machines aboard', () => {
  it('are named once, with what they wear, heaviest first', () => {
    const cargo = [
      item('loader', 8_000, { machineId: 'loader' }),
      item('grapple', 1_000, { machineId: 'loader', basis: 'stated' }),
      item('chains', 160),
      item('lift', 11_000, { machineId: 'lift' }),
      item('sold one', 500, { machineId: 'gone' }),
    ];
    const aboard = machinesAboard(load({ cargo }), [LOADER, LIFT]);
    expect(aboard.map((one) => [one.machine.id, Math.round(toLb(one.massKg)), one.weighed])).toEqual([
      ['lift', 11_000, true],
      ['loader', 9_000, false],
    ]);
  });

  it('leave the cargo as it was', () => {
    const cargo = [item('a', 1, { machineId: 'loader' }), item('b', 2, { machineId: 'lift' })];
    machinesAboard(load({ cargo }), [LOADER, LIFT]);
    expect(cargo.map(({ name }) => name)).toEqual(['a', 'b']);
  });
});

describe('what a load needs to be tied down with', () => {
  const cargo = (pounds: number, machineId: string) => load({ cargo: [item('it', pounds, { machineId })] });

  it('the longest machine sets the number, the whole cargo the strength', () => {
    expect(toFeet(LOADER.lengthM ?? feet(0))).toBeCloseTo(11, 9);
    const need = needOf(cargo(8_000, 'loader'), [LOADER], lb(8_300));
    expect(need).toMatchObject({ count: 3, because: 'length' });
    expect(toLb(need?.workingLoadKg ?? kg(0))).toBeCloseTo(4_150, 9);
  });

  it('the rule for heavy machines is for those on wheels or tracks', () => {
    // 24 ft on pads, 11,000 lb: two, and one for each further ten feet or part.
    expect(needOf(cargo(11_000, 'lift'), [LIFT], null)).toMatchObject({ count: 4, because: 'length' });
    expect(needOf(cargo(11_000, 'loader'), [{ ...LOADER, contact: null }], null)).toMatchObject({
      count: 4,
      because: 'heavy-machine',
    });
  });

  it('no weight, no answer; nobody said, no check', () => {
    expect(needOf(load(), [], null)).toBeNull();
    expect(tiedDown(cargo(8_000, 'loader'), [LOADER], null)).toBeNull();
    expect(tiedDown(load({ tieDowns: [] }), [], null)).toBeNull();
    expect(tiedDown({ ...cargo(8_000, 'loader'), tieDowns: [] }, [LOADER], null)).toMatchObject({
      count: 0,
      standing: 'short',
    });
  });
});
