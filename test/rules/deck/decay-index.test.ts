import { expect, test } from 'vitest';
import { decayHazard, decayIndex, decayIndexFahrenheit } from '../../../src/rules/deck/decay-index.js';
import published from '../reference/decay-index.json' with { type: 'json' };

type Place = (typeof published.places)[number];

function months(place: Place) {
  const celsius = place.temperatureC ?? place.temperatureF?.map((f) => (f - 32) / 1.8) ?? [];
  return place.wetDays.map((wetDays, month) => ({ meanC: celsius[month] ?? Number.NaN, wetDays }));
}

// Tolerance 0.02, as the cases have it: monthly means are printed to three places, days to a quarter.
test.each(published.places.map((place, at) => [`D${[1, 2, 5, 4][at]}`, place.city, place] as const))(
  '%s %s: the index and its hazard',
  (_id, _city, place) => {
    const index = decayIndex(months(place));
    expect(Math.abs(index - place.index)).toBeLessThanOrEqual(0.02);
    expect(decayHazard(index)).toBe(place.hazard);
  },
);

test('D3 the mean of yearly indices, 55.29 and 51.04, is not the index of the mean year', () => {
  const mean = (years: Readonly<Record<string, number>>) =>
    Object.values(years).reduce((sum, one) => sum + one, 0) / Object.values(years).length;
  const [seattle, newYork] = published.places;
  expect(Math.abs(mean(published.yearly['Seattle WA']) - 55.29)).toBeLessThanOrEqual(0.02);
  expect(Math.abs(mean(published.yearly['New York NY']) - 51.04)).toBeLessThanOrEqual(0.02);
  expect(decayIndex(months(seattle as Place))).toBeLessThan(55);
  expect(decayIndex(months(newYork as Place))).toBeLessThan(51);
});

test('D4 Phoenix without the clamps would read −4.73: two negatives must not make a hazard', () => {
  const phoenix = published.places.find((place) => place.withoutClamp !== undefined) as Place;
  const raw = months(phoenix).reduce((sum, { meanC, wetDays }) => sum + ((meanC - 2) * (wetDays - 3)) / 16.7, 0);
  expect(raw).toBeCloseTo(-4.73, 2);
  expect(decayIndex(months(phoenix))).toBeGreaterThan(0);
  const frozenDesert = Array.from({ length: 12 }, () => ({ meanC: -20, wetDays: 0 }));
  expect(decayIndex(frozenDesert)).toBe(0);
});

test('the original in °F reads about 2 % higher', () => {
  const mobile = published.places.find((place) => place.city === 'Mobile AL') as Place;
  const inF = mobile.wetDays.map((wetDays, month) => ({ meanF: mobile.temperatureF?.[month] ?? Number.NaN, wetDays }));
  const ratio = decayIndexFahrenheit(inF) / decayIndex(months(mobile));
  expect(ratio).toBeGreaterThan(1.01);
  expect(ratio).toBeLessThan(1.03);
});

test('bands: below 35 low, to 65 moderate, above high', () => {
  expect([34.9, 35, 65, 65.1].map(decayHazard)).toEqual(['low', 'moderate', 'moderate', 'high']);
});

test('eleven months are no year', () => {
  expect(() => decayIndex([{ meanC: 10, wetDays: 10 }])).toThrow(RangeError);
});
