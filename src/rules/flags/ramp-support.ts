import type { Trip } from '../facts/use.js';
import { climbOf, rearSupport } from '../trailer/loading.js';
import { exceeds } from '../units/compare.js';
import { weightOf } from '../units/force.js';
import { kg } from '../units/mass.js';
import type { Flag } from './flag.js';
import { clearedByTime, type FlagContext } from './flag-context.js';
import { haulsOf, type MachineHaul } from './machine-hauls.js';
import { tripsSeen } from './trips-seen.js';

/**
 * Machines of recent trips that are too much for the rear of today's build while they drive on: heavier than the ramps'
 * rating, or pulling the hitch up with nothing on the build sheet to hold the tail. Both `limit`. Where nobody said
 * whether there is a support, the fit of a job says so and no flag is raised. Sources: the ramps' own rating; plane
 * statics (`load/climb.ts`).
 */
export function rampSupportFlags(context: FlagContext): readonly Flag[] {
  const { build, facts } = context.trailer;
  if (build === null) return [];
  const isHeld = rearSupport(build) !== 'none';
  if (isHeld && build.rear.rampRatingKg === null) return [];
  const hauls = haulsOf(context, facts.machines);
  return [...onRamps(context, hauls), ...(isHeld ? [] : hitchPulled(context, hauls))];
}

function onRamps({ trailer }: FlagContext, hauls: readonly MachineHaul[]): readonly Flag[] {
  const ratingKg = trailer.build?.rear.rampRatingKg ?? null;
  if (ratingKg === null) return [];
  const past = hauls.filter(({ massKg }) => exceeds(massKg, ratingKg));
  const worst = heaviestOf(past);
  if (worst === null) return [];
  const trips = tripsOf(past);
  return [
    {
      key: 'ramp-support:rating',
      rule: 'ramp-support',
      severity: 'limit',
      since: trips[0]?.startedOn ?? null,
      evidence: {
        kind: 'over-ramp',
        machineId: worst.machine.id,
        machineKg: worst.massKg,
        ratingKg,
        overKg: kg(worst.massKg - ratingKg),
        trips: tripsSeen(trips),
      },
      clears: [{ kind: 'part-of-at-least', part: 'ramp', ratingN: weightOf(worst.massKg) }, ...clearedByTime(trips)],
    },
  ];
}

function hitchPulled({ trailer }: FlagContext, hauls: readonly MachineHaul[]): readonly Flag[] {
  const { build, asOf } = trailer;
  const limits = trailer.limitsOn(asOf);
  if (build === null || limits === null) return [];
  const past = hauls.filter(({ massKg }) => (climbOf(build, limits, massKg)?.loads.liftN ?? 0) > 0);
  const worst = heaviestOf(past);
  const climb = worst === null ? null : climbOf(build, limits, worst.massKg);
  if (worst === null || climb === null) return [];
  const trips = tripsOf(past);
  return [
    {
      key: 'ramp-support:lift',
      rule: 'ramp-support',
      severity: 'limit',
      since: trips[0]?.startedOn ?? null,
      evidence: {
        kind: 'rear-lift',
        machineId: worst.machine.id,
        machineKg: worst.massKg,
        liftN: climb.loads.liftN,
        trips: tripsSeen(trips),
      },
      clears: [{ kind: 'rear-support' }, ...clearedByTime(trips)],
    },
  ];
}

function heaviestOf(hauls: readonly MachineHaul[]): MachineHaul | null {
  return hauls.reduce<MachineHaul | null>(
    (most, next) => (most === null || next.massKg > most.massKg ? next : most),
    null,
  );
}

/** Each trip once, though two such machines may have ridden on it. */
function tripsOf(hauls: readonly MachineHaul[]): readonly Trip[] {
  return [...new Set(hauls.map(({ trip }) => trip))];
}
