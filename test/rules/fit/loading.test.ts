import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Load, Machine } from '../../../src/rules/facts/load.js';
import { type Fit, type FitReason, fit } from '../../../src/rules/fit/fit.js';
import { lbf, newtons, toLbf } from '../../../src/rules/units/force.js';
import { feet, inch, metres, toInch } from '../../../src/rules/units/length.js';
import { lb, toLb } from '../../../src/rules/units/mass.js';
import { build, item, load, placedAxles, unknownBuild } from '../sample-facts.js';
import { facts, machine } from '../sample-trailer.js';

const ON = day('2026-06-05');

/** Case S11's trailer: axles at 180 in, deck from 60 to 252 in, 34 in high, ramps of 72 in. */
function trailer(more: Partial<BuildSheet> = {}): BuildSheet {
  const unknown = unknownBuild();
  return build({
    body: 'fixed-deck',
    empty: { massKg: lb(2_800), basis: 'weighed', tongueN: lbf((2_800 * 15) / 180) },
    axles: placedAxles(180),
    deck: { ...unknown.deck, frontFromCouplerM: inch(60), lengthM: inch(192), heightM: inch(34), widthM: inch(82) },
    fenders: { kind: 'double-broke', clearWidthM: inch(80) },
    rear: { dovetailM: metres(0), ramps: 'stand-up', rampLengthM: inch(72), rampRatingKg: null, stabilizers: true },
    ...more,
  });
}

const HELD = [{ count: 4, workingLoadKg: lb(6_600), way: 'direct' as const }];

function ask(
  more: { build?: BuildSheet; machine?: Partial<Machine>; load?: Partial<Load>; pounds?: number } = {},
): Fit {
  const loader = machine('loader', 8_000, {
    contact: 'rubber-tracks',
    lengthM: feet(11),
    widthM: inch(70),
    wheelbaseM: inch(45),
    clearanceM: inch(8),
    ...more.machine,
  });
  return fit(
    facts({ builds: [more.build ?? trailer()], machines: [loader] }),
    {
      load: load({
        cargo: [item('loader', more.pounds ?? 8_000, { machineId: 'loader' })],
        balancePointM: inch(156.35),
        tieDowns: HELD,
        ...more.load,
      }),
      startsOn: ON,
      endsOn: ON,
      commercial: null,
      towVehicle: null,
      driver: null,
    },
    ON,
  );
}

function reason<Kind extends FitReason['kind']>(answer: Fit, kind: Kind): Extract<FitReason, { kind: Kind }> | null {
  return (answer.reasons.find((one) => one.kind === kind) as Extract<FitReason, { kind: Kind }>) ?? null;
}
const remedies = (answer: Fit) => answer.remedies.map(({ kind }) => kind);

describe('while the machine drives on', () => {
  it('with stabilizers it goes, told to set them and what they take', () => {
    const answer = ask();
    const lift = reason(answer, 'rear-lift');
    expect(answer.verdict).toBe('go');
    // S11 by hand: 2,966.7 lb up; 7,416.7 to 8,000 lb on the stabilizers.
    expect(toLbf(lift?.liftN ?? newtons(0))).toBeCloseTo(2_966.67, 1);
    expect(toLbf(lift?.supportLeastN ?? newtons(0))).toBeCloseTo(7_416.67, 1);
    expect(toLbf(lift?.supportMostN ?? newtons(0))).toBeCloseTo(8_000, 6);
  });

  it('with nothing under the tail it goes after the tail is blocked', () => {
    const bare = ask({ build: trailer({ rear: { ...trailer().rear, stabilizers: false } }) });
    expect(bare.verdict).toBe('go-after');
    expect(remedies(bare)).toContain('prop-tail');
  });

  it('over the ramps’ rating is no; unweighed just under it is weighed first', () => {
    const rated = (pounds: number, basis: 'weighed' | 'stated' = 'weighed') =>
      ask({
        build: trailer({ rear: { ...trailer().rear, rampRatingKg: lb(pounds) } }),
        load: { cargo: [item('loader', 8_000, { machineId: 'loader', basis })] },
      });
    expect(rated(7_000).verdict).toBe('no-go');
    expect(toLb(reason(rated(7_000), 'ramp-rating')?.marginKg ?? lb(0))).toBeCloseTo(-1_000, 6);
    expect(rated(8_100, 'stated').verdict).toBe('weigh-first');
    expect(rated(8_100).verdict).toBe('go');
  });

  it('a machine that hangs up where ramp and deck meet wants a flatter slope', () => {
    // 45 in of track over 28.18°: 22.5 × tan(14.09°) = 5.65 in.
    expect(toInch(reason(ask({ machine: { clearanceM: inch(5) } }), 'hangs-up')?.neededM ?? metres(0))).toBeCloseTo(
      5.65,
      2,
    );
    expect(ask({ machine: { clearanceM: inch(5) } }).verdict).toBe('go-after');
    expect(reason(ask({ machine: { clearanceM: inch(6) } }), 'hangs-up')).toBeNull();
  });

  it('a dovetail makes the crest less by what nobody recorded, and says so', () => {
    const answer = ask({
      build: trailer({ rear: { ...trailer().rear, dovetailM: feet(2) } }),
      machine: { clearanceM: inch(5) },
    });
    expect(reason(answer, 'hangs-up')?.isMost).toBe(true);
  });

  it('without the deck’s place it says what that keeps it from', () => {
    const deck = { ...trailer().deck, frontFromCouplerM: null };
    expect(ask({ build: trailer({ deck }) }).reasons).toContainEqual({
      kind: 'unknown',
      lacks: 'deck-place',
      stops: 'climb-check',
    });
  });
});

