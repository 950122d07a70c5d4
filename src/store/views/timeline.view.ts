import { Injectable } from '@nestjs/common';
import type { Assessment } from '../../rules/assess.js';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Due } from '../../rules/inspection/due.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';
import { BY_NUMBER, type TrailerFilter, trailerIs } from './trailer-filter.js';

export interface Days {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

export interface LaneTrailer {
  readonly id: string;
  readonly number: string;
  readonly name: string | null;
  readonly readiness: Assessment['readiness'] | null;
}

/** A booked job as it lies on the days. */
export interface LaneJob {
  readonly id: string;
  /** Null while no trailer is picked. */
  readonly trailerId: string | null;
  readonly name: string;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
}

export interface LaneHold {
  readonly id: string;
  readonly trailerId: string;
  readonly openedOn: CivilDate;
  readonly reason: string;
}

export interface LaneDue {
  readonly trailerId: string;
  readonly checkKindId: string;
  readonly name: string;
  readonly safety: boolean;
  readonly state: Due['state'];
  /** Null when it is wanted now, whatever the day. */
  readonly dueOn: CivilDate | null;
}

/** What the trailers of a page do on some days: everything asked for is asked of these trailers alone. */
@Injectable()
export class TimelineView {
  /** In the order of their numbers. `busy` leaves out those with no job on these days and no open hold. */
  async trailers(
    tx: YardTx,
    days: Days,
    filter: TrailerFilter,
    which: 'busy' | 'all',
    paging: PageOfList,
  ): Promise<ListPage<LaneTrailer>> {
    const busy = Prisma.sql`t.id in (
      select j.trailer_id from job j where j.trailer_id is not null and ${bookedOn(tx, days)}
      union select h.trailer_id from hold h where h.yard_id = ${tx.yardId}::uuid and h.lifted_on is null)`;
    const where = Prisma.sql`${trailerIs(tx, filter)} and ${which === 'all' ? Prisma.sql`true` : busy}`;
    const rows = await tx.$queryRaw<LaneTrailer[]>`
      select t.id::text, t.yard_number "number", t.name, r.readiness
      from trailer t left join trailer_result r on r.yard_id = t.yard_id and r.trailer_id = t.id
      where ${where} order by ${BY_NUMBER} limit ${paging.perPage} offset ${offsetOf(paging)}`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from trailer t where ${where}`;
    return { rows, total };
  }

  /** Booked jobs of these trailers that touch the days, as they start. */
  jobs(tx: YardTx, trailerIds: readonly string[], days: Days, most: number): Promise<readonly LaneJob[]> {
    return jobsWhere(tx, Prisma.sql`j.trailer_id = any(${[...trailerIds]}::uuid[])`, days, most);
  }

  /** Booked jobs that nobody has given a trailer yet. */
  unplaced(tx: YardTx, days: Days, most: number): Promise<readonly LaneJob[]> {
    return jobsWhere(tx, Prisma.sql`j.trailer_id is null`, days, most);
  }

  holds(tx: YardTx, trailerIds: readonly string[], most: number): Promise<readonly LaneHold[]> {
    return tx.$queryRaw<LaneHold[]>`
      select h.id::text, h.trailer_id::text "trailerId", h.opened_on::text "openedOn", h.reason
      from hold h
      where h.yard_id = ${tx.yardId}::uuid and h.lifted_on is null and h.trailer_id = any(${[...trailerIds]}::uuid[])
      order by h.opened_on, h.id limit ${most}`;
  }

  /** Checks wanted by the last of the days: those overdue or never done too. */
  due(tx: YardTx, trailerIds: readonly string[], to: CivilDate, most: number): Promise<readonly LaneDue[]> {
    return tx.$queryRaw<LaneDue[]>`
      select d.trailer_id::text "trailerId", k.id::text "checkKindId", k.name, k.safety, d.state,
        d.due_on::text "dueOn"
      from due_result d join check_kind k on k.yard_id = d.yard_id and k.id = d.check_kind_id
      where d.yard_id = ${tx.yardId}::uuid and d.trailer_id = any(${[...trailerIds]}::uuid[])
        and (d.state in ('overdue', 'never-done') or (d.state in ('due-soon', 'later') and d.due_on <= ${to}::date))
      order by d.due_on nulls first, k.safety desc, k.name limit ${most}`;
  }
}

function bookedOn(tx: YardTx, { from, to }: Days): Prisma.Sql {
  return Prisma.sql`j.yard_id = ${tx.yardId}::uuid and j.state = 'booked'
    and j.ends_on >= ${from}::date and j.starts_on <= ${to}::date`;
}

function jobsWhere(tx: YardTx, which: Prisma.Sql, days: Days, most: number): Promise<readonly LaneJob[]> {
  return tx.$queryRaw<LaneJob[]>`
    select j.id::text, j.trailer_id::text "trailerId", j.name, j.starts_on::text "startsOn", j.ends_on::text "endsOn"
    from job j where ${bookedOn(tx, days)} and ${which} order by j.starts_on, j.id limit ${most}`;
}
