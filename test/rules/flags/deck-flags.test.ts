import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Machine } from '../../../src/rules/facts/load.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { fit } from '../../../src/rules/fit/fit.js';
import { inch } from '../../../src/rules/units/length.js';
import { build, item, load, tire } from '../sample-facts.js';
import { done, facts, job, machine, trip } from '../sample-trailer.js';

const TODAY = day('2026-05-04');

function decked(more: Partial<BuildSheet['deck']> = {}): BuildSheet {
  return build({
    deck: {
      ...build().deck,
      material: 'pine',
      wood: 'southern-pine',
      woodGrade: 'no-2',
      treated: true,
      plankThicknessM: inch(1.5),
      plankWidthM: inch(7.25),
      crossmemberSpacingM: inch(16),
      ...more,
    },
  });
}

function wheeled(pounds: number, more: Partial<Machine> = {}): Machine {
  return machine('loader', pounds, {
    contact: 'tires',
    contactCount: 4,
    contactLengthM: inch(8),
    contactWidthM: inch(12),
    ...more,
  });
}

const hauled = (pounds: number) =>
  load({ cargo: [item('loader', pounds, { machineId: 'loader' }), item('chains', 160)] });
const hauledOn = (on: string, pounds: number) => trip(on, 30, { machineId: 'loader', load: hauled(pounds) });

function deckFlag(some: Partial<TrailerFacts>, asOf = TODAY) {
  return assess(facts({ builds: [decked()], machines: [wheeled(8_000)], ...some }), asOf).flags.find(
    ({ rule }) => rule === 'deck-plank',
  );
}

describe('deck-plank', () => {
  // 8,000 lb: 3,200 lb a wheel climbing where W7 allows 1,205.
  test('a recent trip past the published value is a limit, with its trips, and clears by itself', () => {
    const trips = [hauledOn('2026-03-20', 8_000), hauledOn('2026-04-10', 8_000), hauledOn('2026-04-12', 3_000)];
    expect(deckFlag({ trips })).toMatchObject({
      severity: 'limit',
      since: '2026-03-20',
      evidence: {
        machineId: 'loader',
        breaks: false,
        stress: { origin: 'design-value', verified: true, boards: 1, stance: 'climbing' },
        trips: [{ endedOn: '2026-03-20' }, { endedOn: '2026-04-10' }],
        jobIds: [],
      },
      clears: [{ kind: 'no-more-until', clearsOn: '2026-07-10' }, { kind: 'correct' }],
    });
    expect(deckFlag({ trips }, day('2026-07-09'))).toBeDefined();
    expect(deckFlag({ trips }, day('2026-07-10'))).toBeUndefined();
  });

  test('a booked machine that would break the planks stops the trailer; one past the design value does not', () => {
    const heavy = {
      machines: [wheeled(27_000)],
      jobs: [job('2026-05-06', { machineId: 'loader', load: hauled(27_000) })],
    };
    expect(deckFlag(heavy)).toMatchObject({ severity: 'stop', evidence: { breaks: true, jobIds: ['job-2026-05-06'] } });
    const over = { jobs: [job('2026-05-06', { machineId: 'loader', load: hauled(8_000) })] };
    expect(deckFlag(over)).toMatchObject({
      severity: 'limit',
      clears: [
        { kind: 'other-trailer', machineId: 'loader' },
        { kind: 'part-of-at-least', part: 'plank' },
        { kind: 'correct' },
      ],
    });
  });

  test('a trip that broke nothing stops nothing now: past trips are at most a limit', () => {
    expect(deckFlag({ trips: [hauledOn('2026-04-10', 27_000)] })?.severity).toBe('limit');
  });

  test('an unverified strength never blocks: red oak is watched', () => {
    const oak = { builds: [decked({ material: 'oak', wood: 'red-oak' })], trips: [hauledOn('2026-04-10', 40_000)] };
    expect(deckFlag(oak)?.severity).toBe('watch');
    const booked = { ...oak, trips: [], jobs: [job('2026-05-06', { machineId: 'loader', load: hauled(40_000) })] };
    expect(deckFlag(booked)?.severity).toBe('watch');
  });

  test('a trip is judged by the deck of its day', () => {
    const thick = {
      ...decked({ plankThicknessM: inch(3.5), crossmemberSpacingM: inch(8) }),
      id: 'thick',
      effectiveFrom: day('2026-04-01'),
    };
    const trips = [hauledOn('2026-03-20', 8_000), hauledOn('2026-04-10', 8_000)];
    expect(deckFlag({ builds: [decked(), thick], trips })).toMatchObject({
      evidence: { trips: [{ endedOn: '2026-03-20' }] },
    });
  });

  test('what can be left off lies beside the machine, what hangs on it presses with it', () => {
    const cargo = (remedy: 'swap' | 'leave-off') =>
      load({
        cargo: [item('loader', 2_900, { machineId: 'loader' }), item('bucket', 400, { machineId: 'loader', remedy })],
      });
    const asked = (remedy: 'swap' | 'leave-off') =>
      deckFlag({ trips: [trip('2026-04-10', 30, { machineId: 'loader', load: cargo(remedy) })] });
    expect(asked('swap')?.severity).toBe('limit');
    expect(asked('leave-off')).toBeUndefined();
  });

  test('rot found since makes a booked machine too much that was just inside', () => {
    const booked = { jobs: [job('2026-05-06', { machineId: 'loader', load: hauled(3_000) })] };
    expect(deckFlag(booked)).toBeUndefined();
    const lines = [
      { code: 'probe', result: null, position: '2', measured: { quantity: 'probe-depth-mm' as const, value: 5 } },
    ];
    const probed = { ...booked, checkRecords: [done('deck-probe', '2026-05-01', { lines })] };
    expect(deckFlag(probed)).toMatchObject({ severity: 'limit', evidence: { stress: { lostM: 0.005 } } });
  });
});

