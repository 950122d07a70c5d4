import type { TowVehicle } from '../../rules/facts/use.js';
import type { YardTx } from '../../store/database.js';
import type { KeptJob } from '../../store/job-store.js';
import type { MachineStore } from '../../store/machine-store.js';
import type { MembershipStore } from '../../store/membership-store.js';
import type { TowVehicleStore } from '../../store/tow-vehicle-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { Given } from '../input/given.js';
import type { JobPlan } from '../input/job-input.js';
import { completeLoad } from '../machines/complete-load.js';

/** Finds in the yard what a haul to come names: trailer, machine, tow vehicle, people. */
export class FindJobNames {
  constructor(
    private readonly trailers: TrailerStore,
    private readonly machines: MachineStore,
    private readonly towVehicles: TowVehicleStore,
    private readonly members: MembershipStore,
  ) {}

  /** The job with all of it found; what cannot stand is noted on `given`. Whoever hauls drives, unless said otherwise. */
  async complete(tx: YardTx, given: Given, plan: JobPlan): Promise<Omit<KeptJob, 'id' | 'state'>> {
    const { towVehicleId, ...job } = plan;
    const trailer = plan.trailerId === null ? null : await this.trailers.find(tx, plan.trailerId);
    if (plan.trailerId !== null && trailer === null) given.refuse('trailerId', "Choose one of the yard's trailers.");
    if (trailer !== null && trailer.status !== 'in-service') {
      given.refuse('trailerId', `${trailer.yardNumber} is ${trailer.status}; choose a trailer in service.`);
    }
    const load = await completeLoad(tx, this.machines, given, plan.machineId, plan.load);
    const towVehicle = await this.towVehicle(tx, given, towVehicleId);
    const hauler = plan.haulerPersonId === null ? null : await this.members.find(tx, plan.haulerPersonId);
    if (plan.haulerPersonId !== null && (hauler === null || hauler.leftOn !== null)) {
      given.refuse('haulerPersonId', "Choose one of the yard's people, who has not left.");
    }
    const driver = plan.driver ?? (hauler === null ? null : { name: hauler.name, cdl: hauler.cdl });
    return { ...job, load, towVehicle, driver };
  }

  private async towVehicle(tx: YardTx, given: Given, towVehicleId: string | null): Promise<TowVehicle | null> {
    const towVehicle = towVehicleId === null ? null : await this.towVehicles.find(tx, towVehicleId);
    if (towVehicleId !== null && towVehicle === null) {
      given.refuse('towVehicleId', "Choose one of the yard's tow vehicles.");
    }
    return towVehicle;
  }
}
