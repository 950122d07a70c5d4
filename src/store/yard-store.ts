import { Injectable } from '@nestjs/common';
import type { YardPolicy } from '../rules/facts/yard-policy.js';
import type { YardTx } from './database.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';

const POLICY = Prisma.sql`json_build_object(
  'tireAgeLimitYears', yard.tire_age_limit_years,
  'weighFirstShare', yard.weigh_first_share,
  'useWindowDays', yard.use_window_days,
  'driftTrips', yard.drift_trips,
  'decayIndex', yard.decay_index,
  'deckLifeYears', yard.deck_life_years)`;

const YARD = Prisma.sql`json_build_object(
  'id', yard.id,
  'name', yard.name,
  'slug', yard.slug,
  'timeZone', yard.time_zone,
  'place', yard.place,
  'demo', yard.demo,
  'quietFromHour', yard.quiet_from_hour,
  'quietToHour', yard.quiet_to_hour,
  'planHour', yard.plan_hour,
  'policy', ${POLICY})`;

export interface Yard {
  readonly id: string;
  readonly name: string;
  readonly slug: string;
  /** IANA name, such as `America/Chicago`. */
  readonly timeZone: string;
  readonly place: string | null;
  readonly demo: boolean;
  /** No mail but a stop from this hour of the yard's day … */
  readonly quietFromHour: number;
  /** … to this one. */
  readonly quietToHour: number;
  /** The hour at which the day is planned. */
  readonly planHour: number;
  readonly policy: YardPolicy;
}

export type NewYard = Pick<Yard, 'name' | 'slug' | 'timeZone'> & Partial<Omit<Yard, 'id' | 'policy'>>;
export type YardPatch = Partial<Omit<Yard, 'id' | 'demo' | 'policy'>> & { readonly policy?: Partial<YardPolicy> };

@Injectable()
export class YardStore {
  /** The yard of this transaction. Throws when there is none: whoever set it had it from a membership. */
  async get(tx: YardTx): Promise<Yard> {
    const [yard] = await jsonRows<Yard>(tx, YARD, Prisma.sql`from yard where yard.id = ${tx.yardId}::uuid`);
    if (yard === undefined) throw new Error(`no yard ${tx.yardId}`);
    return yard;
  }

  /** Makes the yard whose id this transaction was opened with; what is left out gets the default of its column. */
  async insert(tx: YardTx, yard: NewYard): Promise<void> {
    await tx.yard.createMany({
      data: [
        {
          id: tx.yardId,
          name: yard.name,
          slug: yard.slug,
          timeZone: yard.timeZone,
          place: yard.place,
          demo: yard.demo,
          quietFromHour: yard.quietFromHour,
          quietToHour: yard.quietToHour,
          planHour: yard.planHour,
        },
      ],
    });
  }

  /** Changes the settings named. */
  async save(tx: YardTx, patch: YardPatch): Promise<void> {
    await tx.yard.updateMany({
      where: { id: tx.yardId },
      data: {
        name: patch.name,
        slug: patch.slug,
        timeZone: patch.timeZone,
        place: patch.place,
        quietFromHour: patch.quietFromHour,
        quietToHour: patch.quietToHour,
        planHour: patch.planHour,
        tireAgeLimitYears: patch.policy?.tireAgeLimitYears,
        weighFirstShare: patch.policy?.weighFirstShare,
        useWindowDays: patch.policy?.useWindowDays,
        driftTrips: patch.policy?.driftTrips,
        decayIndex: patch.policy?.decayIndex,
        deckLifeYears: patch.policy?.deckLifeYears,
      },
    });
  }
}
