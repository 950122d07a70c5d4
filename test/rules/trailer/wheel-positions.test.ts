import { describe, expect, test } from 'vitest';
import { parseWheelPosition, wheelPositions } from '../../../src/rules/trailer/wheel-positions.js';
import { axle, build } from '../sample-facts.js';

describe('a wheel position is read as it is written', () => {
  test.each([
    ['1L', { kind: 'axle', axle: 1, side: 'L', dual: null }],
    ['3R', { kind: 'axle', axle: 3, side: 'R', dual: null }],
    ['2RO', { kind: 'axle', axle: 2, side: 'R', dual: 'O' }],
    ['1LI', { kind: 'axle', axle: 1, side: 'L', dual: 'I' }],
    ['spare', { kind: 'spare' }],
  ])('%s', (text, expected) => {
    expect(parseWheelPosition(text)).toEqual(expected);
  });

  test.each(['', '0L', '1', 'L1', '1X', '1LX', '1LOO', '10L', 'Spare'])('"%s" is none', (text) => {
    expect(parseWheelPosition(text)).toBeNull();
  });
});

test('a build has a tire at each wheel, front to rear, and a spare', () => {
  const trailer = build({ axles: [axle(2, 10_000, { wheelsPerSide: 2 }), axle(1, 7_000)] });
  expect(wheelPositions(trailer)).toEqual(['1L', '1R', '2LO', '2LI', '2RI', '2RO', 'spare']);
  for (const position of wheelPositions(trailer)) expect(parseWheelPosition(position)).not.toBeNull();
});
