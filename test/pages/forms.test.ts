import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import type { Browser, TestApp, YardOfTest } from '../support/app.js';
import { startApp } from '../support/app.js';

let service: TestApp;
let yard: YardOfTest;
let owner: Browser;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Forms Field');
  owner = await service.signedIn(yard.owner);
});
afterAll(() => service.close());

/** A trailer as somebody types it: plate 14,000, two 7,000 lb axles alike, weighed empty. */
const PLATE = {
  'build.body': 'fixed-deck',
  'build.plate.gvwr': '14,000',
  'build.plate.coldPressure': '80 psi',
  'build.empty.mass': '3,900 lb',
  'build.empty.basis': 'weighed',
  'build.axleCount': '2',
  'build.axlesAlike': 'yes',
  'build.axles.0.gawr': '7000',
  'build.axles.0.brakes': 'electric',
  'build.suspension': 'slipper-spring',
  'build.hitch.kind': 'bumper-pull',
  'build.hitch.ballSize': '2-5/16',
  'build.hitch.couplerRating': '21000',
  'build.deck.length': '20 ft',
  'tires.all.size': 'ST235/80R16',
  'tires.all.maxLoadSingle': '3,520',
  'tires.all.maxColdPressure': '80',
} as const;

async function addTrailer(number: string, more: Readonly<Record<string, string>> = {}): Promise<string> {
  const answer = await owner.post('/trailers/new', { yardNumber: number, ...PLATE, ...more });
  expect(answer.status, answer.body).toBe(303);
  return answer.location?.split('?')[0] ?? '';
}

/** What springs, decks, ramps and jacks are worked out from, as it is typed and as the form shows it again. */
const WORKINGS = {
  'build.axles.0.springRate': ['4,100 lb/in', '4100'],
  'build.axles.1.track': ['', '92'],
  'build.axles.0.track': ['92', '92'],
  'build.hitch.levelHeight': ['20', '20'],
  'build.deck.pivotFromCoupler': ['16 ft', '192'],
  'build.deck.boardCount': ['11', '11'],
  'build.deck.wood': ['southern-pine', 'southern-pine'],
  'build.deck.woodGrade': ['no-2', 'no-2'],
  'build.deck.treated': ['yes', 'yes'],
  'build.rear.rampLength': ['5 ft 6 in', '66'],
  'build.rear.rampRating': ['16,000', '16000'],
  'build.jacks.fromCoupler': ['24', '24'],
} as const;

const typedIn = (fields: Readonly<Record<string, readonly [string, string]>>, at: 0 | 1) =>
  Object.fromEntries(Object.entries(fields).map(([name, texts]) => [name, texts[at]]));

/** Where the sheet of a check is sent, as its page says; the first of the list when no name is given. */
async function sheetOf(trailer: string, name: string): Promise<string> {
  const list = (await owner.get(`${trailer}/checks`)).body;
  const page = linkIn(list, new RegExp(`href="(/sheets/[0-9a-f-]{36}/[0-9a-f-]{36})">${escaped(name)}`));
  return linkIn((await owner.get(page)).body, /action="(\/trailers\/[^"]+\/checks\/[0-9a-f-]{36})"/);
}

/** Something like `/machines/…` that a page leads to. */
function linkIn(body: string, pattern: RegExp): string {
  return pattern.exec(body)?.[1] ?? 'no such link';
}