describe('what is not known of deck or machine', () => {
  test('is listed, with what it keeps from working out', () => {
    const some = facts({
      builds: [decked({ crossmemberSpacingM: null, wood: null })],
      machines: [wheeled(8_000, { contactCount: null })],
      trips: [hauledOn('2026-04-10', 8_000)],
    });
    const { unknowns } = assess(some, TODAY);
    for (const lacks of ['crossmember-spacing', 'deck-wood', 'contact-count']) {
      expect(unknowns).toContainEqual({ lacks, stops: 'deck-check' });
    }
    expect(unknowns).toContainEqual({ lacks: 'deck-laid', stops: 'deck-life' });
    expect(deckFlag({ ...some })).toBeUndefined();
  });
});

describe('the fit of a job', () => {
  const ask = (some: Partial<TrailerFacts>, pounds: number) =>
    fit(
      facts({ builds: [decked()], machines: [wheeled(pounds)], ...some }),
      { load: hauled(pounds), startsOn: TODAY, endsOn: TODAY, commercial: false, towVehicle: null, driver: null },
      TODAY,
    );

  test('past the design value: fix first, by spreading it over three boards', () => {
    const found = ask({}, 8_000);
    expect(found.verdict).toBe('go-after');
    expect(found.reasons.find(({ kind }) => kind === 'deck-plank')).toMatchObject({
      machine: 'loader',
      standing: 'over',
    });
    // 3,200 lb against 1,205 lb on one board: 2.66.
    expect(found.remedies).toContainEqual({ kind: 'spread-load', boards: 3 });
  });

  test('inside: nothing is said of the deck', () => {
    expect(ask({}, 3_000).reasons.some(({ kind }) => kind === 'deck-plank' || kind === 'deck-unknown')).toBe(false);
  });

  test('an unknown deck or a machine not on file is said, and keeps nobody in', () => {
    const bare = ask({ builds: [build()] }, 3_000);
    expect(bare.reasons.find(({ kind }) => kind === 'deck-unknown')).toMatchObject({
      lacks: ['deck-material', 'plank-thickness', 'crossmember-spacing', 'plank-width', 'deck-wood'],
    });
    const nobody = ask({ machines: [] }, 3_000);
    expect(nobody.reasons.find(({ kind }) => kind === 'deck-unknown')).toMatchObject({
      machine: 'loader',
      lacks: ['contact', 'contact-count'],
    });
    expect(nobody.verdict).toBe('go');
  });
});

test('every day until it is to be looked at again reads the same, decks of the yard and old trips included', () => {
  const laid = day('2021-02-11');
  const life = (id: string, laidOn: typeof laid, endedOn: typeof laid | null) => ({
    partId: id,
    trailerId: `trailer-${id}`,
    laidOn,
    endedOn,
    wornOut: endedOn !== null,
    material: 'pine' as const,
    wood: null,
    treated: true,
    stored: 'open' as const,
  });
  const some = facts({
    builds: [decked()],
    machines: [wheeled(8_000)],
    trips: [hauledOn('2026-03-20', 8_000), hauledOn('2026-04-10', 8_000)],
    parts: [{ ...tire('deck', {}, laid), id: 'deck', kind: 'deck', position: null, tire: null }],
    decks: [
      life('a', day('2015-01-01'), day('2021-06-01')),
      life('b', laid, null),
      life('deck', laid, null),
      life('c', day('2019-07-01'), day('2026-09-02')),
    ],
  });
  let asOf = TODAY;
  for (let woken = 0; woken < 8; woken++) {
    const kept = assess(some, asOf);
    const next = kept.wakeOn ?? daysAfter(asOf, 200);
    for (let on = daysAfter(asOf, 1); on < next; on = daysAfter(on, 1)) {
      expect({ ...assess(some, on), asOf }).toEqual(kept);
    }
    asOf = next;
  }
});
