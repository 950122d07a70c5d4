import type { CivilDate } from './calendar/civil-date.js';
import type { DeckOutlook } from './deck/deck-outlook.js';
import type { TrailerFacts } from './facts/trailer-facts.js';
import type { Flag } from './flags/flag.js';
import { recentTrips } from './flags/flag-context.js';
import { raiseFlags } from './flags/flags.js';
import { deckLifeOf } from './history/deck-life.js';
import { type HubLife, hubLives } from './history/hub-lives.js';
import { type TrailerOn, trailerOn } from './history/trailer-on.js';
import { coldPressuresFound } from './inspection/cold-pressures.js';
import { type Due, type Schedule, scheduleOn } from './inspection/due.js';
import { type ProbedDeck, probedDeck } from './inspection/soft-boards.js';
import { type UseSoFar, useSoFar } from './inspection/use-so-far.js';
import { type WearTrend, wearTrends } from './inspection/wear-trends.js';
import { type Contradiction, contradictions } from './trailer/contradictions.js';
import type { Ratings } from './trailer/ratings.js';
import type { Kilometres } from './units/distance.js';
import { type Unknown, unknownsOf } from './unknowns.js';
import { wakeOn } from './wake-on.js';

/** What the facts of one trailer come to on one day. */
export interface Assessment {
  readonly asOf: CivilDate;
  /** `ready`, `due` (work wanted before or during its next job), `down` (held or stopped), `gone` (sold or scrapped). */
  readonly readiness: 'ready' | 'due' | 'down' | 'gone';
  readonly ratings: Ratings | null;
  readonly contradictions: readonly Contradiction[];
  readonly due: readonly Due[];
  readonly flags: readonly Flag[];
  /** How much of their rating life the bearings of each hub on record have used up. Never a due date. */
  readonly hubLives: readonly HubLife[];
  /**
   * What is known of the life of the deck that lies now. `soft` boards beat any `outlook`: the forecast is then ignored.
   * The outlook is null where its laying is unknown or it is steel; `deckDates` reads dates from it for a day.
   */
  readonly deckLife: { readonly outlook: DeckOutlook | null; readonly probed: ProbedDeck };
  /** How each part that was measured more or less often wears, and when its limit comes. */
  readonly wear: readonly WearTrend[];
  readonly use: {
    readonly totalKm: Kilometres | null;
    readonly kmPerDay: number | null;
    readonly trips: number;
    readonly lastTripOn: CivilDate | null;
  };
  /** Facts nobody has given, and what each keeps us from working out. */
  readonly unknowns: readonly Unknown[];
  /**
   * From this day on any of this may read differently with no new fact; null when never. On every day before it the
   * answer is the same, but for `asOf` and for yard days that have passed.
   */
  readonly wakeOn: CivilDate | null;
}

/**
 * The heart of Axlebook: from the facts of one trailer to what they come to on one day.
 * Pure: the same facts and day give the same answer, in a server, a browser or a test; the order of lists does not matter.
 *
 *     facts, day → trailerOn    the facts known by then, in the order of time
 *                → useSoFar     distance behind and ahead, last record of each check
 *                → scheduleOn   when each check falls due
 *                → wearTrends   when what was measured comes to its limit
 *                → raiseFlags   what is past a limit
 *                → wakeOn       until when all of it holds
 */
export function assess(facts: TrailerFacts, asOf: CivilDate): Assessment {
  const trailer = trailerOn(facts, asOf);
  const use = useSoFar(trailer);
  const isGone = facts.trailer.status !== 'in-service';
  const schedule = isGone ? NOTHING_DUE : scheduleOn(trailer, use);
  const { due } = schedule;
  const pressures = coldPressuresFound(trailer);
  const deckLife = { outlook: isGone ? null : deckLifeOf(trailer), probed: probedDeck(trailer) };
  const { probed } = deckLife;
  const wear = isGone ? [] : wearTrends(trailer, use);
  const flags = isGone
    ? []
    : raiseFlags({ trailer, use, due, pressures, probed, wear, recentTrips: recentTrips(trailer) });
  return {
    asOf,
    readiness: isGone ? 'gone' : readinessOf(trailer, due, flags),
    ratings: trailer.ratingsOn(asOf),
    contradictions: trailer.build === null ? [] : contradictions(trailer.build, trailer.tires),
    due,
    flags,
    hubLives: isGone ? [] : hubLives(trailer, use.travelled),
    deckLife,
    wear,
    use: useShown(trailer, use),
    unknowns: unknownsOf(trailer, use, due),
    wakeOn: wakeOn(trailer, use, schedule, { flags, deck: deckLife.outlook, wear }),
  };
}

/** A trailer that is sold or scrapped asks for nothing; its history stays. */
const NOTHING_DUE: Schedule = { due: [], turnsOn: [] };

function readinessOf(trailer: TrailerOn, due: readonly Due[], flags: readonly Flag[]): Assessment['readiness'] {
  if (flags.some((flag) => flag.severity === 'stop')) return 'down';
  const nextJob = trailer.jobs[0];
  const wanted = due.some(
    ({ state, dueOn, firstJobAtRisk }) =>
      state === 'overdue' ||
      state === 'never-done' ||
      (state === 'due-soon' && dueOn === null) ||
      (nextJob !== undefined && firstJobAtRisk?.jobId === nextJob.id),
  );
  return wanted ? 'due' : 'ready';
}

function useShown(trailer: TrailerOn, use: UseSoFar): Assessment['use'] {
  return {
    totalKm: use.travelled.known ? use.travelled.total : null,
    kmPerDay: use.toCome.kmPerDay,
    trips: trailer.trips.length,
    lastTripOn: trailer.tripsByEnd.at(-1)?.endedOn ?? null,
  };
}
