import type { Job, TowVehicle } from '../facts/use.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { carriedBy } from '../load/carried.js';
import { CDL_KG, combination } from '../trailer/combination.js';
import type { Kilograms } from '../units/mass.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

interface JobPast {
  readonly job: Job;
  readonly towVehicle: TowVehicle;
  readonly group: 'A' | 'B';
  readonly combinationKg: Kilograms;
}

/**
 * Booked jobs on which trailer and tow vehicle together pass the weight from which a commercial licence may be asked,
 * and nobody who holds it is named. One flag a tow vehicle. Severity `watch`: it points to the licence office and
 * asserts nothing, since uses, exemptions and States differ. Source: 49 CFR 383.91(a)(1), (2); see `combination`.
 */
export function licenceLineFlags({ trailer }: FlagContext): readonly Flag[] {
  const past = trailer.jobs.flatMap((job) => jobPast(job, trailer));
  return [...Map.groupBy(past, ({ towVehicle }) => towVehicle.id)].flatMap(([towVehicleId, jobs]) => {
    const heaviest = jobs.reduce((most, one) => (one.combinationKg > most.combinationKg ? one : most));
    return [
      {
        key: `licence-line:${towVehicleId}`,
        rule: 'licence-line' as const,
        severity: 'watch' as const,
        since: null,
        evidence: {
          kind: 'licence-line' as const,
          towVehicle: heaviest.towVehicle.name,
          group: heaviest.group,
          combinationKg: heaviest.combinationKg,
          thresholdKg: CDL_KG,
          jobIds: jobs.map(({ job }) => job.id),
        },
        clears: [{ kind: 'correct', fact: 'job' }] as const,
      },
    ];
  });
}

function jobPast(job: Job, trailer: TrailerOn): readonly JobPast[] {
  const { towVehicle } = job;
  if (towVehicle === null) return [];
  const limits = trailer.limitsOn(job.startsOn);
  const { cdl, combinationKg } = combination({
    towVehicle,
    trailerGvwrKg: trailer.buildOn(job.startsOn)?.plate.gvwrKg ?? null,
    trailerGrossKg: limits === null ? null : carriedBy(limits, job.load).grossKg,
  });
  if (cdl === null || cdl === 'none' || combinationKg === null) return [];
  const holds = job.driver?.cdl ?? null;
  // A licence of a higher group serves for a lower one.
  return holds === 'A' || holds === cdl ? [] : [{ job, towVehicle, group: cdl, combinationKg }];
}