describe('adding a trailer', () => {
  test('the gate of a yard without trailers says where to begin, and no longer once there is one', async () => {
    const fresh = await service.makeYard('Fresh Field');
    const newcomer = await service.signedIn(fresh.owner);
    expect((await newcomer.get('/')).body).toContain('<a href="/trailers/new">Add the first one from its plate.</a>');
    expect((await newcomer.post('/trailers/new', { yardNumber: 'F-1' })).status).toBe(303);
    expect((await newcomer.get('/')).body).not.toContain('Add the first one from its plate');
  });

  test('one entered from plate and sidewalls shows its limits in pounds, each with its origin', async () => {
    const path = await addTrailer('F-1', { 'tires.1L.dateCode': '1523', 'tires.1R.dateCode': '1623' });
    const { body } = await owner.get(path);
    expect(body).toContain('14,000 lb');
    expect(body).toContain('10,100 lb');
    expect(body).toContain('2-5/16 in');
    expect(body).toContain("the trailer's plate");
    expect(body).toContain('code 1523');
  });

  test('what nobody knows is listed with what it stops', async () => {
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-2' });
    expect(answer.status).toBe(303);
    const { body } = await owner.get(answer.location ?? '');
    expect(body).toContain('Not known');
    expect(body).toMatch(/The plate's GVWR|What the trailer is made of/);
  });

  test('a rating that is no number is named with its fix, what was typed stays, and nothing is written', async () => {
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-3', ...PLATE, 'build.plate.gvwr': 'fourteen' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Nothing was saved yet');
    expect(answer.body).toMatch(/Enter the plate's GVWR as a number, 500 to 80,000 lb/);
    expect(answer.body).toContain('value="fourteen"');
    expect(answer.body).toContain('value="20 ft"');
    expect(answer.body).toContain('href="#f-build-plate-gvwr"');
    expect((await owner.get('/trailers?text=F-3')).body).toContain('No trailer is like that');
  });

  test('a date code that no week has is refused at the tire it was typed for', async () => {
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-4', ...PLATE, 'tires.2R.dateCode': '5419' });
    expect(answer.status).toBe(422);
    expect(answer.body).toMatch(/id="f-tires-2R-dateCode-wrong"[^>]*>[^<]*week 54 of 2019/);
  });

  test('a date code typed once for all tires is wrong once', async () => {
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-4', ...PLATE, 'tires.all.dateCode': '5419' });
    expect(answer.status).toBe(422);
    expect(answer.body.match(/<a href="#f-tires-all-dateCode">/g)).toHaveLength(1);
  });

  test('a VIN that cannot be right is kept, and the trailer page says what is odd about it', async () => {
    const short = await addTrailer('F-17', { vin: '1HGCM82633A00435' });
    expect((await owner.get(short)).body).toContain('This VIN has 16 characters');
    const slipped = await addTrailer('F-18', { vin: '1HGCM82643A004352' });
    expect((await owner.get(slipped)).body).toContain('by the others its ninth should be 3, and it is 4');
    const right = await addTrailer('F-19', { vin: '1HGCM82633A004352' });
    expect((await owner.get(right)).body).not.toContain('VIN has');
    expect((await owner.get(right)).body).not.toContain('of this VIN is misread');
  });

  test('a number another trailer carries is refused', async () => {
    await addTrailer('F-5');
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-5' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Another trailer of this yard is F-5');
  });

  test('a build sheet opened and saved unchanged stays what it was', async () => {
    const path = await addTrailer('F-6', { 'build.wheels.nutTorque': '120', 'build.deck.width': '82.5' });
    const form = formIn((await owner.get(`${path}/build`)).body);
    expect(form).toMatchObject({
      'build.plate.gvwr': '14000',
      'build.deck.width': '82.5',
      'build.wheels.nutTorque': '120',
    });
    const answer = await owner.post(`${path}/build`, form);
    expect(answer.status, answer.body).toBe(303);
    expect(formIn((await owner.get(`${path}/build`)).body)).toEqual(form);
  });

  test('springs, boards, ramps and jacks are typed in pounds and inches, shown so, and stay what they were', async () => {
    const path = await addTrailer('F-7', typedIn(WORKINGS, 0));
    const { body } = await owner.get(path);
    for (const shown of ['4,100 lb per in', 'Southern pine', 'No. 2', '16,000 lb', '5 ft 6 in']) {
      expect(body).toContain(shown);
    }
    const form = formIn((await owner.get(`${path}/build`)).body);
    expect(form).toMatchObject(typedIn(WORKINGS, 1));
    const answer = await owner.post(`${path}/build`, form);
    expect(answer.status, answer.body).toBe(303);
    expect(formIn((await owner.get(`${path}/build`)).body)).toEqual(form);
  });

  test('a spring rate that no axle has is refused at its field', async () => {
    const answer = await owner.post('/trailers/new', {
      yardNumber: 'F-8',
      ...PLATE,
      'build.axles.0.springRate': '4.1',
    });
    expect(answer.status).toBe(422);
    expect(answer.body).toMatch(
      /id="f-build-axles-0-springRate-wrong"[^>]*>[^<]*100 to 20,000 lb per in \(17,513 to 3,502,537 N\/m\)/,
    );
  });

  test('the letter of a tire is read beside its load index', async () => {
    const path = await addTrailer('F-9', { 'tires.all.speedSymbol': 'm' });
    expect((await owner.get(path)).body).toContain('speed symbol M');
    const answer = await owner.post('/trailers/new', { yardNumber: 'F-9b', ...PLATE, 'tires.1L.speedSymbol': '81' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-tires-1L-speedSymbol-wrong"');
  });
});

describe('parts', () => {
  test('hub bearings are fitted with their numbers, and come off with a reason that the history tells', async () => {
    const path = await addTrailer('F-70');
    const hub = { kind: 'hub-bearings', position: '1L', fittedOn: '2025-03-02' };
    const wrong = await owner.post(`${path}/parts/new`, { ...hub, 'bearings.inner': 'grey one' });
    expect(wrong.status).toBe(422);
    expect(wrong.body).toContain('id="f-bearings-inner-wrong"');
    const fitted = await owner.post(`${path}/parts/new`, {
      ...hub,
      'bearings.inner': '25580',
      'bearings.outer': '14125a',
    });
    expect(fitted.status, fitted.body).toBe(303);
    const { body } = await owner.get(path);
    expect(body).toContain('inner 25580, outer 14125A');
    const remove = linkIn(body, /href="([^"]+\/remove)">Take off<span class="hidden-words">: Hub bearings/);
    const removed = await owner.post(remove, { removedOn: '2026-03-02', removedFor: 'damaged' });
    expect(removed.status, removed.body).toBe(303);
    expect((await owner.get(`${path}/history`)).body).toContain('broken or damaged');
  });

  test('a deck laid over a worn one says why that came off, and a first one cannot', async () => {
    const path = await addTrailer('F-71');
    const first = await owner.post(`${path}/parts/new`, {
      kind: 'deck',
      fittedOn: '2020-03-02',
      replacedFor: 'worn-out',
    });
    expect(first.status).toBe(422);
    expect(first.body).toContain('id="f-replacedFor-wrong"');
    expect((await owner.post(`${path}/parts/new`, { kind: 'deck', fittedOn: '2020-03-02' })).status).toBe(303);
    const next = await owner.post(`${path}/parts/new`, {
      kind: 'deck',
      fittedOn: '2026-03-01',
      replacedFor: 'worn-out',
    });
    expect(next.status, next.body).toBe(303);
    expect((await owner.get(`${path}/history`)).body).toContain('worn out');
  });
});

describe('recording what happened', () => {
  test('a trip over the plate puts the flag up, with by how much and from where', async () => {
    const path = await addTrailer('F-10');
    const answer = await owner.post(`${path}/trips/new`, {
      startedOn: '2026-03-01',
      distance: '42',
      'load.cargo.0.name': 'Track loader',
      'load.cargo.0.mass': '9,920',
      'load.cargo.2.name': 'Grapple',
      'load.cargo.2.mass': '1,050',
    });
    expect(answer.status, answer.body).toBe(303);
    const { body } = await owner.get(path);
    expect(body).toContain('Plate (GVWR): loaded past its limit');
    expect(body).toContain('14,870 lb against 14,000 lb, over by 870 lb');
  });

  test('a mended trip takes the flag down and stays in the history, struck out', async () => {
    const path = await addTrailer('F-11');
    const load = { 'load.cargo.0.name': 'Dozer', 'load.cargo.0.mass': '12,000' };
    await owner.post(`${path}/trips/new`, { startedOn: '2026-03-01', distance: '10', ...load });
    const mend = /href="([^"]+\/trips\/[0-9a-f-]{36})"/.exec((await owner.get(`${path}/history`)).body)?.[1] ?? '';
    const form = formIn((await owner.get(mend)).body);
    expect(form['load.cargo.0.mass']).toBe('12000');
    const answer = await owner.post(mend, { ...form, 'load.cargo.0.mass': '2,000' });
    expect(answer.status, answer.body).toBe(303);
    expect((await owner.get(path)).body).not.toContain('loaded past its limit');
    expect((await owner.get(`${path}/history`)).body).toContain('<s>Sun 1 Mar 2026</s>');
  });

  test('a load without a weight is refused at its own line', async () => {
    const path = await addTrailer('F-12');
    const answer = await owner.post(`${path}/trips/new`, { startedOn: '2026-03-01', 'load.cargo.1.name': 'Bucket' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-load-cargo-0-mass-wrong"');
  });

  test('how it rode and what tied it down is kept as typed, and shown again when the trip is mended', async () => {
    const path = await addTrailer('F-72');
    const answer = await owner.post(`${path}/trips/new`, {
      startedOn: '2026-03-01',
      distance: '10',
      'load.cargo.0.name': 'Roller',
      'load.cargo.0.mass': '5,400',
      'load.cargo.0.fromCoupler': '15 ft',
      'load.hitchHeight': '19.5',
      'load.offCentre': '-2',
      'load.tieDowns.0.count': '4',
      'load.tieDowns.0.workingLoad': '6,600',
      'load.tieDowns.0.way': 'direct',
      'load.tieDowns.3.count': '1',
      'load.tieDowns.3.way': 'over',
    });
    expect(answer.status, answer.body).toBe(303);
    const mend = linkIn((await owner.get(`${path}/history`)).body, /href="([^"]+\/trips\/[0-9a-f-]{36})"/);
    const form = formIn((await owner.get(mend)).body);
    expect(form).toMatchObject({
      'load.cargo.0.fromCoupler': '180',
      'load.hitchHeight': '19.5',
      'load.offCentre': '-2',
      'load.tieDowns.0.count': '4',
      'load.tieDowns.0.workingLoad': '6600',
      'load.tieDowns.0.way': 'direct',
      'load.tieDowns.1.count': '1',
      'load.tieDowns.1.workingLoad': '',
      'load.tieDowns.1.way': 'over',
    });
    expect(form).not.toHaveProperty('load.untied');
  });

  test('that nothing ties it down is said with a tick, and is kept apart from nobody having said', async () => {
    const path = await addTrailer('F-73');
    const trip = {
      startedOn: '2026-03-01',
      distance: '10',
      'load.cargo.0.name': 'Roller',
      'load.cargo.0.mass': '5,400',
    };
    await owner.post(`${path}/trips/new`, { ...trip, 'load.untied': 'yes' });
    const mend = linkIn((await owner.get(`${path}/history`)).body, /href="([^"]+\/trips\/[0-9a-f-]{36})"/);
    expect(formIn((await owner.get(mend)).body)).toMatchObject({ 'load.untied': 'yes' });
  });

  test('a tie-down without a number of them is refused at its own line', async () => {
    const path = await addTrailer('F-74');
    const answer = await owner.post(`${path}/trips/new`, {
      startedOn: '2026-03-01',
      'load.tieDowns.1.workingLoad': '6600',
    });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-load-tieDowns-0-count-wrong"');
  });

  test('a meter that runs backwards is asked why', async () => {
    const path = await addTrailer('F-13');
    expect((await owner.post(`${path}/readings/new`, { takenOn: '2026-02-01', shown: '5,000' })).status).toBe(303);
    const answer = await owner.post(`${path}/readings/new`, { takenOn: '2026-03-01', shown: '400' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-shown-wrong"');
  });

  test('a failed safety line holds the trailer, and the hold is lifted only with a reason', async () => {
    const path = await addTrailer('F-14');
    const kind = DEFAULT_CHECK_KINDS.find(({ lines }) => lines.some((line) => line.kind === 'tick' && line.safety));
    const line = kind?.lines.find((one) => one.kind === 'tick' && one.safety);
    const sheet = await sheetOf(path, kind?.name ?? '');
    const answer = await owner.post(sheet, { doneOn: '2026-03-02', [`lines.${line?.code}.once.result`]: 'bad' });
    expect(answer.location).toBe(`${path}?said=check-held`);
    const held = (await owner.get(path)).body;
    expect(held).toContain('On hold: this trailer must not go out');
    expect(held).toContain(', found bad: ');
    const lift = /href="([^"]+\/holds\/[0-9a-f-]{36}\/lift)"/.exec(held)?.[1] ?? '';
    expect((await owner.post(lift, {})).status).toBe(422);
    expect((await owner.post(lift, { reason: 'Hinge welded, seen by the shop' })).status).toBe(303);
    expect((await owner.get(path)).body).not.toContain('On hold: this trailer must not go out');
  });

  test('a sheet on which nothing is answered is no pass', async () => {
    const path = await addTrailer('F-15');
    const sheet = await sheetOf(path, '');
    const answer = await owner.post(sheet, { doneOn: '2026-03-02' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Answer the lines of the sheet, or say how the check came out');
  });

  test('magnets are measured at each hub, in inches and amperes, and shown in them again', async () => {
    const path = await addTrailer('F-76');
    const kind = DEFAULT_CHECK_KINDS.find(({ code }) => code === 'brake-inspect');
    const sheet = await sheetOf(path, kind?.name ?? '');
    const wrong = await owner.post(sheet, { doneOn: '2026-03-02', 'lines.magnet-current.2R.value': '75' });
    expect(wrong.body).toContain('Enter the magnet current as a number, 0 to 60 A, or leave it empty.');
    const answer = await owner.post(sheet, {
      doneOn: '2026-03-02',
      'lines.magnets.2R.value': '0.5',
      'lines.magnet-current.2R.value': '3.05',
    });
    expect(answer.status, answer.body).toBe(303);
    const { body } = await owner.get(answer.location ?? '');
    expect(body).toContain('0.5 in');
    expect(body).toContain('3.05 A');
  });

  test('a measurement is taken in the unit of the gauge and shown in it again', async () => {
    const path = await addTrailer('F-16');
    const kind = DEFAULT_CHECK_KINDS.find(({ code }) => code === 'tire-pressure');
    const line = kind?.lines.find(({ quantity }) => quantity === 'cold-pressure-kpa');
    const sheet = await sheetOf(path, kind?.name ?? '');
    expect((await owner.get(sheet)).body).toContain('80 psi (plate)');
    const wrong = await owner.post(sheet, { doneOn: '2026-03-02', [`lines.${line?.code}.1L.value`]: '800' });
    expect(wrong.body).toContain('Enter the cold pressure as a number, 0 to 150 psi, or leave it empty.');
    const answer = await owner.post(sheet, { doneOn: '2026-03-02', [`lines.${line?.code}.1L.value`]: '62' });
    expect(answer.status, answer.body).toBe(303);
    expect((await owner.get(answer.location ?? '')).body).toContain('62 psi');
  });
});

describe('machines and tow vehicles', () => {
  const MACHINE = {
    name: 'Scissor lift',
    mass: '5900',
    basis: 'weighed',
    contact: 'small-wheels',
    contactCount: '4',
    contactLength: '1.25',
    contactWidth: '4',
    wheelbase: '6 ft',
    clearance: '3.5',
  };

  test('what a machine stands on is typed in inches and stays what it was', async () => {
    expect((await owner.post('/machines/new', MACHINE)).status).toBe(303);
    const path = linkIn((await owner.get('/machines')).body, /href="(\/machines\/[0-9a-f-]{36})"/);
    const form = formIn((await owner.get(path)).body);
    expect(form).toMatchObject({ ...MACHINE, wheelbase: '72' });
    expect((await owner.post(path, form)).status).toBe(303);
    expect(formIn((await owner.get(path)).body)).toEqual(form);
  });

  test('a wheelbase longer than the machine is refused', async () => {
    const answer = await owner.post('/machines/new', { ...MACHINE, length: '5 ft' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-wheelbase-wrong"');
  });

  test('a haul that says where its machine balances carries the weight on file', async () => {
    const path = await addTrailer('F-75');
    const page = (await owner.get(`${path}/trips/new`)).body;
    const machineId = linkIn(page, /<option value="([0-9a-f-]{36})"[^>]*>Scissor lift/);
    const trip = { startedOn: '2026-03-01', distance: '10', machineId, machineFromCoupler: '180' };
    const answer = await owner.post(`${path}/trips/new`, trip);
    expect(answer.status, answer.body).toBe(303);
    const mend = linkIn((await owner.get(`${path}/history`)).body, /href="([^"]+\/trips\/[0-9a-f-]{36})"/);
    expect(formIn((await owner.get(mend)).body)).toMatchObject({
      machineMass: '5900',
      machineBasis: 'weighed',
      machineFromCoupler: '180',
    });
    const wrong = await owner.post(`${path}/trips/new`, { ...trip, machineFromCoupler: '9,999' });
    expect(wrong.status).toBe(422);
    expect(wrong.body).toContain('id="f-machineFromCoupler-wrong"');
  });

  test('the height of a ball is kept with its truck', async () => {
    expect((await owner.post('/tow-vehicles/new', { name: 'Grey truck', ballHeight: '20.5' })).status).toBe(303);
    const path = linkIn((await owner.get('/machines')).body, /href="(\/tow-vehicles\/[0-9a-f-]{36})"/);
    expect(formIn((await owner.get(path)).body)).toMatchObject({ ballHeight: '20.5' });
  });
});

describe('a job and its answer', () => {
  test('a haul over the plate is booked and the gate says no go, by how much and what would make it yes', async () => {
    await addTrailer('F-20');
    const answer = await owner.post('/jobs/new', {
      name: 'Hollow Rd culvert',
      trailerNumber: 'f-20',
      startsOn: '2026-03-02',
      'load.cargo.0.name': 'Track loader',
      'load.cargo.0.mass': '9,920',
      'load.cargo.1.name': 'Grapple',
      'load.cargo.1.mass': '1,050',
      'load.cargo.1.remedy': 'leave-off',
    });
    expect(answer.status, answer.body).toBe(303);
    const gate = (await owner.get('/')).body;
    expect(gate).toContain('Hollow Rd culvert');
    expect(gate).toContain('over by 870 lb');
    expect(gate).toContain('Without Grapple: 13,820 lb in all');
  });

  test('a number no trailer carries is refused in words people typed', async () => {
    const answer = await owner.post('/jobs/new', { name: 'Ditch', trailerNumber: 'F-99', startsOn: '2026-03-05' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('No trailer in service here has the number F-99');
  });

  test('asking for a fit answers and books nothing', async () => {
    await addTrailer('F-21');
    const answer = await owner.post('/fit', {
      trailerNumber: 'F-21',
      startsOn: '2026-03-05',
      'load.cargo.0.name': 'Roller',
      'load.cargo.0.mass': '10,090',
    });
    expect(answer.status).toBe(200);
    expect(answer.body).toContain('Weigh it first');
    expect(answer.body).toContain('This is arithmetic on what was entered');
    expect((await owner.get('/jobs')).body).not.toContain('F-21');
  });
});

describe('who may do what on the pages', () => {
  test('a viewer sees no button to record with, and a form sent anyway is refused', async () => {
    const path = await addTrailer('F-30');
    const viewer = await service.signedIn(yard.viewer);
    const { body } = await viewer.get(path);
    expect(body).not.toContain('Record a trip');
    expect(body).not.toContain('Put on hold');
    expect((await viewer.post(`${path}/trips/new`, { startedOn: '2026-03-01' })).status).toBe(403);
  });

  test('an address that holds no id of the yard leads nowhere, and says so', async () => {
    for (const path of [
      '/trailers/1',
      '/trailers/%27',
      '/jobs/x/change',
      '/notices/0',
      '/photos/..%2f',
      '/yard/checks/1',
    ]) {
      expect((await owner.get(path)).status, path).toBe(404);
    }
  });
});

describe('yard settings', () => {
  test('the tire age limit is the yard’s own and every trailer is judged anew by it', async () => {
    const path = await addTrailer('F-40', { 'tires.1L.dateCode': '1521' });
    expect((await owner.get(path)).body).not.toContain('past 4 years');
    const form = formIn((await owner.get('/yard')).body);
    const answer = await owner.post('/yard', { ...form, 'policy.tireAgeLimitYears': '4' });
    expect(answer.status, answer.body).toBe(303);
    expect((await owner.get(path)).body).toContain('past 4 years');
    expect((await owner.get('/flags')).body).toContain('F-40');
  });

  test('climate and deck life are unknown until somebody says, and stay what was said', async () => {
    const form = formIn((await owner.get('/yard')).body);
    expect(form).toMatchObject({ 'policy.decayIndex': '', 'policy.deckLifeYears': '' });
    const said = { ...form, 'policy.decayIndex': '62', 'policy.deckLifeYears': '8.5 years' };
    expect((await owner.post('/yard', said)).status).toBe(303);
    expect(formIn((await owner.get('/yard')).body)).toMatchObject({
      'policy.decayIndex': '62',
      'policy.deckLifeYears': '8.5',
    });
    expect((await owner.post('/yard', form)).status).toBe(303);
    expect(formIn((await owner.get('/yard')).body)).toEqual(form);
  });

  test('a check opened and saved unchanged stays what it was', async () => {
    const path = /href="(\/yard\/checks\/[0-9a-f-]{36})"/.exec((await owner.get('/yard')).body)?.[1] ?? '';
    const before = fieldsIn((await owner.get(path)).body);
    const answer = await owner.post(path, before);
    expect(answer.status, answer.body).toBe(303);
    expect(fieldsIn((await owner.get(path)).body)).toEqual(before);
  });

  test('a share over what can be meant is refused at its field', async () => {
    const form = formIn((await owner.get('/yard')).body);
    const answer = await owner.post('/yard', { ...form, 'policy.weighFirstPercent': '300' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('id="f-policy-weighFirstPercent-wrong"');
  });
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** What a browser would send of the page's form if nobody touched it; of several fields of a name, the last. */
function formIn(body: string): Record<string, string> {
  return Object.fromEntries(fieldsIn(body));
}

function fieldsIn(body: string): [string, string][] {
  const form = /<form class="form"[\s\S]*?<\/form>/.exec(body)?.[0] ?? '';
  const fields: [string, string][] = [];
  const pattern = /<input([^>]*)>|<select([^>]*)>([\s\S]*?)<\/select>|<textarea([^>]*)>([\s\S]*?)<\/textarea>/g;
  for (const [, input, select, options, area, text] of form.matchAll(pattern)) {
    const name = attribute(input ?? select ?? area ?? '', 'name');
    if (name === null) continue;
    if (input !== undefined) {
      const type = attribute(input, 'type');
      const picked = type !== 'radio' && type !== 'checkbox' ? true : /\schecked/.test(input);
      if (picked && type !== 'file') fields.push([name, attribute(input, 'value') ?? '']);
    } else if (select !== undefined) {
      const chosen = /<option([^>]*\sselected[^>]*)>/.exec(options ?? '') ?? /<option([^>]*)>/.exec(options ?? '');
      fields.push([name, attribute(chosen?.[1] ?? '', 'value') ?? '']);
    } else fields.push([name, plain(text ?? '')]);
  }
  return fields;
}

function attribute(tag: string, name: string): string | null {
  const found = new RegExp(`\\s${name}(?:="([^"]*)"|(?=[\\s>/]|$))`).exec(tag);
  return found === null ? null : plain(found[1] ?? '');
}

function plain(html: string): string {
  return html
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
}
