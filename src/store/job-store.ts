import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { Job } from '../rules/facts/use.js';
import { toColumn } from './civil-day.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';
import { axleLoads, cargoColumns, loadColumns, loadShape } from './load-columns.js';
import { newId } from './new-id.js';
import type { New, Recorded } from './recorded.js';
import { TOW_VEHICLE } from './tow-vehicle-store.js';

const JOB_FIELDS = Prisma.sql`
  'id', job.id,
  'name', job.name,
  'startsOn', job.starts_on,
  'endsOn', job.ends_on,
  'state', job.state,
  'distanceKm', job.distance_km,
  'work', job.work,
  'commercial', job.commercial,
  'machineId', job.machine_id,
  'load', ${loadShape('job')},
  'towVehicle', (select ${TOW_VEHICLE} from tow_vehicle where tow_vehicle.id = job.tow_vehicle_id),
  'driver', case when job.driver_name is not null
    then json_build_object('name', job.driver_name, 'cdl', job.driver_cdl) end,
  'haulerPersonId', job.hauler_person_id`;

export const JOB = Prisma.sql`json_build_object(${JOB_FIELDS})`;
const KEPT_JOB = Prisma.sql`json_build_object(${JOB_FIELDS},
  'trailerId', job.trailer_id,
  'customer', job.customer,
  'note', job.note)`;

/** A job as the yard keeps it: which trailer is to go, if one is chosen, and for whom. */
export interface KeptJob extends Job {
  readonly trailerId: string | null;
  readonly customer: string | null;
  readonly note: string | null;
}

/** Which jobs to list; what is left out does not matter. `from` and `to` pick jobs that touch these days. */
export interface JobFilter {
  readonly trailerId?: string;
  readonly state?: Job['state'];
  readonly from?: CivilDate;
  readonly to?: CivilDate;
}

@Injectable()
export class JobStore {
  async find(tx: YardTx, jobId: string): Promise<KeptJob | null> {
    const found = await jsonRows<KeptJob>(tx, KEPT_JOB, Prisma.sql`from job where job.id = ${jobId}::uuid`);
    return found[0] ?? null;
  }

  /** In the order they start. */
  async list(tx: YardTx, filter: JobFilter = {}): Promise<readonly KeptJob[]> {
    const conditions = [Prisma.sql`job.yard_id = ${tx.yardId}::uuid`];
    if (filter.trailerId) conditions.push(Prisma.sql`job.trailer_id = ${filter.trailerId}::uuid`);
    if (filter.state) conditions.push(Prisma.sql`job.state = ${filter.state}`);
    if (filter.from) conditions.push(Prisma.sql`job.ends_on >= ${filter.from}::date`);
    if (filter.to) conditions.push(Prisma.sql`job.starts_on <= ${filter.to}::date`);
    return jsonRows<KeptJob>(
      tx,
      KEPT_JOB,
      Prisma.sql`from job where ${Prisma.join(conditions, ' and ')} order by job.starts_on, job.id`,
    );
  }

  /** Returns the id. The tow vehicle must be one of the yard's; the job keeps only which. */
  async insert(tx: YardTx, job: New<KeptJob>, recorded: Omit<Recorded, 'correctsId'>): Promise<string> {
    const id = job.id ?? newId();
    await tx.job.createMany({
      data: [
        {
          id,
          yardId: tx.yardId,
          ...columns(job),
          door: recorded.door,
          recordedBy: recorded.recordedBy,
          recordedAt: recorded.recordedAt,
        },
      ],
    });
    await this.writeLoad(tx, id, job);
    return id;
  }

  /** Writes the job as it now is. False when the yard has no such job. */
  async update(tx: YardTx, job: KeptJob): Promise<boolean> {
    const { count } = await tx.job.updateMany({ where: { id: job.id }, data: columns(job) });
    if (count === 0) return false;
    await this.writeLoad(tx, job.id, job);
    return true;
  }

  private async writeLoad(tx: YardTx, jobId: string, job: New<KeptJob>): Promise<void> {
    await tx.$executeRaw`
      update job set scale_axle_n = ${`{${axleLoads(job.load).join(',')}}`}::float8[],
        tie_downs = ${job.load.tieDowns && JSON.stringify(job.load.tieDowns)}::jsonb
      where yard_id = ${tx.yardId}::uuid and id = ${jobId}::uuid`;
    await tx.jobCargo.deleteMany({ where: { jobId } });
    const data = job.load.cargo.map((item, place) => ({ yardId: tx.yardId, jobId, ...cargoColumns(item, place) }));
    if (data.length > 0) await tx.jobCargo.createMany({ data });
  }
}

function columns(job: New<KeptJob>) {
  return {
    trailerId: job.trailerId,
    name: job.name,
    startsOn: toColumn(job.startsOn),
    endsOn: toColumn(job.endsOn),
    state: job.state,
    distanceKm: job.distanceKm,
    work: job.work,
    customer: job.customer,
    commercial: job.commercial,
    machineId: job.machineId,
    ...loadColumns(job.load),
    towVehicleId: job.towVehicle?.id ?? null,
    driverName: job.driver?.name ?? null,
    driverCdl: job.driver?.cdl ?? null,
    haulerPersonId: job.haulerPersonId,
    note: job.note,
  };
}
