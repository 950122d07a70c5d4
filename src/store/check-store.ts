import { Injectable } from '@nestjs/common';
import type { CheckedLine, CheckRecord } from '../rules/facts/check.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { type FactTable, factHistory, findFact, withdrawFact } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { jsonList, jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import { type HistoryOf, type New, type Recorded, recordedColumns } from './recorded.js';

const LINE = Prisma.sql`json_build_object(
  'code', checked_line.code,
  'result', checked_line.result,
  'position', checked_line.position,
  'measured', case when checked_line.quantity is not null
    then json_build_object('quantity', checked_line.quantity, 'value', checked_line.value) end)`;

const RECORD = Prisma.sql`json_build_object(
  'id', check_record.id,
  'checkKindId', check_record.check_kind_id,
  'doneOn', check_record.done_on,
  'outcome', check_record.outcome,
  'byPersonId', check_record.by_person_id,
  'lines', ${jsonList(
    LINE,
    Prisma.sql`from checked_line where checked_line.check_record_id = check_record.id`,
    Prisma.sql`checked_line.place`,
  )},
  'inspectedBy', check_record.inspected_by,
  'proofOnTrailer', check_record.proof_on_trailer,
  'costCents', check_record.cost_cents)`;

export const CHECK_RECORDS: FactTable<CheckRecord> = {
  table: 'check_record',
  shape: RECORD,
  order: Prisma.sql`check_record.done_on, check_record.id`,
  needed: ['check_kind_id', 'done_on', 'outcome', 'by_name'],
};

/** A check done, with what only people read of it. */
export type NewCheckRecord = Omit<New<CheckRecord>, 'lines' | 'costCents'> & {
  readonly byName: string;
  readonly note?: string | null | undefined;
  readonly costCents?: number | null | undefined;
  readonly signedName?: string | null | undefined;
  readonly lines: readonly (CheckedLine & { readonly note?: string | null | undefined })[];
};

export interface Photo {
  /** image/jpeg, image/png or image/webp. */
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

/** A picture kept with a check: a photo, or the signature drawn under the sheet. */
type Picture = Photo & { readonly isSignature?: boolean };

/** One sheet as it came in, whatever has become of it since. */
interface SentCheck {
  readonly trailerId: string;
  readonly record: CheckRecord;
  readonly byName: string;
  readonly note: string | null;
  readonly signedName: string | null;
  /** How many pictures came with it, a drawn signature among them. */
  readonly pictures: number;
  /** The hold it put on the trailer. */
  readonly holdId: string | null;
}

@Injectable()
export class CheckStore {
  /** Returns the id. */
  async insert(
    tx: YardTx,
    trailerId: string,
    record: NewCheckRecord,
    pictures: readonly Picture[],
    recorded: Recorded,
  ): Promise<string> {
    const [id] = await this.insertMany(tx, [{ trailerId, record, recorded }]);
    if (id === undefined) throw new Error('a check was written without an id');
    for (const photo of pictures) {
      await tx.checkPhoto.createMany({
        data: [
          {
            id: newId(),
            yardId: tx.yardId,
            checkRecordId: id,
            mediaType: photo.mediaType,
            bytes: new Uint8Array(photo.bytes),
            isSignature: photo.isSignature ?? false,
            recordedAt: recorded.recordedAt,
          },
        ],
      });
    }
    return id;
  }

  /** Writes many checks without photos in two statements; returns their ids in the same order. */
  async insertMany(
    tx: YardTx,
    checks: readonly { readonly trailerId: string; readonly record: NewCheckRecord; readonly recorded: Recorded }[],
  ): Promise<readonly string[]> {
    const kept = checks.map((check) => ({ ...check, id: check.record.id ?? newId() }));
    await tx.checkRecord.createMany({
      data: kept.map(({ id, trailerId, record, recorded }) => ({
        id,
        yardId: tx.yardId,
        trailerId,
        checkKindId: record.checkKindId,
        doneOn: toColumn(record.doneOn),
        outcome: record.outcome,
        byPersonId: record.byPersonId,
        byName: record.byName,
        inspectedBy: record.inspectedBy,
        proofOnTrailer: record.proofOnTrailer,
        note: record.note ?? null,
        costCents: record.costCents ?? null,
        signedName: record.signedName ?? null,
        ...recordedColumns(recorded),
      })),
    });
    const lines = kept.flatMap(({ id, record }) =>
      record.lines.map((line, place) => ({
        yardId: tx.yardId,
        checkRecordId: id,
        place,
        code: line.code,
        result: line.result,
        position: line.position,
        quantity: line.measured?.quantity ?? null,
        value: line.measured?.value ?? null,
        note: line.note ?? null,
      })),
    );
    if (lines.length > 0) await tx.checkedLine.createMany({ data: lines });
    return kept.map(({ id }) => id);
  }

  /** The record with this id, if it stands. */
  async find(tx: YardTx, trailerId: string, recordId: string): Promise<CheckRecord | null> {
    return findFact(tx, CHECK_RECORDS, trailerId, recordId);
  }

  /** The record ever written under this id, mended or taken back since as well. */
  async findSent(tx: YardTx, recordId: string): Promise<SentCheck | null> {
    const sent = await jsonRows<SentCheck>(
      tx,
      Prisma.sql`json_build_object(
        'trailerId', check_record.trailer_id,
        'record', ${RECORD},
        'byName', check_record.by_name,
        'note', check_record.note,
        'signedName', check_record.signed_name,
        'pictures', (select count(*) from check_photo where check_photo.check_record_id = check_record.id),
        'holdId', (select hold.id from hold where hold.check_record_id = check_record.id))`,
      Prisma.sql`from check_record where check_record.yard_id = ${tx.yardId}::uuid and check_record.id = ${recordId}::uuid`,
    );
    return sent[0] ?? null;
  }

  /** Says that a check was never done. */
  async withdraw(tx: YardTx, trailerId: string, recordId: string, recorded: Recorded): Promise<void> {
    await withdrawFact(tx, CHECK_RECORDS, trailerId, recordId, recorded);
  }

  async history(tx: YardTx, trailerId: string): Promise<readonly HistoryOf<CheckRecord>[]> {
    return factHistory(tx, CHECK_RECORDS, trailerId);
  }

  /** In the order they were taken. */
  async photoIds(tx: YardTx, recordId: string): Promise<readonly string[]> {
    const photos = await tx.checkPhoto.findMany({
      where: { checkRecordId: recordId, isSignature: false },
      select: { id: true },
      orderBy: { id: 'asc' },
    });
    return photos.map((photo) => photo.id);
  }

  /** The picture of the signature drawn under a sheet. */
  async signatureId(tx: YardTx, recordId: string): Promise<string | null> {
    const where = { checkRecordId: recordId, isSignature: true };
    return (await tx.checkPhoto.findFirst({ where, select: { id: true } }))?.id ?? null;
  }

  async findPhoto(tx: YardTx, photoId: string): Promise<Photo | null> {
    return tx.checkPhoto.findFirst({ where: { id: photoId }, select: { mediaType: true, bytes: true } });
  }
}
