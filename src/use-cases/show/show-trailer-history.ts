import { Injectable } from '@nestjs/common';
import type { CheckRecord } from '../../rules/facts/check.js';
import type { Part } from '../../rules/facts/part.js';
import type { MeterReading, Trip } from '../../rules/facts/use.js';
import { CheckStore } from '../../store/check-store.js';
import { Database } from '../../store/database.js';
import { PartStore } from '../../store/part-store.js';
import { ReadingStore } from '../../store/reading-store.js';
import type { HistoryOf } from '../../store/recorded.js';
import { type KeptTrailer, TrailerStore } from '../../store/trailer-store.js';
import { TripStore } from '../../store/trip-store.js';
import { ChoicesView } from '../../store/views/choices.view.js';
import { type HistoryEntry, HistoryView } from '../../store/views/history.view.js';
import type { ListPage } from '../../store/views/paging.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** A fact as told; `takenBack`: somebody said later that it never was. */
type Told<Fact> = HistoryOf<Fact> & { readonly takenBack: boolean };

export interface TrailerHistoryScreen {
  readonly trailer: KeptTrailer;
  readonly page: number;
  readonly perPage: number;
  readonly entries: ListPage<HistoryEntry>;
  readonly trips: ListPage<Told<Trip>>;
  readonly readings: readonly Told<MeterReading>[];
  readonly checks: readonly Told<CheckRecord>[];
  readonly parts: readonly Told<Part>[];
  readonly machineNames: ReadonlyMap<string, string>;
  readonly checkKindNames: ReadonlyMap<string, string>;
}

const ENTRIES_A_PAGE = 40;

/** All that was ever recorded of one trailer, what was mended or taken back included, latest first. */
@Injectable()
export class ShowTrailerHistory {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly trips: TripStore,
    private readonly readings: ReadingStore,
    private readonly checks: CheckStore,
    private readonly parts: PartStore,
    private readonly history: HistoryView,
    private readonly choices: ChoicesView,
  ) {}

  async run(
    caller: Caller,
    input: { readonly trailerId: string; readonly page: number },
  ): Promise<Outcome<TrailerHistoryScreen>> {
    const { trailerId, page } = input;
    return this.database.inYard(caller.yardId, async (tx) => {
      const trailer = await this.trailers.find(tx, trailerId);
      if (trailer === null) return notFound('trailer');
      const trips = latestFirst(await this.trips.history(tx, trailerId), (trip) => trip.startedOn);
      const from = (page - 1) * ENTRIES_A_PAGE;
      return done({
        trailer,
        page,
        perPage: ENTRIES_A_PAGE,
        entries: await this.history.ofTrailer(tx, trailerId, { page, perPage: ENTRIES_A_PAGE }),
        trips: { rows: trips.slice(from, from + ENTRIES_A_PAGE), total: trips.length },
        readings: latestFirst(await this.readings.history(tx, trailerId), (reading) => reading.takenOn),
        checks: latestFirst(await this.checks.history(tx, trailerId), (record) => record.doneOn),
        parts: latestFirst(await this.parts.history(tx, trailerId), (part) => part.fittedOn ?? ''),
        machineNames: await this.choices.machineNames(tx),
        checkKindNames: await this.choices.checkKindNames(tx),
      });
    });
  }
}

/** Rows that only take another back hold no fact of their own: they show on the row they took back. */
function latestFirst<Fact extends { readonly id: string }>(
  rows: readonly HistoryOf<Fact>[],
  on: (fact: Fact) => string,
): readonly Told<Fact>[] {
  const takenBack = new Set(rows.filter((row) => row.withdrawn).map((row) => row.correctsId));
  return rows
    .filter((row) => !row.withdrawn)
    .map((row) => ({ ...row, takenBack: takenBack.has(row.fact.id) }))
    .sort((a, b) => (on(a.fact) === on(b.fact) ? +b.recordedAt - +a.recordedAt : on(a.fact) < on(b.fact) ? 1 : -1));
}
