import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/rules/assess.js';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import { fit } from '../../../src/rules/fit/fit.js';
import {
  type Answer,
  type Letter,
  type LetterItem,
  planLetters,
  type Reader,
  type TrailerToday,
} from '../../../src/rules/notice/plan-letters.js';
import { canPutOff } from '../../../src/rules/notice/put-off.js';
import { miles } from '../../../src/rules/units/distance.js';
import { item, load, tire, tires } from '../sample-facts.js';
import { done, facts, job, kind, reading, trailer } from '../sample-trailer.js';

const person = (personId: string, role: Reader['role'], more: Partial<Reader> = {}): Reader => ({
  personId,
  name: personId,
  role,
  state: 'active',
  reachable: true,
  ...more,
});
const MARTA = person('marta', 'owner');
const NEPHEW = person('nephew', 'shop');
const DALE = person('dale', 'hand');
const LUIS = person('luis', 'hand');
const PEOPLE = [MARTA, NEPHEW, DALE, LUIS];

const CARGO = load({ cargo: [item('mini excavator', 5_000)] });

function today(some: TrailerFacts, asOf: CivilDate): TrailerToday {
  return {
    trailer: some.trailer,
    assessment: assess(some, asOf),
    checkKinds: some.checkKinds,
    jobs: some.jobs
      .filter((one) => one.state === 'booked' && one.endsOn >= asOf)
      .map((one) => ({ job: one, fit: fit(some, one, asOf) })),
  };
}

/** A yard that plans each day and remembers what it told, as the service does. */
class Planner {
  readonly told = new Map<string, CivilDate>();
  readonly answers: Answer[] = [];
  constructor(
    private readonly trailers: (asOf: CivilDate) => readonly TrailerFacts[],
    private readonly readers: (asOf: CivilDate) => readonly Reader[] = () => PEOPLE,
  ) {}

  plan(on: string): readonly Letter[] {
    const asOf = day(on);
    const letters = this.look(on);
    for (const letter of letters) for (const told of letter.items) this.told.set(told.key, asOf);
    return letters;
  }

  /** The same without telling anybody. */
  look(on: string): readonly Letter[] {
    const asOf = day(on);
    return planLetters({
      asOf,
      readers: this.readers(asOf),
      trailers: this.trailers(asOf).map((some) => today(some, asOf)),
      answers: this.answers,
      told: this.told,
    });
  }

  planEach(from: string, to: string): readonly { readonly on: CivilDate; readonly letters: readonly Letter[] }[] {
    const days = [];
    for (let on = day(from); on <= to; on = daysAfter(on, 1)) {
      const letters = this.plan(on);
      if (letters.length > 0) days.push({ on, letters });
    }
    return days;
  }
}

const kindsOf = (letters: readonly Letter[]) => letters.flatMap(({ items }) => items.map(({ kind: what }) => what));
/** Items whose kind may be this one: due-soon and overdue are one shape. */
type ItemOf<Kind extends LetterItem['kind']> = LetterItem extends infer One
  ? One extends { readonly kind: infer Has }
    ? Kind extends Has
      ? One
      : never
    : never
  : never;

const only = <Kind extends LetterItem['kind']>(letters: readonly Letter[], wanted: Kind) =>
  letters.flatMap(({ personId, items }) =>
    items.filter((one) => one.kind === wanted).map((one) => ({ personId, item: one as ItemOf<Kind> })),
  );

const YEARLY = { kind: 'months', every: 12, toMonthEnd: false } as const;
const repack = kind('repack', [YEARLY, { kind: 'distance', everyKm: miles(12_000) }], {
  safety: true,
  blocks: 'all-jobs',
  leadDays: 24,
  work: {
    hours: 2,
    place: 'shop',
    parts: ['4 seals', 'grease'],
    bundle: 'hub',
    together: ['seals', 'shoes', 'magnets'],
  },
  ownerPersonId: 'nephew',
  backupPersonId: 'luis',
});

