import { addDays, type CivilDate, daysBetween } from '../../src/rules/calendar/civil-date.js';
import type { Axle } from '../../src/rules/facts/build-sheet.js';
import type { CheckedLine, CheckKind, CheckRecord, MeasuredQuantity, SheetLine } from '../../src/rules/facts/check.js';
import type { TrailerFacts } from '../../src/rules/facts/trailer-facts.js';
import { applies } from '../../src/rules/inspection/applies.js';
import { dueCheck } from '../../src/rules/inspection/due.js';
import { psi } from '../../src/rules/units/pressure.js';
import { spread } from './spread.js';

/** A check that this yard let slip: from this many days ago nobody did it. */
interface Lapse {
  readonly yardNumber: string;
  readonly code: string;
  readonly sinceDaysAgo: number;
}

/** What the demo yard should be told about. Everything else is done when it falls due. */
const DEMO_LAPSES: readonly Lapse[] = [
  { yardNumber: 'T-12', code: 'annual-inspection', sinceDaysAgo: 380 },
  { yardNumber: 'T-02', code: 'hub-repack', sinceDaysAgo: 358 },
  { yardNumber: 'T-06', code: 'annual-inspection', sinceDaysAgo: 357 },
  { yardNumber: 'T-10', code: 'brake-inspect', sinceDaysAgo: 240 },
  { yardNumber: 'T-03', code: 'deck-probe', sinceDaysAgo: 60 },
];

/** Found soft on its last look, four days ago. */
export const SOFT_TIRES = { yardNumber: 'T-12', coldPsi: 50, daysAgo: 4 } as const;

/** The days before today on which a check is done a little early rather than late. */
const EARLY_DAYS = 4;

/**
 * Two years of checks, each done when Axlebook itself would have asked for it. `facts` holds no checks and no jobs yet.
 * Checks behind the hub come first, since their wheel-off asks for others.
 */
export function demoChecks(facts: TrailerFacts, from: CivilDate, today: CivilDate): readonly CheckRecord[] {
  const build = facts.builds[0];
  if (build === undefined) return [];
  const kinds = facts.checkKinds.filter((kind) => applies(kind.appliesTo, build));
  const hubFirst = kinds.toSorted((a, b) => Number(b.work.bundle === 'hub') - Number(a.work.bundle === 'hub'));
  const records: CheckRecord[] = [];
  for (const kind of hubFirst) records.push(...passesOf(kind, { ...facts, checkRecords: records }, from, today));
  return records;
}

function passesOf(kind: CheckKind, facts: TrailerFacts, from: CivilDate, today: CivilDate): CheckRecord[] {
  const { yardNumber } = facts.trailer;
  const lapse = DEMO_LAPSES.find((each) => each.yardNumber === yardNumber && each.code === kind.code);
  const last = addDays(today, -(lapse?.sinceDaysAgo ?? 1));
  const passes: CheckRecord[] = [];
  for (let day = from; day <= last; ) {
    const due = dueCheck(kind, { ...facts, checkRecords: [...facts.checkRecords, ...passes] }, day);
    const wanted = due.state === 'never-done' || (due.dueOn !== null && due.dueOn <= addDays(day, EARLY_DAYS));
    if (wanted) passes.push(pass(kind, facts, day, from, passes.length));
    const next = addDays(day, wanted || due.dueOn === null ? 3 : stepTowards(due.dueOn, day));
    // The last day is always looked at, whatever the step.
    day = next > last && day < last ? last : next;
  }
  // A lapse is counted from the last pass, so that the demo shows it on the same day whenever it is loaded.
  if (lapse !== undefined && passes.at(-1)?.doneOn !== last) passes.push(pass(kind, facts, last, from, passes.length));
  return passes;
}

/** Half of the way there, so that a forecast which grows nearer is met; a forecast of a far day is asked again in a month. */
function stepTowards(dueOn: CivilDate, day: CivilDate): number {
  return Math.min(30, Math.max(3, Math.floor(daysBetween(day, dueOn) / 2)));
}

