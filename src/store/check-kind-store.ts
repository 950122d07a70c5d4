import { Injectable } from '@nestjs/common';
import type { CheckKind } from '../rules/facts/check.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { newId } from './new-id.js';
import type { New } from './recorded.js';

const CHECK_KIND = Prisma.sql`json_build_object(
  'id', check_kind.id,
  'code', check_kind.code,
  'name', check_kind.name,
  'triggers', check_kind.triggers,
  'appliesTo', check_kind.applies_to,
  'safety', check_kind.safety,
  'blocks', check_kind.blocks,
  'proof', check_kind.proof,
  'work', check_kind.work,
  'leadDays', check_kind.lead_days,
  'ownerPersonId', check_kind.owner_person_id,
  'backupPersonId', check_kind.backup_person_id,
  'source', check_kind.source,
  'lines', check_kind.lines)`;

@Injectable()
export class CheckKindStore {
  /** The kinds in force, by code. Retired ones are left out: no trailer owes them any more. */
  async list(tx: YardTx): Promise<readonly CheckKind[]> {
    return jsonRows<CheckKind>(
      tx,
      CHECK_KIND,
      Prisma.sql`from check_kind where not check_kind.retired order by check_kind.code`,
    );
  }

  async find(tx: YardTx, checkKindId: string): Promise<CheckKind | null> {
    const found = await jsonRows<CheckKind>(
      tx,
      CHECK_KIND,
      Prisma.sql`from check_kind where check_kind.id = ${checkKindId}::uuid`,
    );
    return found[0] ?? null;
  }

  async findByCode(tx: YardTx, code: string): Promise<CheckKind | null> {
    const found = await jsonRows<CheckKind>(
      tx,
      CHECK_KIND,
      Prisma.sql`from check_kind where check_kind.code = ${code}`,
    );
    return found[0] ?? null;
  }

  /** Writes a kind as it now is, whether it was there or not, and puts it in force. Returns the id. */
  async save(tx: YardTx, kind: New<CheckKind>): Promise<string> {
    const id = kind.id ?? newId();
    const { count } = await tx.checkKind.updateMany({ where: { id }, data: columns(kind) });
    if (count === 0) await tx.checkKind.createMany({ data: [{ id, yardId: tx.yardId, ...columns(kind) }] });
    return id;
  }

  /** No trailer owes it from now on; its records stay. False when the yard has no such kind. */
  async retire(tx: YardTx, checkKindId: string): Promise<boolean> {
    const { count } = await tx.checkKind.updateMany({ where: { id: checkKindId }, data: { retired: true } });
    return count === 1;
  }
}

function columns(kind: New<CheckKind>) {
  return {
    code: kind.code,
    name: kind.name,
    triggers: json(kind.triggers),
    appliesTo: json(kind.appliesTo),
    safety: kind.safety,
    blocks: kind.blocks,
    proof: kind.proof === null ? Prisma.DbNull : json(kind.proof),
    work: json(kind.work),
    lines: json(kind.lines),
    leadDays: kind.leadDays,
    ownerPersonId: kind.ownerPersonId,
    backupPersonId: kind.backupPersonId,
    source: kind.source,
    retired: false,
  };
}

/** Readonly lists are JSON too; Prisma's type only knows the ones that can be changed. */
function json(value: object): Prisma.InputJsonValue {
  return value as Prisma.InputJsonValue;
}
