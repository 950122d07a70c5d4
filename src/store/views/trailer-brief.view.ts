import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerBrief } from '../../rules/ranking/worth-asking.js';
import type { YardTx } from '../database.js';

/** The days somebody needs a trailer for, and the job that they are, whose own booking is no clash. */
export interface DaysWanted {
  readonly from: CivilDate;
  readonly to: CivilDate;
  readonly jobId: string | null;
}

/** What is kept of each trailer, enough to pass most of a large yard over without reading their facts. */
@Injectable()
export class TrailerBriefView {
  /** Every trailer of the yard. One never assessed is as good as due. Without days nothing clashes. */
  async ofYard(tx: YardTx, days: DaysWanted | null): Promise<readonly TrailerBrief[]> {
    return tx.$queryRaw<TrailerBrief[]>`
      select t.id::text "trailerId", t.yard_number "yardNumber", r.payload_kg "payloadKg",
        case when t.status <> 'in-service' then 'gone' else coalesce(r.readiness, 'due') end readiness,
        coalesce(booked.clashes, '[]'::json) clashes
      from trailer t
      left join trailer_result r on r.yard_id = t.yard_id and r.trailer_id = t.id
      left join (
        select j.trailer_id, json_agg(json_build_object('jobId', j.id, 'name', j.name, 'startsOn', j.starts_on,
          'endsOn', j.ends_on) order by j.starts_on, j.id) clashes
        from job j
        where j.yard_id = ${tx.yardId}::uuid and j.state = 'booked' and j.trailer_id is not null
          and j.starts_on <= ${days?.to ?? null}::date and j.ends_on >= ${days?.from ?? null}::date
          and j.id is distinct from ${days?.jobId ?? null}::uuid
        group by j.trailer_id) booked on booked.trailer_id = t.id
      where t.yard_id = ${tx.yardId}::uuid`;
  }
}
