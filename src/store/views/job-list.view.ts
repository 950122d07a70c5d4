import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Job } from '../../rules/facts/use.js';
import type { Kilometres } from '../../rules/units/distance.js';
import type { YardTx } from '../database.js';
import { Prisma } from '../generated/client.js';
import { type ListPage, offsetOf, type PageOfList } from './paging.js';
import { ANY_TRAILER, isOfTrailer, type TrailerFilter } from './trailer-filter.js';

export interface JobRow {
  readonly id: string;
  readonly name: string;
  readonly startsOn: CivilDate;
  readonly endsOn: CivilDate;
  readonly state: Job['state'];
  readonly distanceKm: Kilometres | null;
  readonly work: Job['work'];
  readonly customer: string | null;
  readonly trailer: { readonly id: string; readonly number: string; readonly name: string | null } | null;
  readonly machineName: string | null;
  readonly towVehicleName: string | null;
  /** Who drives: the one named on the job, else the person of the yard who hauls. */
  readonly driverName: string | null;
}

/** Jobs with the names of all they mention. */
@Injectable()
export class JobListView {
  /** Booked jobs that start within the days, both included: what goes out. */
  leaving(
    tx: YardTx,
    from: CivilDate,
    to: CivilDate,
    paging: PageOfList,
    trailers: TrailerFilter = ANY_TRAILER,
  ): Promise<ListPage<JobRow>> {
    return this.page(
      tx,
      Prisma.sql`j.state = 'booked' and j.starts_on between ${from}::date and ${to}::date
        and ${isOfTrailer(tx, Prisma.sql`j.trailer_id`, trailers)}`,
      Prisma.sql`j.starts_on, j.id`,
      paging,
    );
  }

  /** How many of those there are. */
  async leavingCount(tx: YardTx, from: CivilDate, to: CivilDate, trailers: TrailerFilter): Promise<number> {
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from job j
      where j.yard_id = ${tx.yardId}::uuid and j.state = 'booked' and j.starts_on between ${from}::date and ${to}::date
        and ${isOfTrailer(tx, Prisma.sql`j.trailer_id`, trailers)}`;
    return total;
  }

  /** Booked jobs already under way that end within the days: what comes back. */
  returning(
    tx: YardTx,
    today: CivilDate,
    to: CivilDate,
    paging: PageOfList,
    trailers: TrailerFilter = ANY_TRAILER,
  ): Promise<ListPage<JobRow>> {
    return this.page(
      tx,
      Prisma.sql`j.state = 'booked' and j.trailer_id is not null and j.ends_on between ${today}::date and ${to}::date
        and (j.starts_on < ${today}::date or j.ends_on = ${today}::date)
        and ${isOfTrailer(tx, Prisma.sql`j.trailer_id`, trailers)}`,
      Prisma.sql`j.ends_on, j.id`,
      paging,
    );
  }

  /** Jobs to come and under way, soonest first; or those that are over, latest first. */
  list(tx: YardTx, which: 'coming' | 'over', today: CivilDate, paging: PageOfList): Promise<ListPage<JobRow>> {
    return which === 'coming'
      ? this.page(
          tx,
          Prisma.sql`j.state = 'booked' and j.ends_on >= ${today}::date`,
          Prisma.sql`j.starts_on, j.id`,
          paging,
        )
      : this.page(
          tx,
          Prisma.sql`(j.state <> 'booked' or j.ends_on < ${today}::date)`,
          Prisma.sql`j.ends_on desc, j.id`,
          paging,
        );
  }

  async find(tx: YardTx, jobId: string): Promise<JobRow | null> {
    const { rows } = await this.page(tx, Prisma.sql`j.id = ${jobId}::uuid`, Prisma.sql`j.id`, { page: 1, perPage: 1 });
    return rows[0] ?? null;
  }

  /** Booked jobs of one trailer from today on. */
  async ofTrailer(tx: YardTx, trailerId: string, today: CivilDate): Promise<readonly JobRow[]> {
    const { rows } = await this.page(
      tx,
      Prisma.sql`j.state = 'booked' and j.trailer_id = ${trailerId}::uuid and j.ends_on >= ${today}::date`,
      Prisma.sql`j.starts_on, j.id`,
      { page: 1, perPage: 20 },
    );
    return rows;
  }

  /** Only the jobs of the page are joined with what they name. */
  private async page(tx: YardTx, where: Prisma.Sql, order: Prisma.Sql, paging: PageOfList): Promise<ListPage<JobRow>> {
    const rows = await tx.$queryRaw<Row[]>`
      select j.id::text, j.name, j.starts_on::text, j.ends_on::text, j.state, j.distance_km, j.work, j.customer,
        t.id::text trailer_id, t.yard_number, t.name trailer_name, m.name machine_name, v.name tow_vehicle_name,
        coalesce(j.driver_name, p.name) driver_name
      from (
        select j.* from job j where j.yard_id = ${tx.yardId}::uuid and ${where}
        order by ${order} limit ${paging.perPage} offset ${offsetOf(paging)}) j
      left join trailer t on t.yard_id = j.yard_id and t.id = j.trailer_id
      left join machine m on m.yard_id = j.yard_id and m.id = j.machine_id
      left join tow_vehicle v on v.yard_id = j.yard_id and v.id = j.tow_vehicle_id
      left join membership p on p.yard_id = j.yard_id and p.person_id = j.hauler_person_id
      order by ${order}`;
    const [{ total } = { total: 0 }] = await tx.$queryRaw<{ total: number }[]>`
      select count(*)::int total from job j where j.yard_id = ${tx.yardId}::uuid and ${where}`;
    return { rows: rows.map(toJobRow), total };
  }
}

interface Row {
  readonly id: string;
  readonly name: string;
  readonly starts_on: string;
  readonly ends_on: string;
  readonly state: Job['state'];
  readonly distance_km: number | null;
  readonly work: Job['work'];
  readonly customer: string | null;
  readonly trailer_id: string | null;
  readonly yard_number: string | null;
  readonly trailer_name: string | null;
  readonly machine_name: string | null;
  readonly tow_vehicle_name: string | null;
  readonly driver_name: string | null;
}

function toJobRow(row: Row): JobRow {
  return {
    id: row.id,
    name: row.name,
    startsOn: row.starts_on as CivilDate,
    endsOn: row.ends_on as CivilDate,
    state: row.state,
    distanceKm: row.distance_km as Kilometres | null,
    work: row.work,
    customer: row.customer,
    trailer:
      row.trailer_id === null || row.yard_number === null
        ? null
        : { id: row.trailer_id, number: row.yard_number, name: row.trailer_name },
    machineName: row.machine_name,
    towVehicleName: row.tow_vehicle_name,
    driverName: row.driver_name,
  };
}
