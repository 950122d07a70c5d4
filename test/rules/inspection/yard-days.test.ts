import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { yardDays, yardDaysFrom } from '../../../src/rules/inspection/yard-days.js';
import { job } from '../sample-trailer.js';

describe('days in the yard', () => {
  it('are the days without a job: scenario 12 of the acceptance list', () => {
    const jobs = [job('2025-05-20'), job('2025-05-28'), job('2025-06-09')];
    expect(yardDays(jobs, day('2025-05-13'), day('2025-06-02'))).toEqual([
      { from: '2025-05-13', to: '2025-05-19' },
      { from: '2025-05-21', to: '2025-05-27' },
      { from: '2025-05-29', to: '2025-06-02' },
    ]);
  });

  it('leave out every day of a job of several days, and days that two jobs share', () => {
    const jobs = [
      job('2025-05-14', { endsOn: day('2025-05-18') }),
      job('2025-05-16', { endsOn: day('2025-05-16') }),
      job('2025-05-17', { endsOn: day('2025-05-20') }),
    ];
    expect(yardDays(jobs, day('2025-05-13'), day('2025-05-22'))).toEqual([
      { from: '2025-05-13', to: '2025-05-13' },
      { from: '2025-05-21', to: '2025-05-22' },
    ]);
  });

  it('are none while a job covers all of them', () => {
    expect(yardDays([job('2025-05-01', { endsOn: day('2025-06-30') })], day('2025-05-13'), day('2025-06-02'))).toEqual(
      [],
    );
  });

  it('lose the days that have passed when a kept answer is read later', () => {
    const runs = [
      { from: day('2025-05-13'), to: day('2025-05-19') },
      { from: day('2025-05-21'), to: day('2025-05-27') },
    ];
    expect(yardDaysFrom(runs, day('2025-05-20'))).toEqual([{ from: '2025-05-21', to: '2025-05-27' }]);
    expect(yardDaysFrom(runs, day('2025-05-17'))[0]).toEqual({ from: '2025-05-17', to: '2025-05-19' });
  });
});
