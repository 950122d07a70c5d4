import { Injectable } from '@nestjs/common';
import type { Trailer } from '../rules/facts/trailer.js';
import type { TrailerFacts } from '../rules/facts/trailer-facts.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { factsOf, factsOfAll } from './facts-query.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import type { New } from './recorded.js';
import { KEPT_TRAILER } from './trailer-shape.js';

/** A trailer with what the yard keeps about it beside the rules' facts. */
export interface KeptTrailer extends Trailer {
  readonly registrationPlate: string | null;
  readonly boughtForCents: number | null;
  readonly note: string | null;
}

export type TrailerPatch = Partial<Omit<KeptTrailer, 'id'>>;

type NewTrailer = New<Trailer> & Partial<Pick<KeptTrailer, 'registrationPlate' | 'boughtForCents' | 'note'>>;

@Injectable()
export class TrailerStore {
  /**
   * Keeps every other writer of this trailer's facts and results out until the transaction ends. Take it before
   * reading the facts that a result is made from, or two writers would each miss what the other wrote.
   * False when the yard has no such trailer.
   */
  async lock(tx: YardTx, trailerId: string): Promise<boolean> {
    const rows = await tx.$queryRaw<
      unknown[]
    >`select 1 from trailer where yard_id = ${tx.yardId}::uuid and id = ${trailerId}::uuid for no key update`;
    return rows.length === 1;
  }

  /** The same for several, always in one order, so that two writers never wait for each other. Returns those there are. */
  async lockMany(tx: YardTx, trailerIds: readonly string[]): Promise<readonly string[]> {
    const rows = await tx.$queryRaw<{ id: string }[]>`
      select id::text from trailer where yard_id = ${tx.yardId}::uuid and id = any(${[...trailerIds]}::uuid[])
      order by id for no key update`;
    return rows.map((row) => row.id);
  }

  /** Keeps a yard number from being given twice at once: who comes second waits, and then finds it taken. */
  async holdNumber(tx: YardTx, yardNumber: string): Promise<void> {
    await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${`${tx.yardId} ${yardNumber.toLowerCase()}`}, 0))`;
  }

  /** All that stands about one trailer; null when the yard has no such trailer. */
  async findFacts(tx: YardTx, trailerId: string): Promise<TrailerFacts | null> {
    return factsOf(tx, trailerId);
  }

  /**
   * The facts of many trailers in the order of their ids, a batch at a time: memory stays bounded however many there
   * are. Without `ids`, of every trailer of the yard; ids of no trailer are passed over.
   */
  findFactsOfAll(tx: YardTx, ids?: readonly string[]): AsyncGenerator<TrailerFacts> {
    return factsOfAll(tx, ids);
  }

  /** The facts that answers about hauls rest on, by trailer; ids of no trailer are passed over. */
  async findFactsForFits(tx: YardTx, ids: readonly string[]): Promise<ReadonlyMap<string, TrailerFacts>> {
    const found = new Map<string, TrailerFacts>();
    if (ids.length === 0) return found;
    for await (const facts of factsOfAll(tx, ids, { withDecks: false })) found.set(facts.trailer.id, facts);
    return found;
  }

  async find(tx: YardTx, trailerId: string): Promise<KeptTrailer | null> {
    return (await this.read(tx, Prisma.sql`and trailer.id = ${trailerId}::uuid`))[0] ?? null;
  }

  /** Whatever its letters: on a drawbar `t-07` is T-07. */
  async findByNumber(tx: YardTx, yardNumber: string): Promise<KeptTrailer | null> {
    return (await this.read(tx, Prisma.sql`and lower(trailer.yard_number) = lower(${yardNumber})`))[0] ?? null;
  }

  /** The numbers painted on what the yard has in service. */
  async numbersInService(tx: YardTx): Promise<readonly string[]> {
    const rows = await tx.trailer.findMany({
      where: { yardId: tx.yardId, status: 'in-service' },
      select: { yardNumber: true },
      orderBy: { yardNumber: 'asc' },
    });
    return rows.map((row) => row.yardNumber);
  }

  /** Every trailer of the yard by its number, sold and scrapped ones too. */
  async list(tx: YardTx): Promise<readonly KeptTrailer[]> {
    return this.read(tx, Prisma.empty);
  }

  /** Returns the id. The number must be free in the yard. */
  async insert(tx: YardTx, trailer: NewTrailer): Promise<string> {
    const id = trailer.id ?? newId();
    await tx.trailer.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          yardNumber: trailer.yardNumber,
          name: trailer.name,
          vin: trailer.vin,
          status: trailer.status,
          boughtOn: toColumn(trailer.boughtOn),
          registrationExpiresOn: toColumn(trailer.registrationExpiresOn),
          insuranceExpiresOn: toColumn(trailer.insuranceExpiresOn),
          stored: trailer.stored,
          registrationPlate: trailer.registrationPlate ?? null,
          boughtForCents: trailer.boughtForCents ?? null,
          note: trailer.note ?? null,
        },
      ],
    });
    return id;
  }

  /** Changes the fields named. False when the yard has no such trailer. */
  async update(tx: YardTx, trailerId: string, patch: TrailerPatch): Promise<boolean> {
    const { count } = await tx.trailer.updateMany({
      where: { yardId: tx.yardId, id: trailerId },
      data: {
        yardNumber: patch.yardNumber,
        name: patch.name,
        vin: patch.vin,
        status: patch.status,
        boughtOn: toColumn(patch.boughtOn),
        registrationExpiresOn: toColumn(patch.registrationExpiresOn),
        insuranceExpiresOn: toColumn(patch.insuranceExpiresOn),
        stored: patch.stored,
        registrationPlate: patch.registrationPlate,
        boughtForCents: patch.boughtForCents,
        note: patch.note,
      },
    });
    return count === 1;
  }

  private async read(tx: YardTx, where: Prisma.Sql): Promise<KeptTrailer[]> {
    return jsonRows<KeptTrailer>(
      tx,
      KEPT_TRAILER,
      Prisma.sql`from trailer where trailer.yard_id = ${tx.yardId}::uuid ${where} order by trailer.yard_number`,
    );
  }
}
