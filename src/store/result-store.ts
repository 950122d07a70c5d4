import { Injectable } from '@nestjs/common';
import type { Assessment } from '../rules/assess.js';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { holdResults } from './hold-results.js';

/** What the facts of each trailer came to when it was last assessed. Can be thrown away and rebuilt from facts. */
@Injectable()
export class ResultStore {
  /** Keeps this assessment in place of the one before. */
  async save(tx: YardTx, trailerId: string, assessment: Assessment): Promise<void> {
    await this.saveMany(tx, [{ trailerId, assessment }]);
  }

  /** The same for many trailers, in a few statements. A few hundred at a time serve best. */
  async saveMany(
    tx: YardTx,
    results: readonly { readonly trailerId: string; readonly assessment: Assessment }[],
  ): Promise<void> {
    if (results.length === 0) return;
    const trailerIds = results.map((result) => result.trailerId);
    await tx.dueResult.deleteMany({ where: { trailerId: { in: trailerIds } } });
    await tx.flagResult.deleteMany({ where: { trailerId: { in: trailerIds } } });
    await tx.$executeRaw`
      insert into trailer_result (yard_id, trailer_id, as_of, wake_on, readiness, stop_flags, limit_flags, watch_flags,
        overdue, next_due_on, payload_kg, trailer_class, assessment)
      select ${tx.yardId}::uuid, trailer_id, as_of, wake_on, readiness, stop_flags, limit_flags, watch_flags,
        overdue, next_due_on, payload_kg, trailer_class, assessment
      from jsonb_to_recordset(${JSON.stringify(results.map(summaryColumns))}::jsonb) as row (trailer_id uuid, as_of date,
        wake_on date, readiness text, stop_flags int, limit_flags int, watch_flags int, overdue int, next_due_on date,
        payload_kg float8, trailer_class text, assessment jsonb)
      on conflict (trailer_id) do update set as_of = excluded.as_of, wake_on = excluded.wake_on,
        readiness = excluded.readiness, stop_flags = excluded.stop_flags, limit_flags = excluded.limit_flags,
        watch_flags = excluded.watch_flags, overdue = excluded.overdue, next_due_on = excluded.next_due_on,
        payload_kg = excluded.payload_kg, trailer_class = excluded.trailer_class, assessment = excluded.assessment`;
    const due = results.flatMap(({ trailerId, assessment }) =>
      assessment.due.map((one) => ({
        trailer_id: trailerId,
        check_kind_id: one.checkKindId,
        code: one.code,
        state: one.state,
        due_on: one.dueOn,
        due: one,
      })),
    );
    await tx.$executeRaw`
      insert into due_result (yard_id, trailer_id, check_kind_id, code, state, due_on, due)
      select ${tx.yardId}::uuid, trailer_id, check_kind_id, code, state, due_on, due
      from jsonb_to_recordset(${JSON.stringify(due)}::jsonb) as row (trailer_id uuid, check_kind_id uuid, code text,
        state text, due_on date, due jsonb)`;
    const flags = results.flatMap(({ trailerId, assessment }) =>
      assessment.flags.map((flag) => ({
        trailer_id: trailerId,
        key: flag.key,
        rule: flag.rule,
        severity: flag.severity,
        since: flag.since,
        flag,
      })),
    );
    await tx.$executeRaw`
      insert into flag_result (yard_id, trailer_id, key, rule, severity, since, flag)
      select ${tx.yardId}::uuid, trailer_id, key, rule, severity, since, flag
      from jsonb_to_recordset(${JSON.stringify(flags)}::jsonb) as row (trailer_id uuid, key text, rule text,
        severity text, since date, flag jsonb)`;
  }

  async find(tx: YardTx, trailerId: string): Promise<Assessment | null> {
    const row = await tx.trailerResult.findFirst({
      where: { yardId: tx.yardId, trailerId },
      select: { assessment: true },
    });
    return (row?.assessment ?? null) as Assessment | null;
  }

  /** The kept assessments of these trailers; those never assessed are left out. */
  async findMany(tx: YardTx, trailerIds: readonly string[]): Promise<ReadonlyMap<string, Assessment>> {
    const rows = await tx.trailerResult.findMany({
      where: { yardId: tx.yardId, trailerId: { in: [...trailerIds] } },
      select: { trailerId: true, assessment: true },
    });
    return new Map(rows.map((row) => [row.trailerId, row.assessment as unknown as Assessment]));
  }

  /** Trailers whose wake date has come by `date`: what is kept about them may read differently now. */
  async wakeBy(tx: YardTx, date: CivilDate): Promise<readonly string[]> {
    const rows = await tx.trailerResult.findMany({
      where: { yardId: tx.yardId, wakeOn: { lte: toColumn(date) } },
      select: { trailerId: true },
      orderBy: { trailerId: 'asc' },
    });
    return rows.map((row) => row.trailerId);
  }

  /**
   * Something that every trailer of the yard is judged by has changed: what is kept held until the day before, and all
   * wake on `date`. Until each is assessed anew its wake date says that what is kept may be stale.
   */
  async wakeAllOn(tx: YardTx, date: CivilDate): Promise<void> {
    await holdResults(tx, 'alone');
    await tx.$executeRaw`
      update trailer_result set wake_on = ${date}::date, as_of = least(as_of, ${date}::date - 1)
      where yard_id = ${tx.yardId}::uuid`;
  }
}

function summaryColumns({
  trailerId,
  assessment,
}: {
  readonly trailerId: string;
  readonly assessment: Assessment;
}): Record<string, unknown> {
  const flags = (severity: string) => assessment.flags.filter((flag) => flag.severity === severity).length;
  const dueOn = assessment.due.flatMap((due) => due.dueOn ?? []).sort();
  return {
    trailer_id: trailerId,
    as_of: assessment.asOf,
    wake_on: assessment.wakeOn,
    readiness: assessment.readiness,
    stop_flags: flags('stop'),
    limit_flags: flags('limit'),
    watch_flags: flags('watch'),
    overdue: assessment.due.filter((due) => due.state === 'overdue').length,
    next_due_on: dueOn[0] ?? null,
    payload_kg: assessment.ratings?.payloadKg ?? null,
    trailer_class: assessment.ratings?.trailerClass ?? null,
    assessment,
  };
}
