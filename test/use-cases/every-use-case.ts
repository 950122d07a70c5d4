import type { Type } from '@nestjs/common';
import { addDays } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { km, miles } from '../../src/rules/units/distance.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch, metres } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { CheckFit } from '../../src/use-cases/assessments/check-fit.js';
import { FindBetterTrailer } from '../../src/use-cases/assessments/find-better-trailer.js';
import { RankTrailers } from '../../src/use-cases/assessments/rank-trailers.js';
import { RebuildResults } from '../../src/use-cases/assessments/rebuild-results.js';
import type { Caller, Role } from '../../src/use-cases/caller.js';
import { CorrectCheck } from '../../src/use-cases/checks/correct-check.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { HandOut } from '../../src/use-cases/handovers/hand-out.js';
import { TakeBack } from '../../src/use-cases/handovers/take-back.js';
import { WithdrawHandover } from '../../src/use-cases/handovers/withdraw-handover.js';
import { LiftHold } from '../../src/use-cases/holds/lift-hold.js';
import { OpenHold } from '../../src/use-cases/holds/open-hold.js';
import { BookJob } from '../../src/use-cases/jobs/book-job.js';
import { CancelJob } from '../../src/use-cases/jobs/cancel-job.js';
import { ChangeJob } from '../../src/use-cases/jobs/change-job.js';
import { FinishJob } from '../../src/use-cases/jobs/finish-job.js';
import { AddMachine } from '../../src/use-cases/machines/add-machine.js';
import { AddTowVehicle } from '../../src/use-cases/machines/add-tow-vehicle.js';
import { ReplaceMachine } from '../../src/use-cases/machines/replace-machine.js';
import { ReviseMachine } from '../../src/use-cases/machines/revise-machine.js';
import { ReviseTowVehicle } from '../../src/use-cases/machines/revise-tow-vehicle.js';
import type { Outcome } from '../../src/use-cases/outcome.js';
import { CorrectReading } from '../../src/use-cases/readings/correct-reading.js';
import { RecordReading } from '../../src/use-cases/readings/record-reading.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { CorrectPart } from '../../src/use-cases/trailers/correct-part.js';
import { FitPart } from '../../src/use-cases/trailers/fit-part.js';
import { RemovePart } from '../../src/use-cases/trailers/remove-part.js';
import { ReviseBuildSheet } from '../../src/use-cases/trailers/revise-build-sheet.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { CorrectTrip } from '../../src/use-cases/trips/correct-trip.js';
import { RecordTrip } from '../../src/use-cases/trips/record-trip.js';
import { WithdrawTrip } from '../../src/use-cases/trips/withdraw-trip.js';
import { RetireCheckKind } from '../../src/use-cases/yard/retire-check-kind.js';
import { SetCheckKind } from '../../src/use-cases/yard/set-check-kind.js';
import { SetYardSettings } from '../../src/use-cases/yard/set-yard-settings.js';
import { aBuild, aFullBuild, aTire, cargo, TODAY, tiresOn } from '../support/trailers.js';
import { must, type UseCases, type Yard } from '../support/yard.js';

type AnyUseCase = { run(caller: Caller, input: never): Promise<Outcome<unknown>> };

export interface Case {
  readonly useCase: Type<AnyUseCase>;
  /** The least role that may do it. */
  readonly needs: Role;
  /** An input that is accepted, with as many fields filled in as it has; null where there is none. */
  readonly input: object | null;
}

const YESTERDAY = addDays(TODAY, -1);
const KINDS = DEFAULT_CHECK_KINDS.filter((kind) =>
  ['tire-pressure', 'hub-repack', 'annual-inspection', 'brake-adjust'].includes(kind.code),
);

const LOAD = {
  cargo: [cargo('load', 5_000, { fromCouplerM: inch(182) }), cargo('chains', 120, { remedy: 'leave-off' })],
  balancePointM: inch(180),
  scale: { grossKg: lb(9_020), tongueN: lbf(1_000), axleN: [lbf(4_000), lbf(4_020)] },
  hitchHeightM: inch(19),
  offCentreM: inch(-2),
  tieDowns: [
    { count: 4, workingLoadKg: lb(6_600), way: 'direct' as const },
    { count: 1, way: 'over' as const },
  ],
};