function pass(kind: CheckKind, facts: TrailerFacts, doneOn: CivilDate, from: CivilDate, count: number): CheckRecord {
  return {
    id: `${facts.trailer.id}/${kind.code}/${count}`,
    checkKindId: kind.id,
    doneOn,
    outcome: 'pass',
    byPersonId: null,
    lines: kind.lines.flatMap((line) => checkedLines(line, facts, { day: daysBetween(from, doneOn), doneOn })),
    inspectedBy: kind.proof === null ? null : 'own',
    proofOnTrailer: kind.proof === null ? null : true,
    costCents: costOf(kind, spread(`${facts.trailer.yardNumber} ${kind.code} ${doneOn} cost`)()),
  };
}

/** What the shop asks for an hour (our invention). Looking around the yard costs nothing that anybody writes down. */
const SHOP_HOUR_CENTS = 9_500;

function costOf(kind: CheckKind, scatter: number): number | null {
  return kind.work.place === 'shop' ? Math.round(kind.work.hours * SHOP_HOUR_CENTS * (0.9 + 0.3 * scatter)) : null;
}

/** A day of the demo yard, and how many it is from the first. */
interface DemoDay {
  readonly day: number;
  readonly doneOn: CivilDate;
}

function checkedLines(line: SheetLine, facts: TrailerFacts, on: DemoDay): CheckedLine[] {
  const { quantity } = line;
  if (quantity === null) return [{ code: line.code, result: 'ok', position: null, measured: null }];
  return positionsOf(quantity, facts).map((position) => ({
    code: line.code,
    result: 'ok',
    position,
    measured: { quantity, value: measuredOn(on, quantity, position, facts) },
  }));
}

function positionsOf(quantity: MeasuredQuantity, facts: TrailerFacts): readonly (string | null)[] {
  switch (quantity) {
    case 'cold-pressure-kpa':
    case 'tread-depth-mm':
      return facts.parts.filter((part) => part.kind === 'tire').map((part) => part.position);
    case 'magnet-mm':
    case 'magnet-a':
      return hubs(facts, (axle) => axle.brakes === 'electric');
    case 'lining-mm':
      return hubs(facts, (axle) => axle.brakes !== 'none');
    case 'end-play-mm':
    case 'temperature-c':
      return hubs(facts, () => true);
    default:
      return [null];
  }
}

function hubs(facts: TrailerFacts, which: (axle: Axle) => boolean): readonly string[] {
  return (facts.builds[0]?.axles ?? []).filter(which).flatMap(({ number }) => [`${number}L`, `${number}R`]);
}

/** Readings as a gauge would show them: wear with the way gone, with the scatter of a hand-held gauge (our invention). */
function measuredOn(on: DemoDay, quantity: MeasuredQuantity, position: string | null, facts: TrailerFacts): number {
  const scatter = spread(`${facts.trailer.yardNumber} ${quantity} ${position} ${on.day}`)() - 0.5;
  // No two wheels wear alike.
  const own = 0.8 + 0.4 * spread(`${facts.trailer.yardNumber} ${quantity} ${position}`)();
  const worn = (mmPer1000Km: number) => ((own * mmPer1000Km) / 1000) * drivenKm(facts, on.doneOn);
  switch (quantity) {
    case 'cold-pressure-kpa':
      return Math.round((facts.builds[0]?.plate.coldPressureKpa ?? psi(80)) + (scatter + 0.5) * 8);
    case 'tread-depth-mm':
      return round(8.7 - worn(0.3) + scatter * 0.3);
    case 'lining-mm':
      return round(6.2 - worn(0.25) + scatter * 0.2);
    case 'magnet-mm':
      return round(14.5 - worn(0.2) + scatter * 0.2);
    case 'magnet-a':
      return round(3 + scatter * 0.2);
    case 'chain-mm':
      return round(9.5 - worn(0.02) + scatter * 0.05);
    case 'end-play-mm':
      return round(0.08 + scatter * 0.05);
    case 'battery-v':
      return round(12.75 - on.day * 0.0005 + scatter * 0.2);
    case 'torque-nm':
      return facts.builds[0]?.wheels.nutTorqueNm ?? 150;
    case 'temperature-c':
      return Math.round(30 + scatter * 8);
    case 'probe-depth-mm':
      return round(Math.max(0, 1.5 + on.day * 0.002 + scatter));
    case 'board-sag-mm':
      return round(Math.max(0, 4 + on.day * 0.002 + scatter));
  }
}

function drivenKm(facts: TrailerFacts, by: CivilDate): number {
  return facts.trips.filter((trip) => trip.endedOn <= by).reduce((sum, trip) => sum + (trip.distanceKm ?? 0), 0);
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