describe('scenario 12, one message', () => {
  const jobs = ['2025-05-20', '2025-05-28', '2025-06-09'].map((on) => job(on, { load: CARGO, haulerPersonId: 'dale' }));
  const yard = facts({
    checkKinds: [repack],
    checkRecords: [done('repack', '2024-06-02')],
    readings: [reading('2024-06-02', 10_000), reading('2025-05-11', 13_100)],
    jobs,
  });

  it('one letter to one person: by date, due 2 June, first job 9 June, yard days, the whole hub in one visit', () => {
    const letters = new Planner(() => [yard]).plan('2025-05-12');
    expect(letters).toHaveLength(1);
    expect(letters[0]).toMatchObject({ personId: 'nephew', kind: 'day', items: [{ kind: 'due-soon' }] });
    expect(only(letters, 'due-soon')[0]?.item).toMatchObject({
      unowned: false,
      together: ['seals', 'shoes', 'magnets'],
      due: {
        dueOn: '2025-06-02',
        trigger: YEARLY,
        firstJobAtRisk: { startsOn: '2025-06-09' },
        yardDays: [
          { from: '2025-05-13', to: '2025-05-19' },
          { from: '2025-05-21', to: '2025-05-27' },
          { from: '2025-05-29', to: '2025-06-02' },
        ],
      },
    });
  });

  it('not three mails: on the days after there is nothing but the briefs on the eves of the jobs', () => {
    const planner = new Planner(() => [yard]);
    planner.plan('2025-05-12');
    const days = planner.planEach('2025-05-13', '2025-06-02');
    expect(days.map(({ on }) => on)).toEqual(['2025-05-19', '2025-05-27']);
    expect(days.flatMap(({ letters }) => kindsOf(letters))).toEqual(['gate-brief', 'gate-brief']);
    expect(days.every(({ letters }) => letters.every(({ personId }) => personId === 'dale'))).toBe(true);
  });

  it('planned twice on one day, or in two processes, the letters are the same', () => {
    const planner = new Planner(() => [yard]);
    const first = planner.plan('2025-05-12');
    expect(planner.plan('2025-05-12')).toEqual(first);
  });

  it('a job cancelled leaves the due date and gets no brief', () => {
    const without = {
      ...yard,
      jobs: [...jobs.slice(0, 2), { ...(jobs[2] as (typeof jobs)[number]), state: 'cancelled' as const }],
    };
    const planner = new Planner(() => [without]);
    expect(only(planner.plan('2025-05-12'), 'due-soon')[0]?.item.due).toMatchObject({
      dueOn: '2025-06-02',
      firstJobAtRisk: null,
    });
    expect(planner.planEach('2025-06-05', '2025-06-09').flatMap(({ letters }) => only(letters, 'gate-brief'))).toEqual(
      [],
    );
  });

  it('done on 23 May nothing more is told until a year later', () => {
    const redone = { ...yard, checkRecords: [...yard.checkRecords, done('repack', '2025-05-23')] };
    const planner = new Planner((asOf) => [asOf < '2025-05-23' ? yard : redone]);
    planner.plan('2025-05-12');
    const after = planner
      .planEach('2025-05-23', '2026-05-23')
      .flatMap(({ on, letters }) => only(letters, 'due-soon').map((one) => ({ on, dueOn: one.item.due.dueOn })));
    expect(after).toEqual([{ on: '2026-04-29', dueOn: '2026-05-23' }]);
  });

  it('not done, it is overdue on 3 June, then nudged on Mondays', () => {
    const idle = { ...yard, jobs: [] };
    const planner = new Planner(() => [idle]);
    planner.plan('2025-05-12');
    const days = planner.planEach('2025-05-13', '2025-06-30');
    expect(days.map(({ on }) => on)).toEqual(['2025-06-03', '2025-06-16', '2025-06-23', '2025-06-30']);
    expect(days.flatMap(({ letters }) => kindsOf(letters))).toEqual(Array(4).fill('overdue'));
  });

  it('on the eve of the blocked job the hauler hears what must be done first, and the owner does too', () => {
    const letters = new Planner(() => [yard]).plan('2025-06-08');
    const briefs = only(letters, 'gate-brief');
    expect(briefs.map(({ personId }) => personId)).toEqual(['dale', 'marta']);
    expect(briefs[0]?.item.fit.verdict).toBe('go-after');
    expect(briefs[0]?.item.fit.remedies).toContainEqual(expect.objectContaining({ kind: 'do-check', code: 'repack' }));
  });
});

