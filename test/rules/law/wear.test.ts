import { describe, expect, test } from 'vitest';
import {
  LEAST_BRAKE_FLUID,
  LEAST_LINING,
  LEAST_TREAD,
  lawOnMeasure,
  MOST_COUPLING_PLAY,
  MOST_SECTION_LOST,
  passesWear,
  type WearLimit,
} from '../../../src/rules/law/wear.js';
import { inch } from '../../../src/rules/units/length.js';
import periodic from '../reference/periodic-inspection.json' with { type: 'json' };
import { lawCases } from './law-cases.js';

const mm = (inches: number) => inch(inches) * 1000;

const LINING: Readonly<Record<string, WearLimit>> = {
  'electric drum': LEAST_LINING['electric-or-hydraulic-drum'],
  'hydraulic drum': LEAST_LINING['electric-or-hydraulic-drum'],
  'air drum': LEAST_LINING['air-drum'],
};

describe('linings', () => {
  test.each(lawCases('lining-'))('%s', (_id, { input, expected }) => {
    const limit = LINING[input.brake as string];
    expect(limit && passesWear(limit, mm(input.liningIn))).toBe(expected.pass);
  });
});

describe('tread', () => {
  test.each(lawCases('tread-'))('%s', (_id, { input, expected }) => {
    expect(passesWear(LEAST_TREAD, mm(input.tread32nds / 32))).toBe(expected.pass);
  });
});

describe('coupling parts', () => {
  test.each(lawCases('pintle-20'))('%s', (_id, { input, expected }) => {
    const limit = MOST_SECTION_LOST['pintle-hook'];
    expect(passesWear(limit, input.sectionLossPercent / 100)).toBe(expected.pass);
    expect(passesWear(limit, 0.201)).toBe(false);
  });

  test.each(lawCases('chain-worn'))('%s: any wear that can be measured fails', (_id, { input, expected }) => {
    expect(passesWear(MOST_SECTION_LOST['chain-link'], input.wearPercent / 100)).toBe(expected.pass);
    expect(passesWear(MOST_SECTION_LOST['chain-link'], 0)).toBe(true);
  });
});

describe('each limit is that of its item in Appendix A', () => {
  const LIMITS: Readonly<Record<string, readonly [WearLimit, (published: number) => number]>> = {
    'brk-lining-hyd-elec': [LEAST_LINING['electric-or-hydraulic-drum'], mm],
    'brk-lining-airdrum': [LEAST_LINING['air-drum'], mm],
    'brk-lining-airdisc': [LEAST_LINING['air-disc'], mm],
    'brk-hyd-mc': [LEAST_BRAKE_FLUID, (share) => share],
    'cpl-pintle': [MOST_SECTION_LOST['pintle-hook'], (percent) => percent / 100],
    'cpl-eye': [MOST_SECTION_LOST['drawbar-eye'], (percent) => percent / 100],
    'cpl-tongue-slider': [MOST_COUPLING_PLAY['tongue-slider'], mm],
    'cpl-tongue': [MOST_COUPLING_PLAY['tongue-at-subframe'], mm],
    'tire-tread': [LEAST_TREAD, (thirtySeconds) => mm(thirtySeconds / 32)],
  };

  test.each(Object.entries(LIMITS))('%s', (id, [limit, toOurs]) => {
    const item = periodic.items.find((one) => one.id === id);
    const published = item?.limit as { op: string; value: number };
    expect(limit.value).toBeCloseTo(toOurs(published.value), 9);
    expect(passesWear(limit, toOurs(published.value))).toBe(!published.op.includes('='));
    const worse = published.op.startsWith('<') ? 0.99 : 1.01;
    expect(passesWear(limit, toOurs(published.value) * worse)).toBe(false);
    expect(passesWear(limit, toOurs(published.value) * (2 - worse))).toBe(true);
    // What was not read but remembered says so where it is shown.
    expect(limit.source.includes('from memory')).toBe(
      (item?.provenance.includes('from memory') ?? true) && id !== 'tire-tread',
    );
  });
});

test('a check line is held to the law where the law names its measure', () => {
  expect(lawOnMeasure('tread-depth-mm', null)).toBe(LEAST_TREAD);
  expect(lawOnMeasure('lining-mm', 'electric')).toBe(LEAST_LINING['electric-or-hydraulic-drum']);
  expect([lawOnMeasure('lining-mm', 'none'), lawOnMeasure('magnet-mm', 'electric')]).toEqual([null, null]);
});
