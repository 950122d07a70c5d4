import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { dueChecks } from '../../../src/rules/inspection/due.js';
import { toMiles } from '../../../src/rules/units/distance.js';
import { BEFORE_EACH_TOW, PUBLISHED_INTERVALS } from '../reference/published-intervals.js';
import { axle, build } from '../sample-facts.js';
import { facts } from '../sample-trailer.js';

const find = (code: string) => DEFAULT_CHECK_KINDS.find((kind) => kind.code === code);

/** Which checks a build is asked for, by code. */
function askedOf(more: Parameters<typeof build>[0]): readonly string[] {
  const checkKinds = DEFAULT_CHECK_KINDS.map((kind) => ({ ...kind, id: kind.code }));
  return dueChecks(facts({ builds: [build(more)], checkKinds }), day('2025-06-16')).map(({ code }) => code);
}

describe('the checks a new yard starts with', () => {
  it('have a code of their own, and say where their interval comes from', () => {
    const codes = DEFAULT_CHECK_KINDS.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(DEFAULT_CHECK_KINDS.filter(({ source }) => source.trim().length < 10)).toEqual([]);
  });

  it('measure what a measuring line asks for, and nothing on a line to tick', () => {
    for (const { code, lines } of DEFAULT_CHECK_KINDS) {
      for (const line of lines) expect(line.quantity !== null, `${code}/${line.code}`).toBe(line.kind === 'measure');
      expect(new Set(lines.map((line) => line.code)).size, code).toBe(lines.length);
    }
  });

  // The public intervals: 12 months or 12,000 mi and at once after immersion; nuts at 10, 25, 50 mi; brakes at 200, then
  // every 3,000 mi (owner manuals, makers withheld); brakes every 6 months (US Army TM 9-2330-324-14&P); 49 CFR 396.17.
  it('carry the published intervals', () => {
    const torque = find('wheel-nut-torque')?.triggers[0];
    expect(torque?.kind === 'event' && torque.atKm.map(toMiles)).toEqual(
      [10, 25, 50].map((mi) => expect.closeTo(mi, 9)),
    );
    const adjust = find('brake-adjust')?.triggers;
    expect(adjust?.[0]?.kind === 'event' && adjust[0].atKm.map(toMiles)).toEqual([expect.closeTo(200, 9)]);
    expect(adjust?.[1]?.kind === 'distance' && toMiles(adjust[1].everyKm)).toBeCloseTo(3_000, 9);
    expect(find('brake-inspect')?.triggers[0]).toEqual({ kind: 'months', every: 6, toMonthEnd: false });
    expect(find('annual-inspection')).toMatchObject({
      triggers: [{ kind: 'months', every: 12, toMonthEnd: true }],
      blocks: 'commercial-jobs',
      proof: { keepMonths: 14 },
    });
  });

  it.each(PUBLISHED_INTERVALS)('ask for $item no later than published ($source)', (published) => {
    const { code, months, mi, event, atMi } = published;
    const triggers = find(code)?.triggers ?? [];
    const everyMonths = triggers.flatMap((one) => (one.kind === 'months' ? one.every : []));
    const everyMi = triggers.flatMap((one) => (one.kind === 'distance' ? toMiles(one.everyKm) : []));
    const after = triggers.find((one) => one.kind === 'event' && one.event === event);
    if (months !== undefined) expect(Math.min(...everyMonths)).toBeLessThanOrEqual(months);
    if (mi !== undefined) expect(Math.min(...everyMi)).toBeLessThanOrEqual(mi + 1e-9);
    if (event !== undefined) expect(after).toBeDefined();
    if (atMi !== undefined) {
      expect(after?.kind === 'event' && after.atKm.map(toMiles)).toEqual(atMi.map((at) => expect.closeTo(at, 9)));
    }
  });

  it.each(BEFORE_EACH_TOW)('ask for $item on the sheet $code', ({ code, line }) => {
    expect(find(code)?.lines.map((one) => one.code)).toContain(line);
  });

  it('ask torsion axles for no shackles, springs for no torsion arms, steel decks for no probing', () => {
    const torsion = askedOf({ suspension: 'torsion' });
    expect(torsion).toContain('torsion-arms');
    expect(torsion).not.toContain('shackles');
    expect(askedOf({})).not.toContain('torsion-arms');
    expect(askedOf({ deck: { ...build().deck, material: 'tread-plate' } })).not.toContain('deck-probe');
  });

  it('ask oil-bath hubs for their level and grease hubs for a repack, never both of one trailer that is known', () => {
    const hubs = (lubricant: 'oil' | 'grease') =>
      askedOf({ axles: [axle(1, 7_000, { lubricant }), axle(2, 7_000, { lubricant })] }).filter((code) =>
        code.startsWith('hub-'),
      );
    expect([...hubs('grease')].sort()).toEqual(['hub-repack']);
    expect([...hubs('oil')].sort()).toEqual(['hub-oil-level', 'hub-oil-service']);
  });

  it('never fall due by themselves where they are asked for before each tow, on the road or on return', () => {
    const asked = askedOf({});
    for (const code of ['pre-trip', 'road-stop', 'return']) expect(asked).not.toContain(code);
  });
});