describe('scenario 13, wrong person', () => {
  // Friday 20 June 2025 is the job; Dale's check is a safety check within its lead time.
  const latch = kind('latch', [YEARLY], {
    safety: true,
    blocks: 'all-jobs',
    leadDays: 10,
    ownerPersonId: 'dale',
    backupPersonId: 'luis',
  });
  const friday = job('2025-06-20', { load: CARGO, haulerPersonId: 'luis' });
  const yard = facts({ checkKinds: [latch], checkRecords: [done('latch', '2024-06-25')], jobs: [friday] });

  it('whoever left gets nothing: the backup hears of it, and it is shown unowned', () => {
    const planner = new Planner(
      () => [yard],
      () => [MARTA, LUIS, { ...DALE, state: 'left' }],
    );
    const letters = planner.plan('2025-06-16');
    expect(letters.map(({ personId }) => personId)).toEqual(['luis']);
    expect(only(letters, 'due-soon')[0]?.item.unowned).toBe(true);
  });

  it('when his mail bounces, the backup and the owner hear of it the same day though Dale was told', () => {
    const planner = new Planner(
      () => [yard],
      () => [MARTA, LUIS, { ...DALE, reachable: planner.told.size === 0 }],
    );
    expect(planner.plan('2025-06-16').map(({ personId }) => personId)).toEqual(['dale']);
    const letters = planner.look('2025-06-16');
    expect(letters.map(({ personId, items }) => [personId, items.map(({ kind: what }) => what)])).toEqual([
      ['luis', ['due-soon']],
      ['marta', ['address-failed']],
    ]);
    expect(only(letters, 'address-failed')[0]?.item).toMatchObject({ personId: 'dale', personName: 'dale' });
    expect(only(letters, 'address-failed')[0]?.item.items).toHaveLength(1);
  });

  it('with no backup either, it goes to the owner', () => {
    const alone = { ...yard, checkKinds: [{ ...latch, backupPersonId: null }] };
    const planner = new Planner(
      () => [alone],
      () => [MARTA, LUIS, { ...DALE, state: 'left' }],
    );
    expect(only(planner.plan('2025-06-16'), 'due-soon')).toMatchObject([
      { personId: 'marta', item: { unowned: true } },
    ]);
  });

  it("a safety check may not be put off past Friday's job: Thursday is offered", () => {
    expect(canPutOff(latch, day('2025-06-21'), friday)).toEqual({
      kind: 'refused',
      latest: '2025-06-19',
      job: friday,
    });
    expect(canPutOff(latch, day('2025-06-19'), friday)).toEqual({ kind: 'allowed' });
    expect(canPutOff({ safety: false }, day('2025-06-21'), friday)).toEqual({ kind: 'allowed' });
    expect(canPutOff(latch, day('2025-06-21'), null)).toEqual({ kind: 'allowed' });
  });

  it('put off until Wednesday it is silent on Tuesday and told again on Wednesday, once', () => {
    const planner = new Planner(() => [yard]);
    const [first] = only(planner.plan('2025-06-16'), 'due-soon');
    planner.answers.push({
      itemKey: first?.item.key ?? '',
      personId: 'dale',
      answer: 'later',
      until: day('2025-06-18'),
    });
    expect(only(planner.plan('2025-06-17'), 'due-soon')).toEqual([]);
    expect(only(planner.plan('2025-06-18'), 'due-soon')).toHaveLength(1);
    expect(only(planner.plan('2025-06-19'), 'due-soon')).toEqual([]);
  });

  it('a job booked after it was put off wakes a safety check on the day before', () => {
    const booked = { ...yard, jobs: [] };
    const planner = new Planner((asOf) => [asOf < '2025-06-17' ? booked : yard]);
    const [first] = only(planner.plan('2025-06-16'), 'due-soon');
    planner.answers.push({
      itemKey: first?.item.key ?? '',
      personId: 'dale',
      answer: 'later',
      until: day('2025-06-24'),
    });
    expect(only(planner.plan('2025-06-18'), 'due-soon')).toEqual([]);
    expect(only(planner.plan('2025-06-19'), 'due-soon')).toMatchObject([{ personId: 'dale' }]);
  });

  it('"not mine" goes to the backup and tells the owner, and Dale hears no more of it', () => {
    const planner = new Planner(() => [yard]);
    const [first] = only(planner.plan('2025-06-16'), 'due-soon');
    planner.answers.push({ itemKey: first?.item.key ?? '', personId: 'dale', answer: 'not-mine', until: null });
    const told = only(planner.plan('2025-06-17'), 'due-soon');
    expect(told.map(({ personId }) => personId)).toEqual(['luis', 'marta']);
    expect(
      planner
        .planEach('2025-06-18', '2025-07-20')
        .flatMap(({ letters }) => only(letters, 'overdue'))
        .map(({ personId }) => personId),
    ).not.toContain('dale');
  });
});

