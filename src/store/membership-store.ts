import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import { fromColumn, toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import type { Membership as MembershipRow } from './generated/client.js';
import { newId } from './new-id.js';

/** One person in one yard. */
export interface Membership {
  readonly personId: string;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  readonly name: string;
  readonly email: string;
  readonly cdl: 'A' | 'B' | 'none' | null;
  readonly leftOn: CivilDate | null;
  /** Set when mail to them came back, until the address is mended. */
  readonly bouncedAt: Date | null;
  readonly bounceNote: string | null;
}

export type NewMembership = Pick<Membership, 'personId' | 'role' | 'name' | 'email'> & Partial<Pick<Membership, 'cdl'>>;

@Injectable()
export class MembershipStore {
  /** Everyone who is or was of the yard, by name. */
  async list(tx: YardTx): Promise<readonly Membership[]> {
    const rows = await tx.membership.findMany({
      where: { yardId: tx.yardId },
      orderBy: [{ name: 'asc' }, { personId: 'asc' }],
    });
    return rows.map(membership);
  }

  /** The same, held until the transaction ends: for decisions that count people, such as who is the last owner. */
  async listAndHold(tx: YardTx): Promise<readonly Membership[]> {
    await tx.$queryRaw`select 1 from membership where yard_id = ${tx.yardId}::uuid order by id for update`;
    return this.list(tx);
  }

  async find(tx: YardTx, personId: string): Promise<Membership | null> {
    const row = await tx.membership.findFirst({ where: { yardId: tx.yardId, personId } });
    return row === null ? null : membership(row);
  }

  /** The person must be known to sign-in already. */
  async insert(tx: YardTx, member: NewMembership): Promise<void> {
    await tx.membership.createMany({
      data: [
        {
          id: newId(),
          yardId: tx.yardId,
          personId: member.personId,
          role: member.role,
          name: member.name,
          email: member.email,
          cdl: member.cdl ?? null,
        },
      ],
    });
  }

  /** Changes what is named. False when the person is not of the yard. */
  async save(tx: YardTx, personId: string, patch: Partial<Omit<Membership, 'personId'>>): Promise<boolean> {
    const { count } = await tx.membership.updateMany({
      where: { yardId: tx.yardId, personId },
      data: {
        role: patch.role,
        name: patch.name,
        email: patch.email,
        cdl: patch.cdl,
        leftOn: toColumn(patch.leftOn),
        bouncedAt: patch.bouncedAt,
        bounceNote: patch.bounceNote,
      },
    });
    return count === 1;
  }
}

function membership(row: MembershipRow): Membership {
  return {
    personId: row.personId,
    role: row.role as Membership['role'],
    name: row.name,
    email: row.email,
    cdl: row.cdl as Membership['cdl'],
    leftOn: fromColumn(row.leftOn),
    bouncedAt: row.bouncedAt,
    bounceNote: row.bounceNote,
  };
}
