import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Handover } from '../rules/facts/handover.js';
import type { Photo } from './check-store.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, standing, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import { type HistoryOf, type New, type Recorded, recordedColumns } from './recorded.js';

/** The photos of each thing are laid to it by its place in the list. */
const SEEN = Prisma.sql`(select coalesce(json_agg(one.value || jsonb_build_object('photoIds',
    (select coalesce(jsonb_agg(photo.id order by photo.id), '[]') from handover_photo photo
     where photo.yard_id = handover.yard_id and photo.handover_id = handover.id and photo.place = one.ordinality - 1))
  order by one.ordinality), '[]')
  from jsonb_array_elements(handover.seen) with ordinality one)`;

const HANDOVER = Prisma.sql`json_build_object(
  'id', handover.id,
  'trailerId', handover.trailer_id,
  'jobId', handover.job_id,
  'way', handover.way,
  'outId', handover.out_id,
  'on', handover.handed_on,
  'customer', handover.customer,
  'byName', handover.by_name,
  'seen', ${SEEN},
  'hitch', handover.hitch,
  'signature', case when handover.signed_name is not null or jsonb_array_length(handover.signed_strokes) > 0
    then json_build_object('name', handover.signed_name, 'strokes', handover.signed_strokes) end)`;

export const HANDOVERS: FactTable<Handover> = {
  table: 'handover',
  shape: HANDOVER,
  order: Prisma.sql`handover.handed_on, handover.id`,
  needed: ['way', 'handed_on', 'customer', 'by_name'],
};

const IS_OUT = Prisma.sql`handover.way = 'out' and ${standing('handover')} and not exists (
  select from handover back where back.yard_id = handover.yard_id and back.trailer_id = handover.trailer_id
    and back.out_id = handover.id and not exists (
      select from handover later where later.yard_id = back.yard_id and later.trailer_id = back.trailer_id
        and later.corrects_id = back.id))`;

/** A handover about to be kept; its photos come beside it, each with the place of what it shows. */
export type NewHandover = Omit<New<Handover>, 'trailerId' | 'seen'> & {
  readonly seen: readonly Omit<Handover['seen'][number], 'photoIds'>[];
  readonly byPersonId: string | null;
};

export interface PhotoOfPlace extends Photo {
  readonly place: number;
}

/** A trailer that is with a customer. */
export interface OutNow {
  readonly trailerId: string;
  readonly handoverId: string;
  readonly jobId: string | null;
  readonly customer: string;
  readonly on: CivilDate;
}

@Injectable()
export class HandoverStore {
  /** Returns the id. */
  async insert(
    tx: YardTx,
    trailerId: string,
    handover: NewHandover,
    photos: readonly PhotoOfPlace[],
    recorded: Recorded,
  ): Promise<string> {
    const id = handover.id ?? newId();
    const { seen, hitch, signature } = handover;
    await tx.handover.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          trailerId,
          jobId: handover.jobId,
          way: handover.way,
          outId: handover.outId,
          handedOn: toColumn(handover.on),
          customer: handover.customer,
          byPersonId: handover.byPersonId,
          byName: handover.byName,
          seen: seen.map(seenColumn),
          hitch: hitch === null ? Prisma.DbNull : (hitch as unknown as Prisma.InputJsonValue),
          signedName: signature?.name ?? null,
          signedStrokes: (signature?.strokes ?? []) as unknown as Prisma.InputJsonValue,
          ...recordedColumns(recorded),
        },
      ],
    });
    for (const { place, mediaType, bytes } of photos) {
      const own = { id: newId(), yardId: tx.yardId, handoverId: id, place, mediaType, recordedAt: recorded.recordedAt };
      await tx.handoverPhoto.createMany({ data: [{ ...own, bytes: new Uint8Array(bytes) }] });
    }
    return id;
  }

  /** The handover with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, handoverId: string): Promise<Handover | null> {
    return findFact(tx, HANDOVERS, trailerId, handoverId);
  }

  /** Whether a handover was ever kept under this id, mended ones too. */
  async isKnown(tx: YardTx, handoverId: string): Promise<boolean> {
    return (await tx.handover.count({ where: { yardId: tx.yardId, id: handoverId } })) > 0;
  }

  /** The way out that no return has ended yet; null while the trailer is in the yard. */
  async outNow(tx: YardTx, trailerId: string): Promise<Handover | null> {
    const found = await jsonRows<Handover>(
      tx,
      HANDOVER,
      Prisma.sql`from handover where handover.yard_id = ${tx.yardId}::uuid
        and handover.trailer_id = ${trailerId}::uuid and ${IS_OUT} order by handover.handed_on desc, handover.id desc limit 1`,
    );
    return found[0] ?? null;
  }

  /** The return that ended a way out, if it stands. */
  async backOf(tx: YardTx, trailerId: string, outId: string): Promise<Handover | null> {
    const found = await jsonRows<Handover>(
      tx,
      HANDOVER,
      Prisma.sql`from handover where handover.yard_id = ${tx.yardId}::uuid
        and handover.trailer_id = ${trailerId}::uuid and handover.out_id = ${outId}::uuid and ${standing('handover')}`,
    );
    return found[0] ?? null;
  }

  /** Every trailer of the yard that is with a customer. */
  async allOutNow(tx: YardTx): Promise<readonly OutNow[]> {
    return jsonRows<OutNow>(
      tx,
      Prisma.sql`json_build_object('trailerId', handover.trailer_id, 'handoverId', handover.id,
        'jobId', handover.job_id, 'customer', handover.customer, 'on', handover.handed_on)`,
      Prisma.sql`from handover where handover.yard_id = ${tx.yardId}::uuid and ${IS_OUT}
        order by handover.handed_on, handover.id`,
    );
  }

  /** Says that a handover never happened. */
  async withdraw(tx: YardTx, trailerId: string, handoverId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, HANDOVERS, trailerId, handoverId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<Handover>[]> {
    return factHistory(tx, HANDOVERS, trailerId);
  }

  async findPhoto(tx: YardTx, photoId: string): Promise<Photo | null> {
    return tx.handoverPhoto.findFirst({
      where: { yardId: tx.yardId, id: photoId },
      select: { mediaType: true, bytes: true },
    });
  }
}

/** Only what is meant to be kept: the database would take any other field too. */
function seenColumn({ thing, position, condition, tire, ballSizeM, note }: NewHandover['seen'][number]) {
  return { thing, position, condition, tire: tire as Prisma.InputJsonValue | null, ballSizeM, note };
}