describe('gate briefs', () => {
  const friday = job('2025-06-20', { endsOn: day('2025-06-22'), load: CARGO, haulerPersonId: 'dale' });

  it('go out on the eve, to whoever hauls', () => {
    const planner = new Planner(() => [facts({ jobs: [friday] })]);
    const days = planner.planEach('2025-06-01', '2025-06-25');
    expect(days.map(({ on }) => on)).toEqual(['2025-06-19']);
    expect(days[0]?.letters).toMatchObject([{ personId: 'dale', items: [{ kind: 'gate-brief', jobId: friday.id }] }]);
  });

  it('go out on the morning when the eve was missed, and not after', () => {
    expect(kindsOf(new Planner(() => [facts({ jobs: [friday] })]).plan('2025-06-20'))).toEqual(['gate-brief']);
    expect(new Planner(() => [facts({ jobs: [friday] })]).plan('2025-06-21')).toEqual([]);
  });

  it("go to the owner when the hauler is none of the yard's people, or has left", () => {
    const hired = facts({ jobs: [{ ...friday, haulerPersonId: null }] });
    expect(new Planner(() => [hired]).plan('2025-06-19').map(({ personId }) => personId)).toEqual(['marta']);
    const left = new Planner(
      () => [facts({ jobs: [friday] })],
      () => [MARTA, { ...DALE, state: 'left' }],
    );
    expect(left.plan('2025-06-19').map(({ personId }) => personId)).toEqual(['marta']);
  });

  it('go out ten days ahead when the load is too heavy, to the owner too, and again on the eve', () => {
    const heavy = { ...friday, load: load({ cargo: [item('dozer', 14_000)] }) };
    const days = new Planner(() => [facts({ jobs: [heavy] })]).planEach('2025-06-01', '2025-06-22');
    expect(days.map(({ on, letters }) => [on, letters.map(({ personId }) => personId)])).toEqual([
      ['2025-06-10', ['dale', 'marta']],
      ['2025-06-19', ['dale', 'marta']],
    ]);
  });

  it('say what falls due while it is away', () => {
    const look = kind('look', [YEARLY], { leadDays: 0, ownerPersonId: 'nephew' });
    const yard = facts({ jobs: [friday], checkKinds: [look], checkRecords: [done('look', '2024-06-21')] });
    const [brief] = only(new Planner(() => [yard]).plan('2025-06-19'), 'gate-brief');
    expect(brief?.item.dueWhileAway.map(({ code }) => code)).toEqual(['look']);
  });

  it('tell whoever hauls of nuts to be torqued on the way, and nobody else', () => {
    const torque = kind('torque', [{ kind: 'event', event: 'wheel-off', atKm: [miles(10)] }], {
      safety: true,
      work: { hours: 0.25, place: 'road', parts: [], bundle: null, together: [] },
      leadDays: 5,
      ownerPersonId: 'nephew',
    });
    const yard = facts({
      checkKinds: [torque],
      parts: [...tires(2).slice(1), tire('1L', {}, day('2025-06-15'))],
      jobs: [{ ...friday, distanceKm: miles(60) }],
    });
    const days = new Planner(() => [yard]).planEach('2025-06-15', '2025-06-20');
    expect(days.map(({ on, letters }) => [on, letters.map(({ personId }) => personId)])).toEqual([
      ['2025-06-19', ['dale']],
    ]);
    expect(only(days[0]?.letters ?? [], 'gate-brief')[0]?.item.dueWhileAway.map(({ code }) => code)).toEqual([
      'torque',
    ]);
  });

  it('a job moved to another day is told again for that day', () => {
    const planner = new Planner((asOf) => [
      facts({
        jobs: [asOf < '2025-06-20' ? friday : { ...friday, startsOn: day('2025-06-25'), endsOn: day('2025-06-25') }],
      }),
    ]);
    expect(planner.planEach('2025-06-15', '2025-06-30').map(({ on }) => on)).toEqual(['2025-06-19', '2025-06-24']);
  });
});

