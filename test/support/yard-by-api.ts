import { addDays, type CivilDate } from '../../src/rules/calendar/civil-date.js';
import { miles } from '../../src/rules/units/distance.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { computationNamed } from '../../src/use-cases/calc/calculate.js';
import { type ApiClient, clientOf } from './api-client.js';
import type { TestApp, YardOfTest } from './app.js';
import { aBuild, aFullBuild, aTire, cargo, tiresOn } from './trailers.js';

/** The smallest PNG there is: one grey point. */
const PNG = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==';

/** One request that changes something, with a body that is accepted and has as many fields filled in as there are. */
export interface Writing {
  readonly method: 'POST' | 'PATCH' | 'PUT';
  /** As the route is registered: `/api/trailers/:trailerId/trips`. */
  readonly route: string;
  readonly params: Readonly<Record<string, string>>;
  readonly body: Readonly<Record<string, unknown>>;
}

export function pathOf(route: string, params: Readonly<Record<string, string>>): string {
  return route.replace(/:(\w+)/g, (_, name: string) => {
    const value = params[name];
    if (value === undefined) throw new Error(`${route}: nobody said what to put for :${name}`);
    return value;
  });
}

/**
 * A yard in which there is something of every kind, told through the API by its owner, and every request by which it
 * could be changed further. Everything in it that has a name carries `mark`, so that it is known wherever it turns up.
 */
