import { Injectable } from '@nestjs/common';
import type { YardTx } from './database.js';
import type { Invitation as InvitationRow } from './generated/client.js';
import { newId } from './new-id.js';

/** Somebody asked to join the yard. Its secret is kept only as a hash. */
export interface Invitation {
  readonly id: string;
  readonly email: string;
  readonly name: string | null;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  readonly invitedBy: string;
  readonly expiresAt: Date;
  readonly acceptedAt: Date | null;
  readonly revokedAt: Date | null;
  readonly createdAt: Date;
}

export type NewInvitation = Pick<Invitation, 'email' | 'name' | 'role' | 'invitedBy' | 'expiresAt'> & {
  readonly tokenHash: string;
  readonly createdAt?: Date | undefined;
};

@Injectable()
export class InvitationStore {
  /** Newest first. */
  async list(tx: YardTx): Promise<readonly Invitation[]> {
    const rows = await tx.invitation.findMany({ where: { yardId: tx.yardId }, orderBy: { createdAt: 'desc' } });
    return rows.map(invitation);
  }

  async find(tx: YardTx, invitationId: string): Promise<Invitation | null> {
    const row = await tx.invitation.findFirst({ where: { yardId: tx.yardId, id: invitationId } });
    return row === null ? null : invitation(row);
  }

  /** Returns the id. */
  async insert(tx: YardTx, invited: NewInvitation): Promise<string> {
    const id = newId();
    await tx.invitation.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          email: invited.email,
          name: invited.name,
          role: invited.role,
          tokenHash: invited.tokenHash,
          invitedBy: invited.invitedBy,
          expiresAt: invited.expiresAt,
          createdAt: invited.createdAt,
        },
      ],
    });
    return id;
  }

  /** False when it is no longer open at `at`: accepted, revoked or past its time. So it is accepted once. */
  async accept(tx: YardTx, invitationId: string, at: Date): Promise<boolean> {
    const { count } = await tx.invitation.updateMany({
      where: { yardId: tx.yardId, id: invitationId, acceptedAt: null, revokedAt: null, expiresAt: { gt: at } },
      data: { acceptedAt: at },
    });
    return count === 1;
  }

  /** False when it was accepted or revoked before. */
  async revoke(tx: YardTx, invitationId: string, at: Date): Promise<boolean> {
    const { count } = await tx.invitation.updateMany({
      where: { yardId: tx.yardId, id: invitationId, acceptedAt: null, revokedAt: null },
      data: { revokedAt: at },
    });
    return count === 1;
  }
}

function invitation(row: InvitationRow): Invitation {
  const { yardId: _yard, tokenHash: _hash, role, ...rest } = row;
  return { ...rest, role: role as Invitation['role'] };
}
