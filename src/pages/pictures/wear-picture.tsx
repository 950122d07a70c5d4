import type { WearTrend } from '../../rules/inspection/wear-trends.js';
import { lineAt, lineRange } from '../../rules/statistics/line.js';
import { km, miles, toMiles } from '../../rules/units/distance.js';
import { showDate, showNumber } from '../components/show-quantity.js';
import { measuredUnit, measuredWords } from '../words/measured-words.js';
import { reachedWords, wearTitle } from '../words/wear-words.js';
import { Chart, lineThrough, roundSteps, type Scales, type Span, scalesOf } from './chart.js';

/** Two-sided, as the dates beside it: one chance in ten on either side. */
const BAND = 0.8;
const STEPS = 16;

/**
 * How a part wears: its readings, the line through them, the band in which that line lies with 80 %, and the limit.
 * Null while nothing says how fast it wears: one point is no picture.
 */
export function WearPicture({ trend }: { readonly trend: WearTrend }) {
  const { line, limit, readings, leftOut, quantity } = trend;
  if (line === null) return null;
  const across = acrossOf(trend);
  const places = Array.from(
    { length: STEPS + 1 },
    (_, step) => across.from + ((across.to - across.from) * step) / STEPS,
  );
  const band = places.map((x) => ({ x, ...lineRange(line, x, BAND) }));
  const up = upOf(
    trend,
    places.map((x) => lineAt(line, x)),
  );
  const scales = scalesOf(across, up);
  const inside = (value: number) => Math.min(Math.max(value, up.from), up.to);
  const edge = [
    ...band.map(({ x, low }) => [x, inside(low)] as const),
    ...band.toReversed().map(({ x, high }) => [x, inside(high)] as const),
  ];
  return (
    <Chart
      title={`${wearTitle(trend)}: readings, their line and its limit`}
      scales={scales}
      across={acrossTicks(trend, across)}
      up={upTicks(trend, up)}
      acrossSays={trend.by === 'distance' ? 'miles since it was fitted' : 'days since it was fitted'}
      upSays={`${wearTitle(trend)}, ${measuredUnit(quantity).unit}`}
      words={<Words trend={trend} />}
    >
      <path class="p-band" d={`${lineThrough(edge, scales)}Z`} />
      <path
        class="p-trend"
        d={lineThrough(
          places.map((x) => [x, inside(lineAt(line, x))]),
          scales,
        )}
      />
      {limit !== null && <LimitLine value={limit.value} across={across} scales={scales} />}
      {readings.map(({ x, value }) => (
        <circle key={x} class="p-reading" cx={scales.x(x)} cy={scales.y(value)} r="7" />
      ))}
      {leftOut.map(({ x, value }) => (
        <circle key={x} class="p-odd" cx={scales.x(x)} cy={scales.y(inside(value))} r="7" />
      ))}
    </Chart>
  );
}

function LimitLine({ value, across, scales }: { value: number; across: Span; scales: Scales }) {
  return (
    <>
      <path
        class="p-limit"
        d={lineThrough(
          [
            [across.from, value],
            [across.to, value],
          ],
          scales,
        )}
      />
      <text class="p-tick" x={scales.x(across.to) - 6} y={scales.y(value) - 8} text-anchor="end">
        limit
      </text>
    </>
  );
}

/** To a little past where the line meets its limit, but never so far that the readings crowd at one end. */
function acrossOf({ line, limit, readings, leftOut }: WearTrend): Span {
  const seen = [...readings, ...leftOut].map(({ x }) => x);
  const from = Math.min(0, ...seen);
  const last = Math.max(...seen, from + 1);
  const meets =
    line === null || limit === null || line.slope === 0 ? null : line.centre + (limit.value - line.level) / line.slope;
  const most = from + (last - from) * 4;
  const to =
    meets === null || meets < last ? from + (last - from) * 1.25 : Math.min(from + (meets - from) * 1.12, most);
  return { from, to };
}

function upOf({ readings, limit, leftOut }: WearTrend, line: readonly number[]): Span {
  const values = [...readings, ...leftOut].map(({ value }) => value);
  const all = [...values, ...line, ...(limit === null ? [] : [limit.value])];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = (most - least || Math.abs(most) || 1) * 0.12;
  return { from: least - room < 0 && least >= 0 ? 0 : least - room, to: most + room };
}

/** Round in the unit that gauges show. */
function upTicks({ quantity }: WearTrend, { from, to }: Span) {
  const { fromSi, toSi, decimals } = measuredUnit(quantity);
  const shown = { from: fromSi(from), to: fromSi(to) };
  return roundSteps(shown, 4).map((value) => ({ at: toSi(value), says: showNumber(value, decimals) }));
}

function acrossTicks({ by }: WearTrend, span: Span) {
  if (by === 'days') return roundSteps(span, 5).map((value) => ({ at: value, says: showNumber(value) }));
  const inMiles = { from: toMiles(km(span.from)), to: toMiles(km(span.to)) };
  return roundSteps(inMiles, 5).map((value) => ({ at: miles(value), says: showNumber(value) }));
}

function Words({ trend }: { readonly trend: WearTrend }) {
  const { readings, latest, quantity, limit, line, leftOut } = trend;
  const first = readings[0] ?? latest;
  return (
    <p>
      {wearTitle(trend)}: {readings.length} {readings.length === 1 ? 'reading' : 'readings'}, from{' '}
      {measuredWords(quantity, first.value)} on {showDate(first.on)} to {measuredWords(quantity, latest.value)} on{' '}
      {showDate(latest.on)}
      {leftOut.length > 0 && `; ${leftOut.length} left out as odd, drawn hollow`}.{' '}
      {limit !== null && `Limit ${measuredWords(quantity, limit.value)}. `}
      {reachedWords(trend)} The band holds the line with four chances in five.
      {line?.speedsUp && ' The readings bend towards faster wear than the line.'}
    </p>
  );
}
