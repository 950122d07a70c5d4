import type { CivilDate } from '../calendar/civil-date.js';
import { type PlankCheck, type PlankStress, shareOf } from '../deck/plank-check.js';
import type { BuildSheet } from '../facts/build-sheet.js';
import type { Job, Trip } from '../facts/use.js';
import { type MachineOnDeck, machinesOnDeck } from '../history/machines-on-deck.js';
import { type Metres, metres } from '../units/length.js';
import type { Clearance } from './clearance.js';
import type { Flag, Severity } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';

/**
 * A machine whose wheels, tracks or pads press a plank past its strength, on recent trips or booked jobs.
 *
 * `stop`: booked, and even shared evenly its weight passes the average strength of faultless wood of this kind (Wood
 * Handbook). `limit`: past the published design value (NDS; Southern Pine Use Guide). `watch`: past a strength that is
 * unverified or only a bound. A trip is judged by the planks of its day as sawn, a job by what probing left of them.
 */
export function deckPlankFlags(context: FlagContext): readonly Flag[] {
  const { trailer, recentTrips, probed } = context;
  const done = past(context, recentTrips, (trip) => trailer.buildOn(trip.startedOn), metres(0));
  const booked = past(context, trailer.jobs, (job) => trailer.buildOn(job.startsOn), probed.lostM);
  const worst = [...booked, ...done].reduce<Found<Trip | Job> | null>(
    (most, next) => (most === null || isWorse(next.on.check, most.on.check) ? next : most),
    null,
  );
  if (worst === null || worst.on.check.worst === null) return [];
  return [
    {
      key: 'deck-plank',
      rule: 'deck-plank',
      severity: severityOf(done, booked),
      since: done[0]?.haul.startedOn ?? null,
      evidence: {
        kind: 'deck-plank',
        machineId: worst.on.machineId,
        stress: worst.on.check.worst,
        breaks: worst.on.check.standing === 'breaks',
        trips: done.map(({ haul }) => ({ tripId: haul.id, endedOn: haul.endedOn })),
        jobIds: booked.map(({ haul }) => haul.id),
      },
      clears:
        done.length > 0 ? clearedByTime(done.map(({ haul }) => haul)) : clearedByChange(worst.on, worst.on.check.worst),
    },
  ];
}

interface Found<Haul> {
  readonly haul: Haul;
  readonly on: MachineOnDeck;
}

/** Hauls with a machine past the planks' strength, each with its worst machine. Like hauls are worked out once. */
function past<Haul extends Trip | Job>(
  { trailer }: FlagContext,
  hauls: readonly Haul[],
  buildFor: (haul: Haul) => BuildSheet | null,
  lostM: Metres,
): readonly Found<Haul>[] {
  const known: { readonly haul: Haul; readonly build: BuildSheet; readonly on: MachineOnDeck | null }[] = [];
  const found: Found<Haul>[] = [];
  for (const haul of hauls) {
    const build = buildFor(haul);
    if (build === null || build.deck.material === null) continue;
    let same = known.find((one) => one.build === build && presses(one.haul, haul));
    if (same === undefined) {
      same = { haul, build, on: worstPast(machinesOnDeck(haul, build, trailer.facts.machines, lostM)) };
      if (known.length < KEPT_HAULS) known.push(same);
    }
    if (same.on !== null) found.push({ haul, on: same.on });
  }
  return found;
}

/** Unlike hauls remembered: enough for a trailer's usual machines, and too few for looking them up to cost anything. */
const KEPT_HAULS = 8;

/** Whether two hauls put the same machines, as heavy, on the deck. */
function presses(a: Trip | Job, b: Trip | Job): boolean {
  const { cargo } = a.load;
  if (a.machineId !== b.machineId || cargo.length !== b.load.cargo.length) return false;
  return b.load.cargo.every((item, at) => {
    const other = cargo[at];
    return item.machineId === other?.machineId && item.massKg === other.massKg && item.remedy === other.remedy;
  });
}

function worstPast(found: readonly MachineOnDeck[]): MachineOnDeck | null {
  let worst: MachineOnDeck | null = null;
  for (const one of found) {
    if (PAST.includes(one.check.standing) && (worst === null || isWorse(one.check, worst.check))) worst = one;
  }
  return worst;
}

const PAST: readonly PlankCheck['standing'][] = ['breaks', 'over', 'doubtful'];

function isWorse(a: PlankCheck, b: PlankCheck): boolean {
  if (a.standing === b.standing) return shareOf(a) > shareOf(b);
  return PAST.indexOf(a.standing) < PAST.indexOf(b.standing);
}

function severityOf(done: readonly Found<Trip>[], booked: readonly Found<Job>[]): Severity {
  if (booked.some(({ on }) => on.check.standing === 'breaks')) return 'stop';
  return [...done, ...booked].some(({ on }) => on.check.standing !== 'doubtful') ? 'limit' : 'watch';
}

function clearedByChange(
  { machineId }: MachineOnDeck,
  { contactN }: PlankStress,
): readonly [Clearance, ...Clearance[]] {
  return [
    { kind: 'other-trailer', machineId },
    { kind: 'part-of-at-least', part: 'plank', ratingN: contactN },
    { kind: 'correct', fact: 'build-sheet' },
  ];
}

/** The last day of each trip the flag rests on: it reads otherwise once one of them is old. */
export function deckTripDays(flags: readonly Flag[]): readonly CivilDate[] {
  return flags.flatMap(({ evidence }) =>
    evidence.kind === 'deck-plank' ? evidence.trips.map((trip) => trip.endedOn) : [],
  );
}
