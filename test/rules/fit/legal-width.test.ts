import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { fit } from '../../../src/rules/fit/fit.js';
import { inch } from '../../../src/rules/units/length.js';
import { build, item, load, unknownBuild } from '../sample-facts.js';
import { facts, machine } from '../sample-trailer.js';

const ON = day('2025-06-20');

function widths(deckIn: number | null, machineIn: number | null) {
  const dozer = machine('dozer', 6_000, { widthM: machineIn === null ? null : inch(machineIn) });
  const deck = { ...unknownBuild().deck, widthM: deckIn === null ? null : inch(deckIn) };
  const answer = fit(
    facts({ builds: [build({ deck })], machines: [dozer] }),
    {
      load: load({ cargo: [item('dozer', 6_000, { machineId: dozer.id })] }),
      ...{ startsOn: ON, endsOn: ON, commercial: null, towVehicle: null, driver: null },
    },
    ON,
  );
  return {
    reason: answer.reasons.find(({ kind }) => kind === 'wider-than-law'),
    asksPermit: answer.remedies.some(({ kind }) => kind === 'permit'),
  };
}

describe('a haul wider than 102 in asks for a permit (23 CFR 658.15; cargo counts)', () => {
  test('by its machine or by its deck, whichever is wider', () => {
    const wide = (at: number) => ({
      reason: { kind: 'wider-than-law', widthM: inch(at), limitM: inch(102) },
      asksPermit: true,
    });
    expect(widths(102, 110)).toEqual(wide(110));
    expect(widths(108, 84)).toEqual(wide(108));
  });

  test('102 in is still within, and what is not known is not wide', () => {
    const within = { reason: undefined, asksPermit: false };
    expect([widths(102, 102), widths(null, 84), widths(null, null)]).toEqual([within, within, within]);
  });
});
