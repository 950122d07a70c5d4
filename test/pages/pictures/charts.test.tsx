import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { roundSteps } from '../../../src/pages/pictures/chart.js';
import { DeckPicture } from '../../../src/pages/pictures/deck-picture.js';
import { UsePicture } from '../../../src/pages/pictures/use-picture.js';
import { WearPicture } from '../../../src/pages/pictures/wear-picture.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { dayNumber } from '../../../src/rules/calendar/day-number.js';
import { deckDates, deckOutlook } from '../../../src/rules/deck/deck-outlook.js';
import type { LoadedTrip } from '../../../src/rules/flags/loads-of-quarter.js';
import type { WearTrend } from '../../../src/rules/inspection/wear-trends.js';
import { lineAt, lineRange } from '../../../src/rules/statistics/line.js';
import { km } from '../../../src/rules/units/distance.js';
import { kg } from '../../../src/rules/units/mass.js';
import { wearLine } from '../../../src/rules/wear/wear-line.js';
import { WEAR_KINDS } from '../../../src/rules/wear/wear-quantity.js';
import { trip } from '../../rules/sample-trailer.js';

const READINGS = [
  { x: 500, value: 8.1, on: day('2024-01-01') },
  { x: 5_000, value: 7.4, on: day('2024-06-01') },
  { x: 9_000, value: 7.1, on: day('2024-12-01') },
  { x: 15_000, value: 6.2, on: day('2025-05-01') },
  { x: 21_000, value: 5.5, on: day('2025-11-01') },
];
const ODD = { x: 12_000, value: 8.5, on: day('2025-02-01') };

const TREND: WearTrend = {
  ...{ key: 'tread 1L', quantity: 'tread-depth-mm', position: '1L', partId: null, since: day('2023-12-01') },
  ...{ by: 'distance', readings: READINGS, leftOut: [ODD as never], setBackOn: null, isPast: false },
  latest: READINGS[4] as (typeof READINGS)[number],
  limit: { value: 1.6, fails: 'past', worse: 'less', origin: 'law', source: '49 CFR 393.75(c)' },
  line: wearLine(READINGS, WEAR_KINDS['tread-depth-mm'], 'distance'),
  toLimit: {
    kind: 'reached-by',
    km: { early: km(20_000), middle: km(30_000), late: km(40_000) },
    on: { early: day('2027-01-01'), middle: day('2027-09-01'), late: day('2028-06-01') },
    leansOnUsualWear: false,
  },
};

type Place = readonly [across: number, up: number];

const circles = (picture: string, name: string): readonly Place[] =>
  [...picture.matchAll(new RegExp(`<circle class="${name}"[^>]* cx="([-\\d.]+)" cy="([-\\d.]+)"`, 'g'))].map(
    (found) => [Number(found[1]), Number(found[2])],
  );

describe('a wear trend', () => {
  const picture = renderToString(<WearPicture trend={TREND} />);

  it('is told in words: readings, limit, when it comes there, and what the band is', () => {
    expect(picture).toContain('aria-label="Tread depth, axle 1 left: readings, their line and its limit"');
    const words = picture.slice(picture.indexOf('<figcaption'));
    expect(words).toContain('5 readings, from 10.2 32nds in on Mon 1 Jan 2024 to 6.9 32nds in on Sat 1 Nov 2025');
    expect(words).toContain('1 left out as odd');
    expect(words).toContain('Limit 2 32nds in. About Wed 1 Sep 2027');
  });

  it('has its readings, line, band and limit on one scale', () => {
    const drawn = circles(picture, 'p-reading');
    expect(drawn).toHaveLength(5);
    expect(circles(picture, 'p-odd')).toHaveLength(1);
    // Two readings fix the scale; every other thing drawn must keep to it.
    const [first, last] = [drawn[0] as Place, drawn[4] as Place];
    const x = (place: number) => first[0] + ((place - 500) / 20_500) * (last[0] - first[0]);
    const y = (value: number) => first[1] + ((value - 8.1) / -2.6) * (last[1] - first[1]);
    expect(drawn[2]).toEqual([expect.closeTo(x(9_000), 0), expect.closeTo(y(7.1), 0)]);
    const line = TREND.line as NonNullable<WearTrend['line']>;
    const trend = pathOf(picture, 'p-trend');
    const band = pathOf(picture, 'p-band');
    const limit = pathOf(picture, 'p-limit');
    const end = trend.at(-1) as Place;
    const place = 500 + ((end[0] - first[0]) / (last[0] - first[0])) * 20_500;
    expect(end[1] / y(lineAt(line, place))).toBeCloseTo(1, 1);
    expect(limit.map((point) => point[1])).toEqual([expect.closeTo(y(1.6), 0), expect.closeTo(y(1.6), 0)]);
    // Nearest the middle of the readings the band is whole within the drawing.
    const middle = band[Math.floor(band.length / 8)] as Place;
    const at = 500 + ((middle[0] - first[0]) / (last[0] - first[0])) * 20_500;
    expect(middle[1]).toBeCloseTo(y(lineRange(line, at, 0.8).low), -0.5);
  });

  it('is not drawn while nothing says how fast it wears', () => {
    expect(renderToString(<WearPicture trend={{ ...TREND, line: null }} />)).toBe('');
  });
});

