import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airPressureAt, pressureWhen, temperatureWhen } from '../../../src/rules/tire/air.js';
import { feet, metres } from '../../../src/rules/units/length.js';
import { psi, toPsi } from '../../../src/rules/units/pressure.js';
import { fahrenheit, toFahrenheit } from '../../../src/rules/units/temperature.js';
import { GAS_LAW_CASES, STANDARD_AIR, T7_REACHES, T8_BY_GAUGE_RATIO } from '../reference/tire-air-cases.js';

const within = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);

describe('a tire warmer or colder than when it was filled', () => {
  test.each(GAS_LAW_CASES)('$id: $psig psi at $atF °F is $expected at $toF °F', (one) => {
    const read = { gaugeKpa: psi(one.psig), airC: fahrenheit(one.atF) };
    within(toPsi(pressureWhen(read, fahrenheit(one.toF))), one.expected, one.tolerance);
  });

  test('T7: 84 psi is reached at 157.6 °F', () => {
    const read = { gaugeKpa: psi(T7_REACHES.psig), airC: fahrenheit(T7_REACHES.atF) };
    within(toFahrenheit(temperatureWhen(read, psi(T7_REACHES.reads))), T7_REACHES.atWhichF, T7_REACHES.tolerance);
  });

  test('T8 is not the ratio of gauge pressures', () => {
    const found = toPsi(pressureWhen({ gaugeKpa: psi(80), airC: fahrenheit(70) }, fahrenheit(20)));
    expect(T8_BY_GAUGE_RATIO - found).toBeGreaterThan(1);
  });

  test('temperature and pressure undo one another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 130 }), fc.integer({ min: -40, max: 180 }), (gauge, warm) => {
        const read = { gaugeKpa: psi(gauge), airC: fahrenheit(70) };
        const found = temperatureWhen(read, pressureWhen(read, fahrenheit(warm)));
        expect(toFahrenheit(found)).toBeCloseTo(warm, 6);
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  test('there is no air below absolute zero', () => {
    expect(() => pressureWhen({ gaugeKpa: psi(80), airC: fahrenheit(70) }, fahrenheit(-500))).toThrow(RangeError);
  });
});

describe('height above the sea', () => {
  // The table goes by geometric height, the formula by geopotential: up to 1.4 m at 3,000 m, worth 0.013 kPa.
  test.each(STANDARD_AIR)('$heightM m: $kPa kPa', ({ heightM, kPa }) => {
    within(airPressureAt(metres(heightM)), kPa, 0.015);
  });

  test('at 5,000 ft the air presses with 12.2 psi', () => {
    within(toPsi(airPressureAt(feet(5_000))), 12.2, 0.05);
  });

  test('a tire carried up, no warmer, reads more by what the air outside presses less', () => {
    const read = { gaugeKpa: psi(80), airC: fahrenheit(70) };
    const gained = toPsi(pressureWhen(read, fahrenheit(70), { heightM: feet(5_000) })) - 80;
    within(gained, 14.696 - 12.228, 0.005);
    // And carried down again it reads what it read.
    const above = { gaugeKpa: psi(80 + gained), airC: fahrenheit(70), heightM: feet(5_000) };
    expect(toPsi(pressureWhen(above, fahrenheit(70), { heightM: null }))).toBeCloseTo(80, 9);
  });

  test('heights that no road has are refused', () => {
    for (const height of [-501, 11_001, Number.NaN]) {
      expect(() => airPressureAt(metres(height))).toThrow(RangeError);
    }
  });
});