export async function yardByApi(service: TestApp, mark: string) {
  const yard: YardOfTest = await service.makeYard(`${mark} yard`);
  const owner = await clientOf(service, yard, yard.owner);
  const { today } = await owner.must<{ today: CivilDate }>('GET', '/api/me');
  const day = (offset: number) => addDays(today, offset);
  const add = addTo(owner);

  const build = aBuild();
  const { trailerId } = await add('trailers', { yardNumber: `${mark}-1`, build, parts: tiresOn(2) });
  const { trailerId: other } = await add('trailers', { yardNumber: `${mark}-2`, build, parts: tiresOn(2) });
  const machine = {
    name: `${mark} excavator`,
    massKg: lb(7_650),
    basis: 'weighed',
    lengthM: feet(15),
    widthM: inch(61),
    balancePointM: feet(8),
    contact: 'rubber-tracks',
    contactCount: 2,
    contactLengthM: inch(62),
    contactWidthM: inch(12),
    wheelbaseM: inch(66),
    clearanceM: inch(11),
  };
  const { machineId } = await add('machines', machine);
  const { machineId: oldMachineId } = await add('machines', machine);
  const towVehicle = {
    name: `${mark} truck`,
    gvwrKg: lb(11_200),
    massKg: lb(7_400),
    gcwrKg: lb(26_000),
    hitchRatingKg: lb(18_500),
    hitchTongueN: lbf(1_850),
    ballSizeM: inch(2.3125),
    ballHeightM: inch(20),
  };
  const { towVehicleId } = await add('tow-vehicles', towVehicle);
  const load = {
    cargo: [
      cargo(`${mark} cargo`, 5_000, { fromCouplerM: inch(182) }),
      cargo(`${mark} chains`, 120, { remedy: 'leave-off' }),
    ],
    balancePointM: inch(180),
    scale: { grossKg: lb(9_020), tongueN: lbf(1_000), axleN: [lbf(4_000), lbf(4_020)] },
    hitchHeightM: inch(19),
    offCentreM: inch(-2),
    tieDowns: [
      { count: 4, workingLoadKg: lb(6_600), way: 'direct' },
      { count: 1, way: 'over' },
    ],
  };
  const trip = {
    startedOn: day(-1),
    endedOn: today,
    distanceKm: miles(40),
    machineId,
    load,
    roads: ['gravel'],
    note: `${mark} mud`,
  };
  const at = `trailers/${trailerId}`;
  const { tripId } = await add(`${at}/trips`, trip);
  const { tripId: wrongTripId } = await add(`${at}/trips`, trip);
  const { readingId } = await add(`${at}/readings`, { takenOn: day(-1), shownKm: 1_609 });
  const { readingId: wrongReadingId } = await add(`trailers/${other}/readings`, { takenOn: day(-1), shownKm: 100 });
  const haul = {
    startsOn: today,
    endsOn: day(2),
    distanceKm: miles(80),
    work: 'hire',
    commercial: true,
    machineId,
    load,
    towVehicleId,
    driver: { name: `${mark} driver`, cdl: 'none' },
    haulerPersonId: yard.hand.id,
  };
  const job = { name: `${mark} job`, ...haul, trailerId, customer: `${mark} customer`, note: `${mark} gate code` };
  const { jobId } = await add('jobs', job);
  const { jobId: jobToCancel } = await add('jobs', job);
  const { jobId: jobToFinish } = await add('jobs', job);
  const { partId: partToRemove } = await add(`${at}/parts`, { kind: 'battery', fittedOn: day(-1), name: mark });
  const { partId } = await add(`${at}/parts`, aTire('spare'));
  const { partId: wrongPartId } = await add(`${at}/parts`, { kind: 'jack', fittedOn: day(-1) });
  const { rows: kinds } = await owner.must<{ rows: { id: string; code: string }[] }>('GET', '/api/check-kinds');
  const kind = (code: string): string => kinds.find((one) => one.code === code)?.id ?? code;
  const check = {
    doneOn: day(-1),
    outcome: 'pass',
    lines: [
      { code: 'races', result: 'ok', position: '1L' },
      { code: 'end-play', result: 'ok', position: '1L', measured: { quantity: 'end-play-mm', value: 0.1 } },
    ],
    inspectedBy: 'own',
    proofOnTrailer: true,
    byPersonId: yard.shop.id,
    note: `${mark} two seals`,
    costCents: 4_200,
    photos: [{ mediaType: 'image/png', base64: PNG }],
  };
  const checkKindId = kind('hub-repack');
  const { checkRecordId } = await add(`${at}/checks`, { checkKindId, ...check, doneOn: today });
  const { checkRecordId: wrongCheckId } = await add(`${at}/checks`, { checkKindId, ...check, doneOn: day(-2) });
  const { photoIds } = await owner.must<{ photoIds: string[] }>('GET', `/api/${at}/checks/${checkRecordId}`);
  const marks = aTire('1R', { dateCode: '1224' }).tire;
  const looked = {
    on: today,
    seen: [
      { thing: 'tire', position: '1R', condition: 'sound', tire: marks, note: `${mark} chalked` },
      { thing: 'ramp', position: 'right', condition: 'sound' },
    ],
    photos: [{ thing: 'ramp', position: 'right', mediaType: 'image/png', base64: PNG }],
    signature: { name: `${mark} customer`, strokes: [{ points: [10, 20, 300, 80, 640, 20] }] },
  };
  const handOut = {
    ...looked,
    customer: `${mark} customer`,
    hitch: {
      ball: { sizeM: inch(2), ratingKg: lb(7_500) },
      swappedTo: { sizeM: inch(2.3125), ratingKg: lb(20_000) },
      plug: 'lamps-and-brakes',
    },
  };
  const { trailerId: third } = await add('trailers', { yardNumber: `${mark}-5`, build, parts: tiresOn(2) });
  const { jobId: jobToHandOut } = await add('jobs', { ...job, trailerId: other });
  const { handoverId } = await add(`${at}/hand-out`, handOut);
  const { handoverId: wrongHandoverId } = await add(`trailers/${third}/hand-out`, handOut);
  const { holdId } = await add(`${at}/holds`, { reason: `${mark} crack at the tongue` });
  const { rows: notices } = await owner.must<{ rows: { id: string }[] }>('GET', '/api/notices');
  const { rows: builds } = await owner.must<{ rows: { fact: { id: string } }[] }>('GET', `/api/${at}/builds`);

  const ids = {
    trailerId,
    machineId,
    towVehicleId,
    tripId,
    readingId,
    jobId,
    partId,
    checkKindId,
    checkRecordId,
    holdId,
    handoverId,
    photoId: there(photoIds[0]),
    noticeId: there(notices[0]?.id),
    buildSheetId: there(builds[0]?.fact.id),
    personId: yard.shop.id,
    computation: 'tongue-weight',
  };
  const checkKind = {
    code: 'winch-look',
    name: `${mark} winch`,
    triggers: [
      { kind: 'days', every: 90 },
      { kind: 'months', every: 6, toMonthEnd: false },
      { kind: 'distance', everyKm: 8_000 },
      { kind: 'trips', every: 20 },
      { kind: 'event', event: 'submerged', atKm: [32] },
      { kind: 'fixed-date', date: 'insurance' },
    ],
    appliesTo: { bodies: ['fixed-deck'], brakes: ['electric'] },
    safety: true,
    blocks: 'all-jobs',
    proof: { what: 'the report', keepMonths: 14 },
    work: { hours: 1, place: 'shop', parts: ['rope'], bundle: 'hub', together: ['look at the drum'] },
    leadDays: 10,
    ownerPersonId: yard.shop.id,
    backupPersonId: yard.hand.id,
    source: 'our own choice',
    lines: [
      { code: 'rope', text: 'Rope without broken strands', kind: 'tick', safety: true },
      { code: 'torque', text: 'Bolts', kind: 'measure', quantity: 'torque-nm', safety: false },
    ],
  };
  const identity = {
    name: `${mark} long one`,
    vin: '1X9BF2022A0LM1234',
    boughtOn: day(-900),
    registrationExpiresOn: day(200),
    insuranceExpiresOn: day(300),
    stored: 'open',
    registrationPlate: `${mark} 1`,
    boughtForCents: 1_250_000,
    note: `${mark} scratches`,
  };
  const fullBuild = aFullBuild();

  const of = (
    method: Writing['method'],
    route: string,
    params: Partial<typeof ids>,
    body: Writing['body'],
  ): Writing => ({ method, route: `/api/${route}`, params: params as Record<string, string>, body });
  const trailer = { trailerId };
  const writings: readonly Writing[] = [
    of('POST', 'calc/:computation', { computation: ids.computation }, there(computationNamed(ids.computation)).example),
    of('POST', 'fit', {}, { ...haul, trailerId }),
    of('POST', 'fit/ranking', {}, haul),
    of(
      'POST',
      'trailers',
      {},
      {
        yardNumber: `${mark}-3`,
        ...identity,
        build: fullBuild,
        builtSince: day(-1),
        parts: [
          { ...aTire('1L'), name: 'new', costCents: 15_000 },
          { kind: 'hub-bearings', position: '1L', bearings: { inner: '25580', outer: '14125A' } },
        ],
      },
    ),
    of('PATCH', 'trailers/:trailerId', trailer, { yardNumber: `${mark}-4`, status: 'in-service', ...identity }),
    of('POST', 'trailers/:trailerId/builds', trailer, { build: fullBuild, effectiveFrom: day(-1) }),
    of(
      'POST',
      'trailers/:trailerId/builds/:buildSheetId/correct',
      { ...trailer, buildSheetId: ids.buildSheetId },
      {
        build: fullBuild,
        effectiveFrom: day(-3),
      },
    ),
    of('POST', 'trailers/:trailerId/parts', trailer, {
      ...aTire('1L', { fittedOn: today }),
      name: 'new',
      costCents: 15_000,
      replacedFor: 'damaged',
    }),
    of(
      'POST',
      'trailers/:trailerId/parts/:partId/remove',
      { ...trailer, partId: partToRemove },
      { removedOn: today, removedFor: 'worn-out' },
    ),
    of(
      'POST',
      'trailers/:trailerId/parts/:partId/correct',
      { ...trailer, partId },
      {
        ...aTire('spare'),
        removedOn: today,
        removedFor: 'moved',
      },
    ),
    of('POST', 'trailers/:trailerId/parts/:partId/withdraw', { ...trailer, partId: wrongPartId }, {}),
    of('POST', 'trailers/:trailerId/trips', trailer, trip),
    of('POST', 'trailers/:trailerId/trips/:tripId/correct', { ...trailer, tripId }, trip),
    of('POST', 'trailers/:trailerId/trips/:tripId/withdraw', { ...trailer, tripId: wrongTripId }, { reason: 'no' }),
    of('POST', 'trailers/:trailerId/readings', trailer, {
      takenOn: today,
      shownKm: 20,
      kind: 'rolled-over',
      meterSpanKm: 1_700,
    }),
    of(
      'POST',
      'trailers/:trailerId/readings/:readingId/correct',
      { ...trailer, readingId },
      {
        takenOn: day(-1),
        shownKm: 1_610,
        kind: 'read',
      },
    ),
    of('POST', 'trailers/:trailerId/readings/:readingId/withdraw', { trailerId: other, readingId: wrongReadingId }, {}),
    of('POST', 'trailers/:trailerId/checks', trailer, { checkKindId, ...check }),
    of(
      'POST',
      'trailers/:trailerId/checks/:checkRecordId/correct',
      { ...trailer, checkRecordId },
      {
        ...check,
        doneOn: today,
      },
    ),
    of('POST', 'trailers/:trailerId/checks/:checkRecordId/withdraw', { ...trailer, checkRecordId: wrongCheckId }, {}),
    of('POST', 'trailers/:trailerId/hand-out', { trailerId: other }, { ...handOut, jobId: jobToHandOut }),
    of('POST', 'trailers/:trailerId/take-back', trailer, { ...looked, ballBack: true }),
    of(
      'POST',
      'trailers/:trailerId/handovers/:handoverId/withdraw',
      { trailerId: third, handoverId: wrongHandoverId },
      { reason: 'another trailer' },
    ),
    of('POST', 'trailers/:trailerId/holds', trailer, { reason: `${mark} ramp bent` }),
    of('POST', 'trailers/:trailerId/holds/:holdId/lift', { ...trailer, holdId }, { reason: 'welded' }),
    of('POST', 'machines', {}, machine),
    of('PUT', 'machines/:machineId', { machineId }, machine),
    of('POST', 'machines/:machineId/replace', { machineId: oldMachineId }, { replacedOn: today, by: machine }),
    of('POST', 'tow-vehicles', {}, towVehicle),
    of('PUT', 'tow-vehicles/:towVehicleId', { towVehicleId }, towVehicle),
    of('POST', 'jobs', {}, job),
    of('PATCH', 'jobs/:jobId', { jobId }, job),
    of('POST', 'jobs/:jobId/cancel', { jobId: jobToCancel }, { reason: 'rain' }),
    of('POST', 'jobs/:jobId/finish', { jobId: jobToFinish }, { ...trip, startedOn: today }),
    of('POST', 'check-kinds', {}, checkKind),
    of(
      'PUT',
      'check-kinds/:checkKindId',
      { checkKindId: kind('brake-adjust') },
      { ...checkKind, code: 'brake-adjust' },
    ),
    of('POST', 'check-kinds/:checkKindId/retire', { checkKindId: kind('annual-inspection') }, {}),
    of('POST', 'notices/:noticeId/send-again', { noticeId: ids.noticeId }, {}),
    of(
      'PATCH',
      'yard',
      {},
      {
        name: `${mark} yard and sons`,
        timeZone: 'America/New_York',
        place: `${mark} by the river`,
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
      },
    ),
    of('POST', 'results/rebuild', {}, {}),
  ];
  return { yard, owner, ids, writings };
}

export type YardByApi = Awaited<ReturnType<typeof yardByApi>>;

function addTo(owner: ApiClient) {
  return (what: string, body: unknown) => owner.must<Record<string, string> & Made>('POST', `/api/${what}`, body);
}

/** What adding answers, by what was added; each answer has its own. */
interface Made {
  readonly trailerId: string;
  readonly machineId: string;
  readonly towVehicleId: string;
  readonly tripId: string;
  readonly readingId: string;
  readonly jobId: string;
  readonly partId: string;
  readonly checkRecordId: string;
  readonly holdId: string;
  readonly handoverId: string;
}

function there<T>(id: T | undefined | null): T {
  if (id === undefined || id === null) throw new Error('something of the yard is not there');
  return id;
}