const TRIP = { startedOn: YESTERDAY, endedOn: TODAY, distanceKm: miles(40), load: LOAD, roads: ['gravel'] as const };

const MACHINE = {
  name: 'Mini excavator',
  massKg: lb(7_650),
  basis: 'weighed' as const,
  lengthM: feet(15),
  widthM: inch(61),
  balancePointM: feet(8),
  contact: 'rubber-tracks' as const,
  contactCount: 2,
  contactLengthM: inch(62),
  contactWidthM: inch(12),
  wheelbaseM: inch(66),
  clearanceM: inch(11),
};

const TOW_VEHICLE = {
  name: 'The white truck',
  gvwrKg: lb(11_200),
  massKg: lb(7_400),
  gcwrKg: lb(26_000),
  hitchRatingKg: lb(18_500),
  hitchTongueN: lbf(1_850),
  ballSizeM: inch(2.3125),
  ballHeightM: inch(20),
};

const TRAILER = {
  yardNumber: 'T-99',
  name: 'the new one',
  vin: '1X9BF2022A0LM1234',
  boughtOn: TODAY,
  registrationExpiresOn: addDays(TODAY, 200),
  insuranceExpiresOn: addDays(TODAY, 300),
  stored: 'open' as const,
  registrationPlate: 'AB 1234',
  boughtForCents: 1_250_000,
  note: 'a few scratches',
};

const HUB_LINES = [
  { code: 'races', result: 'ok' as const, position: '1L', measured: null },
  {
    code: 'end-play',
    result: 'ok' as const,
    position: '1L',
    measured: { quantity: 'end-play-mm' as const, value: 0.1 },
  },
];

const LOOKED = {
  on: TODAY,
  seen: [
    {
      thing: 'tire' as const,
      position: '1R',
      condition: 'sound' as const,
      tire: aTire('1R', { dateCode: '1224' }).tire,
      note: 'chalked',
    },
    { thing: 'ramp' as const, position: 'right', condition: 'rubbed' as const },
  ],
  signature: { name: 'Ada Brindle', strokes: [{ points: [10, 20, 300, 80, 640, 20] }] },
};

const HAND_OUT = {
  ...LOOKED,
  customer: 'Brindle Pools',
  hitch: {
    ball: { sizeM: inch(2), ratingKg: lb(7_500) },
    swappedTo: { sizeM: inch(2.3125), ratingKg: lb(20_000) },
    plug: 'lamps-and-brakes' as const,
  },
};

const CHECK_KIND = {
  code: 'winch-look',
  name: 'Winch: look',
  triggers: [
    { kind: 'days' as const, every: 90 },
    { kind: 'months' as const, every: 6, toMonthEnd: false },
    { kind: 'distance' as const, everyKm: km(5_000) },
    { kind: 'trips' as const, every: 20 },
    { kind: 'event' as const, event: 'submerged' as const, atKm: [km(20)] },
    { kind: 'fixed-date' as const, date: 'insurance' as const },
  ],
  appliesTo: { bodies: ['fixed-deck'], brakes: ['electric'] },
  safety: true,
  blocks: 'all-jobs' as const,
  proof: { what: 'the report', keepMonths: 14 },
  work: { hours: 1, place: 'shop' as const, parts: ['rope'], bundle: 'hub', together: ['look at the drum'] },
  leadDays: 10,
  source: 'our own choice',
  lines: [
    { code: 'rope', text: 'Rope without broken strands', kind: 'tick' as const, quantity: null, safety: true },
    {
      code: 'torque',
      text: 'Bolts',
      kind: 'measure' as const,
      quantity: 'torque-nm' as const,
      safety: false,
    },
  ],
};

