import { describe, expect, it } from 'vitest';
import { wearingWords } from '../../../src/mail/words/wear-words.js';
import { wearingEvidence, wearingHow, wearingTitle, wearingTodo } from '../../../src/pages/words/wear-words.js';
import { assess } from '../../../src/rules/assess.js';
import { type CivilDate, day } from '../../../src/rules/calendar/civil-date.js';
import { daysAfter } from '../../../src/rules/calendar/day-number.js';
import type { CheckRecord, MeasuredQuantity } from '../../../src/rules/facts/check.js';
import type { TrailerFacts } from '../../../src/rules/facts/trailer-facts.js';
import type { Flag } from '../../../src/rules/flags/flag.js';
import { inch } from '../../../src/rules/units/length.js';
import { TREAD } from '../reference/trend-cases.js';
import { tire } from '../sample-facts.js';
import { done, facts, job, kind, reading } from '../sample-trailer.js';

const START = day('2025-01-01');
const LAST = daysAfter(START, 128);

function measured(on: CivilDate, quantity: MeasuredQuantity, value: number, position: string | null): CheckRecord {
  const lines = [{ code: 'line', result: null, position, measured: { quantity, value } }];
  return done('tire-tread', on, { id: `${on}-${quantity}-${position}`, lines });
}

/** The worked tread series at 100 miles a day: 2/32 is reached after 301 days, on 29 October, 173 days past the last reading. */
const worn: TrailerFacts = facts({
  parts: [tire('1L', {}, START), tire('1R', {}, START)],
  readings: TREAD.map(({ x }) => reading(daysAfter(START, x / 100), 1000 + x)),
  checkKinds: [kind('tire-tread', [])],
  checkRecords: TREAD.map(({ x, y }) =>
    measured(daysAfter(START, x / 100), 'tread-depth-mm', inch(y / 32) * 1000, '1L'),
  ),
});

type WearingFlag = Flag & { readonly evidence: { readonly kind: 'wearing' } };

function wearing(told: TrailerFacts, asOf: string): WearingFlag | undefined {
  return assess(told, day(asOf)).flags.find((flag): flag is WearingFlag => flag.rule === 'wearing');
}

describe('a part that comes to its limit', () => {
  const middle = assess(worn, LAST).wear[0]?.toLimit;
  const reachedOn = middle?.kind === 'reached-by' ? (middle.on.middle as CivilDate) : LAST;

  it('is told of 90 days before the middle day, and not a day sooner', () => {
    expect(wearing(worn, daysAfter(reachedOn, -91))).toBeUndefined();
    const flag = wearing(worn, daysAfter(reachedOn, -90));
    expect(flag).toMatchObject({
      key: 'wearing:tread-depth-mm',
      severity: 'watch',
      since: LAST,
      evidence: { parts: [{ position: '1L', reachedOn: { middle: reachedOn }, leansOnUsualWear: false, jobId: null }] },
      clears: [
        { kind: 'replace-tires', positions: ['1L'] },
        { kind: 'measure-again', quantity: 'tread-depth-mm' },
      ],
    });
  });

  it('wakes the trailer on that day, or before', () => {
    for (let on: CivilDate | null = LAST, wakes = 0; on !== null && on < daysAfter(reachedOn, -90); wakes++) {
      const next: CivilDate | null = assess(worn, on).wakeOn;
      expect(next).not.toBeNull();
      expect(wakes).toBeLessThan(100);
      if (next !== null && next > daysAfter(reachedOn, -90)) throw new Error(`slept from ${on} to ${next}`);
      on = next;
    }
  });

  it('is told of before a next job on which it may come, however far off the middle day is', () => {
    const long = job(daysAfter(LAST, 10), { endsOn: daysAfter(LAST, 60), distanceKm: 30_000 as never });
    const flag = wearing({ ...worn, jobs: [long] }, LAST);
    expect(flag?.evidence.parts[0]?.jobId).toBe(long.id);
    expect(wearing(worn, LAST)).toBeUndefined();
  });

  it('is gone with a new tire on record', () => {
    const near = daysAfter(reachedOn, -30);
    const parts = [
      { ...tire('1L', {}, START), id: 'old', removedOn: near, removedFor: 'worn-out' as const },
      { ...tire('1L', {}, near), id: 'new' },
    ];
    expect(wearing({ ...worn, parts }, near)).toBeUndefined();
  });

  it('past a limit of the law another flag speaks; past one of practice this one does', () => {
    const play = measured(LAST, 'end-play-mm', 0.4, '2R');
    const bald = measured(LAST, 'tread-depth-mm', 1, '1R');
    const flags = assess({ ...worn, checkRecords: [play, bald] }, LAST).flags;
    expect(flags.filter(({ rule }) => rule === 'wearing').map(({ key }) => key)).toEqual(['wearing:end-play-mm']);
    expect(flags.map(({ rule }) => rule)).toContain('worn-past-limit');
    const flag = flags.find((each): each is WearingFlag => each.rule === 'wearing');
    expect(flag?.evidence.parts).toMatchObject([{ position: '2R', reachedOn: null, limit: { origin: 'practice' } }]);
  });

  it('a sold trailer wears no more', () => {
    const gone = { ...worn, trailer: { ...worn.trailer, status: 'sold' as const } };
    expect(assess(gone, daysAfter(reachedOn, -30))).toMatchObject({ wear: [], flags: [] });
  });

  it('page and letter say the reading, the limit, the days and where they come from', () => {
    const flag = wearing(worn, daysAfter(reachedOn, -90));
    if (flag === undefined) throw new Error('no flag');
    expect(wearingTitle(flag.evidence)).toBe('Tread depth nearing its limit');
    expect(wearingEvidence(flag.evidence)).toContain('Axle 1 left 6 32nds in on');
    expect(wearingEvidence(flag.evidence)).toContain('limit 2 32nds in, as likely as not reached by');
    expect(wearingHow(flag.evidence)).toContain('Appendix A to Part 396 of 49 CFR');
    expect(wearingHow(flag.evidence)).not.toContain('usual wear');
    expect(wearingTodo(flag.evidence)).toContain('lowest groove');
    const letter = wearingWords(flag.evidence, LAST);
    expect(letter.title).toBe('Tread near its limit');
    expect(letter.says).toContain('6 32nds in, limit 2 32nds in, reached about');
  });

  it('with few readings both say that usual wear stands in', () => {
    const few = { ...worn, checkRecords: [measured(LAST, 'tread-depth-mm', 1.7, '1L')] };
    const flag = wearing(few, LAST);
    if (flag === undefined) throw new Error('no flag');
    expect(flag.evidence.parts[0]?.leansOnUsualWear).toBe(true);
    expect(wearingHow(flag.evidence)).toContain('Readings are few');
    expect(wearingWords(flag.evidence, LAST).says).toContain('Readings are few');
  });
});
