import { describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber } from '../../../src/rules/calendar/day-number.js';
import { distanceTravelled } from '../../../src/rules/forecast/distance-travelled.js';
import { miles, toMiles } from '../../../src/rules/units/distance.js';
import { reading, trip } from '../sample-trailer.js';

const at = (date: string) => dayNumber(day(date));

describe('how far a trailer has gone', () => {
  it('takes the meter where readings span a period, and does not add the trips inside it', () => {
    const gone = distanceTravelled(
      [reading('2025-03-01', 12_400), reading('2025-06-20', 14_290)],
      [trip('2025-04-10', 300), trip('2025-05-02', 200)],
    );
    expect(toMiles(gone.total)).toBeCloseTo(1_890, 9);
  });

  it('adds trips that started after the last reading, and those before the first', () => {
    const gone = distanceTravelled(
      [reading('2025-03-01', 12_400), reading('2025-06-20', 14_290)],
      [trip('2025-02-01', 50), trip('2025-06-20', 70), trip('2025-06-21', 40)],
    );
    expect(toMiles(gone.total)).toBeCloseTo(50 + 1_890 + 40, 9);
  });

  it('counts of a trip across the last reading only the days after it', () => {
    const long = trip('2025-06-19', 80, { endedOn: day('2025-06-22') });
    const gone = distanceTravelled([reading('2025-03-01', 0), reading('2025-06-20', 1_000)], [long]);
    expect(toMiles(gone.total)).toBeCloseTo(1_000 + 40, 9);
  });

  it('goes past the last digit of a meter that rolled over', () => {
    const gone = distanceTravelled(
      [reading('2025-01-01', 99_900), reading('2025-02-01', 150, { kind: 'rolled-over', meterSpanKm: miles(100_000) })],
      [],
    );
    expect(toMiles(gone.total)).toBeCloseTo(250, 9);
  });

  it('takes the trips across a change of meter, since neither meter saw them', () => {
    const gone = distanceTravelled(
      [
        reading('2025-01-01', 5_000),
        reading('2025-02-01', 5_400),
        reading('2025-03-01', 0, { kind: 'replaced' }),
        reading('2025-04-01', 700),
      ],
      [trip('2025-02-10', 120), trip('2025-03-10', 90)],
    );
    expect(toMiles(gone.total)).toBeCloseTo(400 + 120 + 700, 9);
  });

  it('believes the trips where a meter ran backwards with no word of a change', () => {
    const gone = distanceTravelled([reading('2025-01-01', 5_000), reading('2025-02-01', 40)], [trip('2025-01-10', 60)]);
    expect(toMiles(gone.total)).toBeCloseTo(60, 9);
  });

  it('puts metered miles on the days of the trips, and spreads what nobody logged', () => {
    const gone = distanceTravelled([reading('2025-01-01', 0), reading('2025-01-11', 200)], [trip('2025-01-05', 100)]);
    expect(toMiles(gone.between(at('2025-01-04'), at('2025-01-05')))).toBeCloseTo(100 + 10, 9);
    expect(toMiles(gone.between(at('2025-01-05'), at('2025-01-06')))).toBeCloseTo(10, 9);
  });

  it('scales trips down to the meter when they say more than it', () => {
    const gone = distanceTravelled(
      [reading('2025-01-01', 0), reading('2025-01-11', 100)],
      [trip('2025-01-03', 150), trip('2025-01-05', 50)],
    );
    expect(toMiles(gone.between(at('2025-01-02'), at('2025-01-03')))).toBeCloseTo(75, 9);
    expect(toMiles(gone.total)).toBeCloseTo(100, 9);
  });

  it('says on which day a distance was reached, exactly reached included', () => {
    const gone = distanceTravelled([], [trip('2025-01-03', 8), trip('2025-01-06', 14), trip('2025-01-09', 31)]);
    const from = at('2025-01-01');
    expect(gone.dayReaching(from, miles(8))).toBe(at('2025-01-03'));
    expect(gone.dayReaching(from, miles(25))).toBe(at('2025-01-09'));
    expect(gone.dayReaching(from, miles(53))).toBe(at('2025-01-09'));
    expect(gone.dayReaching(from, miles(54))).toBeNull();
  });

  it('knows nothing from a single reading, or from trips without miles', () => {
    expect(distanceTravelled([reading('2025-01-01', 9_000)], []).known).toBe(false);
    expect(distanceTravelled([], [trip('2025-01-03', null)]).known).toBe(false);
    expect(distanceTravelled([], []).known).toBe(false);
  });
});
