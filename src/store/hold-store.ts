import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Hold } from '../rules/facts/check.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';

export const HOLD = Prisma.sql`json_build_object(
  'id', hold.id,
  'openedOn', hold.opened_on,
  'reason', hold.reason,
  'openedByName', hold.opened_by_name,
  'liftedOn', hold.lifted_on)`;

export interface NewHold {
  readonly id?: string | undefined;
  readonly openedOn: CivilDate;
  readonly reason: string;
  readonly openedBy: string | null;
  readonly openedByName: string;
  /** The check that found it, if one did. */
  readonly checkRecordId?: string | null | undefined;
  /** The return that found it, if one did. */
  readonly handoverId?: string | null | undefined;
  readonly recordedAt?: Date | undefined;
}

/** Either the check record that shows the repair, or the person who answers for it. */
export interface HoldLift {
  readonly liftedOn: CivilDate;
  readonly liftedBy: string | null;
  readonly liftedByName: string | null;
  readonly reason: string | null;
  readonly checkRecordId: string | null;
}

@Injectable()
export class HoldStore {
  /** Returns the id. */
  async open(tx: YardTx, trailerId: string, hold: NewHold): Promise<string> {
    const id = hold.id ?? newId();
    await tx.hold.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          trailerId,
          openedOn: toColumn(hold.openedOn),
          reason: hold.reason,
          openedBy: hold.openedBy,
          openedByName: hold.openedByName,
          checkRecordId: hold.checkRecordId ?? null,
          handoverId: hold.handoverId ?? null,
          recordedAt: hold.recordedAt,
        },
      ],
    });
    return id;
  }

  /** False when the trailer has no such hold, or it was lifted already: once is all. */
  async lift(tx: YardTx, trailerId: string, holdId: string, lift: HoldLift): Promise<boolean> {
    const { count } = await tx.hold.updateMany({
      where: { id: holdId, trailerId, liftedOn: null },
      data: {
        liftedOn: toColumn(lift.liftedOn),
        liftedBy: lift.liftedBy,
        liftedByName: lift.liftedByName,
        liftReason: lift.reason,
        liftCheckRecordId: lift.checkRecordId,
      },
    });
    return count === 1;
  }

  async find(tx: YardTx, trailerId: string, holdId: string): Promise<Hold | null> {
    const found = await jsonRows<Hold>(
      tx,
      HOLD,
      Prisma.sql`from hold where hold.trailer_id = ${trailerId}::uuid and hold.id = ${holdId}::uuid`,
    );
    return found[0] ?? null;
  }
}
