import { Injectable } from '@nestjs/common';
import type { Flag } from '../../rules/flags/flag.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { MachineStore } from '../../store/machine-store.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { TripStore } from '../../store/trip-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { isSentAgain, readSendId, type Sending } from '../input/send-id.js';
import { readTrip, type TripInput } from '../input/trip-input.js';
import { completeLoad } from '../machines/complete-load.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type RecordTripInput = TripInput & Sending & { readonly trailerId: string; readonly note?: string | null };

interface TripRecorded {
  readonly tripId: string;
  /** Flags that this trip put up. */
  readonly raised: readonly Flag[];
}

/** Records one haul done. One made from a booked job is recorded by finishing the job. */
@Injectable()
export class RecordTrip {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly trips: TripStore,
    private readonly machines: MachineStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: RecordTripInput): Promise<Outcome<TripRecorded>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const trip = readTrip(given, caller.today);
    const note = given.text('note', 'the note', TEXT.page);
    const sendId = readSendId(given, caller.yardId);
    refuseNothingSaid(given, trip);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      if (!(await this.trailers.lock(tx, trailerId))) return notFound('trailer');
      const load = await completeLoad(tx, this.machines, given, trip.machineId, trip.load);
      if (given.problems.length > 0) return invalid(given.problems);
      const after = { ...trip, load, jobId: null };
      const kept = sendId === null ? null : await this.trips.find(tx, trailerId, sendId);
      if (kept !== null && isSentAgain(kept, after)) return done({ tripId: kept.id, raised: [] });
      const id = sendId === null || (await this.trips.isKnown(tx, sendId)) ? undefined : sendId;
      const tripId = await this.trips.insert(tx, trailerId, { ...after, id }, { ...recordedBy(caller), note });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'record-trip',
        subject: 'trip',
        subjectId: tripId,
        trailerId,
        detail: { after, note },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ tripId, raised });
    });
  }
}

/** A form sent off empty would count as a haul and say nothing of it. */
function refuseNothingSaid(given: Given, trip: ReturnType<typeof readTrip>): void {
  const { load, distanceKm, machineId, roads } = trip;
  if (distanceKm !== null || machineId !== null || load.cargo.length > 0 || load.scale !== null || roads !== null)
    return;
  given.refuse(
    'distanceKm',
    'Enter how far it went, or what it carried: a trip of which nothing is known is no record.',
  );
}