function pathOf(picture: string, name: string): readonly Place[] {
  const path = new RegExp(`class="${name}" d="M([^"Z]+)`).exec(picture)?.[1] ?? '';
  return path.split('L').map((pair) => pair.split(' ').map(Number) as unknown as Place);
}

describe('a deck', () => {
  const today = day('2025-09-01');
  const own = {
    partId: 'd',
    laidOn: day('2020-09-01'),
    material: 'pine',
    wood: 'southern-pine',
    treated: true,
    stored: 'open',
  };
  const outlook = deckOutlook(
    own as never,
    [],
    { decayIndex: 60, deckLifeYears: null },
    { asOf: today, countedTo: today },
  );
  if (outlook === null) throw new Error('a pine deck has an outlook');
  const picture = renderToString(<DeckPicture outlook={outlook} today={today} />);

  it('falls from certainty through nine, five and one chance in ten on the days its dates name', () => {
    const curve = pathOf(picture, 'p-trend');
    expect(curve[0]).toEqual([0, -250]);
    for (const [index, point] of curve.entries()) {
      if (index > 0) expect(point[1]).toBeGreaterThanOrEqual((curve[index - 1] as Place)[1] as number);
    }
    const marks = circles(picture, 'p-reading');
    expect(marks.map((mark) => mark[1])).toEqual([-225, -125, -25]);
    const dates = deckDates(outlook, today);
    const away = [dates.tenPercentOn, dates.halfOn, dates.ninetyPercentOn].map(
      (on) => dayNumber(on) - dayNumber(today),
    );
    const [first = 0, half = 0, last = 0] = marks.map((mark) => mark[0]);
    expect(half / last).toBeCloseTo((away[1] as number) / (away[2] as number), 2);
    expect(first / last).toBeCloseTo((away[0] as number) / (away[2] as number), 2);
    expect(picture).toContain('nine in ten still lie on');
  });
});

describe('use against class', () => {
  const loads: LoadedTrip[] = [0.4, 0.95, 1.05, 0.9, 1.2].map((share, at) => ({
    ...{ trip: trip(`2025-05-0${at + 1}`, 20), share, cargoKg: kg(1), grossKg: kg(1), payloadKg: kg(1) },
  }));
  const picture = renderToString(<UsePicture loads={loads} trailerClass="medium" />);

  it('shows each load, those over payload apart, and counts them in words', () => {
    expect(circles(picture, 'p-reading')).toHaveLength(3);
    expect(circles(picture, 'p-reading p-past')).toHaveLength(2);
    expect(picture).toContain(
      '5 loads of late on this trailer, a trailer of the class medium: 2 over payload, 1 more above 90 %',
    );
    expect(picture).toContain('The heaviest came to 120 % on Mon 5 May 2025.');
    // The line of payload stands a tenth of it above that of nine tenths, as the loads do on the same scale.
    const full = pathOf(picture, 'p-limit')[0]?.[1] ?? 0;
    const nine = pathOf(picture, 'p-chalk')[0]?.[1] ?? 0;
    expect(nine / full).toBeCloseTo(0.9, 2);
  });

  it('is not drawn without a load', () => {
    expect(renderToString(<UsePicture loads={[]} trailerClass={null} />)).toBe('');
  });
});

describe('round numbers along an axis', () => {
  it.each([
    [{ from: 0, to: 10 }, 5, [0, 2, 4, 6, 8, 10]],
    [{ from: 3, to: 27 }, 4, [10, 20]],
    [{ from: 0, to: 1.2 }, 6, [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2]],
  ])('from %j in about %i', (span, about, steps) => {
    expect(roundSteps(span, about)).toEqual(steps.map((step) => expect.closeTo(step, 9)));
  });
});