describe('a gravity tilt', () => {
  // Deck from 60 to 252 in, all of it tilting about a pivot at 195 in.
  const tilt = trailer({
    body: 'gravity-tilt',
    deck: { ...trailer().deck, tiltLengthM: feet(16), pivotFromCouplerM: inch(195) },
  });

  it('takes the machine over its pivot: that pulls the hitch less, and is said beside the answer', () => {
    const answer = ask({ build: tilt });
    // 233.3 − 8,000 × 15 / 180
    expect(toLbf(reason(answer, 'rear-lift')?.liftN ?? newtons(0))).toBeCloseTo(433.33, 1);
    expect(reason(answer, 'rear-lift')?.support).toBe('deck-on-ground');
    expect(answer.verdict).toBe('go');
  });

  it('does not lie down under a machine that cannot bring its balance point ahead of the pivot', () => {
    const long = { lengthM: feet(15), balancePointM: feet(12), wheelbaseM: feet(9) };
    const answer = ask({ build: tilt, machine: long });
    // At the front edge its balance point is at 60 + 144 = 204 in, 9 behind the pivot.
    expect(toInch(reason(answer, 'tilt-stays-up')?.shortM ?? metres(0))).toBeCloseTo(-9, 6);
    expect(answer.verdict).toBe('no-go');
  });
});

describe('room on the deck', () => {
  it('a machine wider than the fenders leave is not for this trailer', () => {
    const answer = ask({ machine: { widthM: inch(81) } });
    expect(answer.verdict).toBe('no-go');
    expect(reason(answer, 'too-wide')).toMatchObject({ between: 'fenders', roomM: inch(80) });
  });

  it('on a deck without fenders the deck’s own width counts', () => {
    const over = trailer({ body: 'deck-over', fenders: { kind: 'none', clearWidthM: null } });
    expect(reason(ask({ build: over, machine: { widthM: inch(83) } }), 'too-wide')?.between).toBe('deck-edges');
  });

  it('too long: no without room for its wheels, said beside it with room, folded in or measured while unknown', () => {
    const long = (wheelbase: number | null) =>
      ask({
        machine: { lengthM: feet(20), wheelbaseM: wheelbase === null ? null : feet(wheelbase), clearanceM: null },
      });
    expect([long(17).verdict, long(8).verdict, long(null).verdict]).toEqual(['no-go', 'go', 'go-after']);
    expect(remedies(long(null))).toContain('fold-in');
  });

  it('an unknown width is said beside the answer', () => {
    expect(ask({ machine: { widthM: null } }).reasons).toContainEqual({
      kind: 'unknown',
      lacks: 'machine-size',
      stops: 'room-check',
    });
    expect(ask({ machine: { widthM: null } }).verdict).toBe('go');
  });
});

describe('tied down', () => {
  it('while nobody said, it tells what is needed and stops nothing', () => {
    const answer = ask({ load: { tieDowns: null } });
    const need = reason(answer, 'tie-downs-unsaid')?.need;
    // 8,000 lb of 11 ft on tracks: half of it, and three.
    expect(need).toMatchObject({ count: 3, because: 'length' });
    expect(toLb(need?.workingLoadKg ?? lb(0))).toBeCloseTo(4_000, 6);
    expect(answer.verdict).toBe('go');
  });

  it('too little goes after more is used, and says how much more', () => {
    const answer = ask({ load: { tieDowns: [{ count: 2, workingLoadKg: lb(2_000), way: 'direct' }] } });
    expect(answer.verdict).toBe('go-after');
    const more = answer.remedies.find((one) => one.kind === 'tie-down');
    expect(more).toMatchObject({ count: 1 });
    expect(toLb(more?.kind === 'tie-down' ? more.workingLoadKg : lb(0))).toBeCloseTo(2_000, 6);
  });

  it('enough of them is no matter for words', () => {
    expect(reason(ask(), 'tie-downs')).toBeNull();
    expect(reason(ask(), 'tie-downs-unsaid')).toBeNull();
  });

  it('cargo that is no machine is not asked about', () => {
    expect(reason(ask({ load: { cargo: [item('pallets', 4_000)], tieDowns: null } }), 'tie-downs-unsaid')).toBeNull();
  });
});