/** A yard in which every use case has something to work on, and an input for each that is accepted. */
export async function everyUseCase(service: UseCases): Promise<{ yard: Yard; cases: readonly Case[] }> {
  const yard = await service.makeYard({ checkKinds: KINDS });
  const owner = yard.as('owner');
  const { trailerId } = await must(
    service.get(AddTrailer).run(owner, { yardNumber: 'T-01', build: aBuild(), parts: tiresOn(2) }),
  );
  const { machineId } = await must(service.get(AddMachine).run(owner, MACHINE));
  const { machineId: oldMachineId } = await must(service.get(AddMachine).run(owner, { ...MACHINE, name: 'Old' }));
  const { towVehicleId } = await must(service.get(AddTowVehicle).run(owner, TOW_VEHICLE));
  const trip = () => must(service.get(RecordTrip).run(owner, { trailerId, ...TRIP })).then((done) => done.tripId);
  const [tripToCorrect, tripToWithdraw] = [await trip(), await trip()];
  const { readingId } = await must(
    service.get(RecordReading).run(owner, { trailerId, takenOn: YESTERDAY, shownKm: km(1_000) }),
  );
  const job = {
    name: 'Hollow Rd',
    trailerId,
    startsOn: TODAY,
    endsOn: addDays(TODAY, 2),
    distanceKm: miles(80),
    work: 'hire' as const,
    customer: 'Ostrow Fencing',
    commercial: true,
    machineId,
    load: LOAD,
    towVehicleId,
    driver: { name: 'Theo Fenn', cdl: 'none' as const },
    haulerPersonId: yard.idOf('hand'),
    note: 'gate code 12',
  };
  const book = () => must(service.get(BookJob).run(owner, job)).then((booked) => booked.jobId);
  const [toChange, toCancel, toFinish] = [await book(), await book(), await book()];
  const { partId: partToRemove } = await must(
    service.get(FitPart).run(owner, { trailerId, kind: 'battery', fittedOn: YESTERDAY }),
  );
  const { partId: partToCorrect } = await must(service.get(FitPart).run(owner, { trailerId, ...aTire('spare') }));
  const check = {
    trailerId,
    checkKindId: yard.checkKindId('hub-repack'),
    doneOn: TODAY,
    outcome: 'pass' as const,
    lines: HUB_LINES,
    inspectedBy: 'own' as const,
    proofOnTrailer: true,
    byPersonId: yard.idOf('shop'),
    note: 'two seals',
    costCents: 4_200,
    signedName: 'Wren Ostrow',
  };
  const { checkRecordId } = await must(service.get(RecordCheck).run(owner, check));
  const { holdId } = await must(service.get(OpenHold).run(owner, { trailerId, reason: 'crack at the tongue' }));
  const { checkKindId: _, ...checkToCorrect } = check;
  const another = async (yardNumber: string) =>
    (await must(service.get(AddTrailer).run(owner, { yardNumber, build: aBuild(), parts: tiresOn(2) }))).trailerId;
  const [toHandOut, isOut, notOut] = [await another('T-11'), await another('T-12'), await another('T-13')];
  const { jobId: jobToHandOut } = await must(service.get(BookJob).run(owner, { ...job, trailerId: toHandOut }));
  await must(service.get(HandOut).run(owner, { ...HAND_OUT, trailerId: isOut }));
  const { handoverId } = await must(service.get(HandOut).run(owner, { ...HAND_OUT, trailerId: notOut }));

  const of = (useCase: unknown, needs: Role, input: object | null): Case => ({
    useCase: useCase as Type<AnyUseCase>,
    needs,
    input,
  });
  const cases = [
    of(CheckFit, 'viewer', { ...without(job, ['name', 'customer', 'note']) }),
    of(RankTrailers, 'viewer', { ...without(job, ['name', 'customer', 'note']) }),
    of(FindBetterTrailer, 'viewer', { trailerId, flag: 'class-drift' }),
    of(RecordTrip, 'hand', { trailerId, ...TRIP, machineId, note: 'muddy' }),
    of(CorrectTrip, 'hand', { trailerId, tripId: tripToCorrect, ...TRIP, machineId, note: 'muddy' }),
    of(WithdrawTrip, 'shop', { trailerId, tripId: tripToWithdraw, reason: 'another trailer' }),
    of(RecordReading, 'hand', {
      trailerId,
      takenOn: TODAY,
      shownKm: km(20),
      kind: 'rolled-over',
      meterSpanKm: km(1_100),
    }),
    of(CorrectReading, 'hand', { trailerId, readingId, takenOn: YESTERDAY, shownKm: km(1_005), kind: 'read' }),
    of(BookJob, 'hand', job),
    of(ChangeJob, 'hand', { jobId: toChange, ...job, name: 'Hollow Road' }),
    of(CancelJob, 'hand', { jobId: toCancel, reason: 'rain' }),
    of(FinishJob, 'hand', { jobId: toFinish, ...TRIP, startedOn: TODAY, machineId, note: 'muddy' }),
    of(RecordCheck, 'hand', {
      ...check,
      doneOn: YESTERDAY,
      paintedNumber: 'T-01',
      seen: {
        yardNumber: 'T-01',
        buildSheetId: null,
        linesMark: 'as it was',
        openHoldIds: [],
        lastDoneOn: YESTERDAY,
        lastRecordIds: [],
      },
    }),
    of(HandOut, 'hand', { ...HAND_OUT, trailerId: toHandOut, jobId: jobToHandOut }),
    of(TakeBack, 'hand', { ...LOOKED, trailerId: isOut, ballBack: true }),
    of(WithdrawHandover, 'shop', { trailerId: notOut, handoverId, reason: 'another trailer' }),
    of(LiftHold, 'shop', { trailerId, holdId, reason: 'welded and looked at', checkRecordId }),
    of(CorrectCheck, 'shop', { ...checkToCorrect, checkRecordId, costCents: 4_300 }),
    of(OpenHold, 'hand', { trailerId, reason: 'ramp bent' }),
    of(AddTrailer, 'shop', {
      ...TRAILER,
      build: aFullBuild(),
      builtSince: YESTERDAY,
      parts: [
        { ...aTire('1L'), name: 'new', costCents: 15_000 },
        { kind: 'hub-bearings', position: '1L', bearings: { inner: '25580', outer: '14125A' } },
      ],
    }),
    of(UpdateTrailer, 'shop', { trailerId, ...TRAILER, yardNumber: 'T-02', status: 'in-service' }),
    of(ReviseBuildSheet, 'shop', { trailerId, build: aFullBuild(), effectiveFrom: YESTERDAY }),
    of(FitPart, 'shop', {
      trailerId,
      ...aTire('1L', { fittedOn: TODAY }),
      name: 'new',
      costCents: 15_000,
      replacedFor: 'damaged',
    }),
    of(RemovePart, 'shop', { trailerId, partId: partToRemove, removedOn: TODAY, removedFor: 'worn-out' }),
    of(CorrectPart, 'shop', {
      trailerId,
      partId: partToCorrect,
      ...aTire('spare'),
      removedOn: TODAY,
      removedFor: 'moved',
    }),
    of(AddMachine, 'shop', MACHINE),
    of(ReviseMachine, 'shop', { machineId, ...MACHINE, balancePointM: metres(2) }),
    of(ReplaceMachine, 'shop', { machineId: oldMachineId, replacedOn: TODAY, by: MACHINE }),
    of(AddTowVehicle, 'shop', TOW_VEHICLE),
    of(ReviseTowVehicle, 'shop', { towVehicleId, ...TOW_VEHICLE }),
    of(SetYardSettings, 'owner', {
      name: 'Quill Grading and Sons',
      timeZone: 'America/New_York',
      place: 'by the river',
      quietFromHour: 21,
      quietToHour: 5,
      planHour: 5,
      policy: {
        tireAgeLimitYears: 7,
        weighFirstShare: 0.02,
        useWindowDays: 60,
        driftTrips: 12,
        decayIndex: 55,
        deckLifeYears: 9,
      },
    }),
    of(SetCheckKind, 'owner', {
      ...CHECK_KIND,
      checkKindId: yard.checkKindId('brake-adjust'),
      ownerPersonId: yard.idOf('shop'),
      backupPersonId: yard.idOf('hand'),
    }),
    of(RetireCheckKind, 'owner', { checkKindId: yard.checkKindId('annual-inspection') }),
    of(RebuildResults, 'owner', null),
  ];
  return { yard, cases };
}

function without<T extends object>(from: T, keys: readonly (keyof T)[]): object {
  return Object.fromEntries(Object.entries(from).filter(([key]) => !keys.includes(key as keyof T)));
}