describe('stops', () => {
  const hold = { id: 'h1', openedOn: day('2025-06-10'), reason: 'frame cracked', openedByName: 'Luis', liftedOn: null };

  it('go at once to owner and shop, once', () => {
    const planner = new Planner(() => [facts({ holds: [hold] })]);
    const letters = planner.plan('2025-06-10');
    expect(letters.map(({ personId, kind: what }) => [personId, what])).toEqual([
      ['marta', 'stop'],
      ['nephew', 'stop'],
    ]);
    expect(planner.plan('2025-06-11')).toEqual([]);
  });

  it('while a trailer is held nobody is asked to do its checks, and the brief of its job says so', () => {
    const held = facts({
      holds: [hold],
      checkKinds: [repack],
      checkRecords: [done('repack', '2024-06-12')],
      jobs: [job('2025-06-20', { load: CARGO, haulerPersonId: 'dale' })],
    });
    const planner = new Planner(() => [held]);
    const letters = planner.planEach('2025-06-10', '2025-06-30').flatMap((one) => one.letters);
    expect(only(letters, 'due-soon')).toEqual([]);
    expect(only(letters, 'overdue')).toEqual([]);
    const brief = only(letters, 'gate-brief')[0]?.item;
    expect(brief?.fit.verdict).toBe('no-go');
    expect(brief?.fit.reasons[0]).toEqual({ kind: 'hold', reason: 'frame cracked' });
  });

  it('a trailer sold asks for nothing', () => {
    const sold = facts({
      trailer: trailer({ status: 'sold' }),
      holds: [hold],
      checkKinds: [repack],
      checkRecords: [done('repack', '2024-01-12')],
      jobs: [job('2025-06-12', { load: CARGO })],
    });
    expect(new Planner(() => [sold]).planEach('2025-06-10', '2025-06-13')).toEqual([]);
  });
});

describe('one letter a person a day', () => {
  it('holds everything of every trailer, trailer by trailer', () => {
    const look = kind('look', [YEARLY], { leadDays: 10, ownerPersonId: 'nephew' });
    const second = { ...facts(), trailer: trailer({ id: 'trailer-2', yardNumber: 'T-02' }) };
    const records = [done('repack', '2024-06-20'), done('look', '2024-06-18')];
    const both = [second, facts()].map((some) => ({ ...some, checkKinds: [repack, look], checkRecords: records }));
    const letters = new Planner(() => both).plan('2025-06-16');
    expect(letters).toHaveLength(1);
    const told = only(letters, 'due-soon').map(({ item: one }) => [one.trailerId, one.code]);
    expect(told).toEqual([
      ['trailer-1', 'look'],
      ['trailer-1', 'repack'],
      ['trailer-2', 'look'],
      ['trailer-2', 'repack'],
    ]);
  });

  it('other checks of the same hub due within two months are named for the same visit', () => {
    const brakes = kind('brakes', [{ kind: 'months', every: 6, toMonthEnd: false }], {
      name: 'Brakes: inspect',
      work: { hours: 2, place: 'shop', parts: [], bundle: 'hub', together: [] },
    });
    const yard = facts({
      checkKinds: [repack, brakes],
      checkRecords: [done('repack', '2024-06-20'), done('brakes', '2025-02-01')],
    });
    const [told] = only(new Planner(() => [yard]).plan('2025-06-16'), 'due-soon');
    expect(told?.item.together).toEqual(['seals', 'shoes', 'magnets', 'Brakes: inspect']);
  });

  it('a new yard is not greeted with a list of everything it never recorded', () => {
    const yard = facts({ checkKinds: [repack, kind('look', [YEARLY], { ownerPersonId: 'nephew' })] });
    expect(new Planner(() => [yard]).plan('2025-06-16')).toEqual([]);
  });

  it('but a safety check never recorded is told when a job is near', () => {
    const yard = facts({ checkKinds: [repack], jobs: [job('2025-06-25', { load: CARGO, haulerPersonId: 'dale' })] });
    const planner = new Planner(() => [yard]);
    expect(only(planner.plan('2025-06-16'), 'due-soon')).toMatchObject([
      { personId: 'nephew', item: { code: 'repack' } },
    ]);
    expect(only(planner.plan('2025-06-17'), 'due-soon')).toEqual([]);
  });

  it('a meter reading that moves a due date does not tell people again', () => {
    const byMiles = kind('repack', [{ kind: 'distance', everyKm: miles(3_000) }], {
      leadDays: 24,
      ownerPersonId: 'nephew',
    });
    const first = [reading('2025-01-01', 10_000), reading('2025-06-10', 12_700)];
    const yard = (readings: typeof first) =>
      facts({ checkKinds: [byMiles], checkRecords: [done('repack', '2025-01-01')], readings });
    const planner = new Planner((asOf) => [
      yard(asOf < '2025-06-17' ? first : [...first, reading('2025-06-17', 12_850)]),
    ]);
    expect(only(planner.plan('2025-06-16'), 'due-soon')).toHaveLength(1);
    expect(planner.plan('2025-06-17')).toEqual([]);
  });

  it('nobody who can be reached means no letter', () => {
    const yard = facts({ checkKinds: [repack], checkRecords: [done('repack', '2024-06-20')] });
    expect(
      new Planner(
        () => [yard],
        () => [],
      ).plan('2025-06-16'),
    ).toEqual([]);
  });
});
