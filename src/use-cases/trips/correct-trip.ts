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
import { readTrip, type TripInput } from '../input/trip-input.js';
import { completeLoad } from '../machines/complete-load.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export type CorrectTripInput = TripInput & {
  readonly trailerId: string;
  /** The trip as it stands. */
  readonly tripId: string;
  readonly note?: string | null;
};

/** Says what a recorded trip should have been, whole. The mistaken record stays in the history. */
@Injectable()
export class CorrectTrip {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly trips: TripStore,
    private readonly machines: MachineStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(
    caller: Caller,
    input: CorrectTripInput,
  ): Promise<Outcome<{ readonly tripId: string; readonly raised: readonly Flag[] }>> {
    if (!may(caller, 'hand')) return notAllowed('hand');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const correctsId = given.needId('tripId', 'the trip to mend');
    const trip = readTrip(given, caller.today);
    const note = given.text('note', 'the note', TEXT.page);
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const before = await this.trips.find(tx, trailerId, correctsId);
      if (before === null) return notFound('trip');
      const load = await completeLoad(tx, this.machines, given, trip.machineId, trip.load);
      if (given.problems.length > 0) return invalid(given.problems);
      const after = { ...trip, load, jobId: before.jobId };
      const tripId = await this.trips.insert(tx, trailerId, after, { ...recordedBy(caller), correctsId, note });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'correct-trip',
        subject: 'trip',
        subjectId: tripId,
        trailerId,
        detail: { before, after, note },
      });
      const { raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ tripId, raised });
    });
  }
}
