import type { TrailerFacts } from '../rules/facts/trailer-facts.js';
import { BUILDS } from './build-store.js';
import { CheckKindStore } from './check-kind-store.js';
import { CHECK_RECORDS } from './check-store.js';
import { PLANNED_ONCE, type YardTx } from './database.js';
import { DecksOfYard, deckLives } from './deck-lives.js';
import { standingList } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { HOLD } from './hold-store.js';
import { JOB } from './job-store.js';
import { jsonList, jsonRows } from './json-rows.js';
import { MachineStore } from './machine-store.js';
import { PARTS } from './part-store.js';
import { READINGS } from './reading-store.js';
import { TRAILER } from './trailer-shape.js';
import { CARGO_COLUMNS, type CargoColumns, TRIP_COLUMNS, type TripColumns, tripsFrom } from './trip-columns.js';
import { YardStore } from './yard-store.js';

/** Trailers read at a time: with a thousand trips each still some tens of megabytes. */
const BATCH = 100;

/** What one query brings of each trailer; the rest of its facts belongs to the whole yard. */
type OwnFacts = Omit<TrailerFacts, 'checkKinds' | 'machines' | 'decks' | 'policy'>;
type OwnFactsRead = Omit<OwnFacts, 'trips'> & { readonly trips: TripColumns; readonly cargo: CargoColumns };

const OWN_FACTS = Prisma.sql`${Prisma.raw(PLANNED_ONCE)} json_build_object(
  'trailer', ${TRAILER},
  'builds', ${standingList(BUILDS)},
  'parts', ${standingList(PARTS)},
  'trips', ${TRIP_COLUMNS},
  'cargo', ${CARGO_COLUMNS},
  'readings', ${standingList(READINGS)},
  'jobs', ${jsonList(
    JOB,
    Prisma.sql`from job where job.yard_id = trailer.yard_id and job.trailer_id = trailer.id`,
    Prisma.sql`job.starts_on, job.id`,
  )},
  'checkRecords', ${standingList(CHECK_RECORDS)},
  'holds', ${jsonList(
    HOLD,
    Prisma.sql`from hold where hold.yard_id = trailer.yard_id and hold.trailer_id = trailer.id`,
    Prisma.sql`hold.opened_on, hold.id`,
  )})`;

const kinds = new CheckKindStore();
const machines = new MachineStore();
const yards = new YardStore();

/** All that stands about one trailer; null when the yard has no such trailer. */
export async function factsOf(tx: YardTx, trailerId: string): Promise<TrailerFacts | null> {
  for await (const facts of factsOfAll(tx, [trailerId])) return facts;
  return null;
}

/**
 * The facts of many trailers in the order of their ids, one batch in memory at a time. Without the decks of the yard,
 * which no fit asks about, reading a few costs the same however many trailers the yard has.
 */
export async function* factsOfAll(
  tx: YardTx,
  ids?: readonly string[],
  { withDecks = true }: { readonly withDecks?: boolean } = {},
): AsyncGenerator<TrailerFacts> {
  const policy = (await yards.get(tx)).policy;
  const checkKinds = await kinds.list(tx);
  const decks = new DecksOfYard(withDecks ? await deckLives(tx) : []);
  const among = ids ? Prisma.sql`and trailer.id = any(${[...ids]}::uuid[])` : Prisma.empty;
  let after = '00000000-0000-0000-0000-000000000000';
  while (true) {
    const rows = await jsonRows<OwnFactsRead>(
      tx,
      OWN_FACTS,
      Prisma.sql`from trailer where trailer.yard_id = ${tx.yardId}::uuid and trailer.id > ${after}::uuid ${among}
        order by trailer.id limit ${BATCH}`,
    );
    const batch = rows.map(({ trips, cargo, ...own }): OwnFacts => ({ ...own, trips: tripsFrom(trips, cargo) }));
    const named = new Set(batch.flatMap(machinesNamed));
    const found = named.size === 0 ? [] : await machines.findWithReplacements(tx, [...named]);
    for (const own of batch) {
      const machinesOfLine = lineOf(machinesNamed(own), found);
      yield { ...own, checkKinds, machines: machinesOfLine, decks: decks.forTrailer(own), policy };
    }
    const last = batch.at(-1);
    if (last === undefined || batch.length < BATCH) return;
    after = last.trailer.id;
  }
}

function machinesNamed(facts: OwnFacts): readonly string[] {
  return [...facts.trips, ...facts.jobs].flatMap((haul) =>
    [haul.machineId, ...haul.load.cargo.map((item) => item.machineId)].filter((id) => id !== null),
  );
}

/** Of the machines found for a whole batch, those that one trailer's facts name, and those that replaced them. */
function lineOf(named: readonly string[], found: TrailerFacts['machines']): TrailerFacts['machines'] {
  const line = new Set(named);
  let grew = true;
  while (grew) {
    grew = false;
    for (const machine of found) {
      if (machine.replacesMachineId !== null && line.has(machine.replacesMachineId) && !line.has(machine.id)) {
        line.add(machine.id);
        grew = true;
      }
    }
  }
  return found.filter((machine) => line.has(machine.id));
}
