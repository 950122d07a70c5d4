import { dayNumber, MEAN_YEAR_DAYS } from '../calendar/day-number.js';
import type { UseSoFar } from '../inspection/use-so-far.js';
import type { WearTrend } from '../inspection/wear-trends.js';
import type { WearLine } from '../wear/wear-line.js';
import type { WEAR_KINDS, WearLimit } from '../wear/wear-quantity.js';
import { type Basis, type Leaf, type Working, type WorkingUnit, workOut } from './working.js';

/** A line through readings, the limit it runs to, and how many of its places pass in a day. */
interface WearCase {
  readonly level: number;
  readonly slope: number;
  readonly aDay: number;
}

const RATE_KM = 1000;

/** How the day on which a part comes to its limit was worked out; null when none can be named. */
export function explainWear(trend: WearTrend, use: UseSoFar): Working | null {
  const { line, limit, toLimit, by } = trend;
  if (line === null || limit === null || toLimit.kind !== 'reached-by' || toLimit.on.middle === null) return null;
  const middle = dayNumber(toLimit.on.middle);
  const base: WearCase = {
    level: line.level,
    slope: line.slope,
    aDay: by === 'days' ? 1 : (use.toCome.kmPerDay ?? 0),
  };
  return workOut({
    ...{ of: 'wear', subject: trend.key, unit: 'day', base },
    formula: `the day on which the line through ${trend.readings.length} readings, the usual wear standing in while they are few, comes to the limit`,
    source: 'Straight line with a conjugate prior; where it crosses a value as in NIST/SEMATECH e-Handbook 4.5.2.1.',
    leaves: [...readingLeaf(trend, line), limitLeaf(trend, limit), rateLeaf(trend, line), ...useLeaf(trend, use)],
    compute: (one) => middle + daysTo(one, line, limit) - daysTo(base, line, limit),
  });
}

function daysTo({ level, slope, aDay }: WearCase, { centre }: WearLine, limit: WearLimit): number {
  return aDay <= 0 ? 0 : (centre + (limit.value - level) / slope) / aDay;
}

function readingLeaf({ latest, quantity }: WearTrend, line: WearLine): Leaf<WearCase>[] {
  const doubt = Math.sqrt(line.levelVariance);
  return [
    {
      ...{ name: 'reading', value: latest.value, unit: UNIT_OF[quantity], basis: 'measured', doubt },
      put: (one, value) => ({ ...one, level: one.level + value - latest.value }),
    },
  ];
}

function limitLeaf({ quantity }: WearTrend, { value, origin }: WearLimit): Leaf<WearCase> {
  const basis: Basis = origin === 'law' ? 'published' : 'setting';
  return { name: 'wear-limit', value, unit: UNIT_OF[quantity], basis, put: (one) => one };
}

function rateLeaf({ quantity, by }: WearTrend, line: WearLine): Leaf<WearCase> {
  const [per, unit] = by === 'distance' ? ([RATE_KM, '/1000 km'] as const) : ([MEAN_YEAR_DAYS, '/year'] as const);
  return {
    ...{ name: 'wear-rate', value: line.slope * per, unit: `${UNIT_OF[quantity]}${unit}`, basis: 'measured' },
    doubt: Math.min(Math.sqrt(line.slopeVariance), Math.abs(line.slope) / 2) * per,
    put: (one, value) => ({ ...one, slope: value / per }),
  };
}

function useLeaf({ by }: WearTrend, use: UseSoFar): Leaf<WearCase>[] {
  const { kmPerDay } = use.toCome;
  if (by === 'days' || kmPerDay === null) return [];
  return [
    {
      ...{ name: 'use-a-day', value: kmPerDay, unit: 'km/day', basis: 'assumed' },
      put: (one, value) => ({ ...one, aDay: value }),
    },
  ];
}

const UNIT_OF: Readonly<Record<keyof typeof WEAR_KINDS, Extract<WorkingUnit, 'mm' | 'V' | 'A'>>> = {
  'tread-depth-mm': 'mm',
  'lining-mm': 'mm',
  'magnet-mm': 'mm',
  'magnet-a': 'A',
  'battery-v': 'V',
  'end-play-mm': 'mm',
  'chain-mm': 'mm',
};
