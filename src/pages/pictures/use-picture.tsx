import { dayNumber } from '../../rules/calendar/day-number.js';
import type { LoadedTrip } from '../../rules/flags/loads-of-quarter.js';
import type { TrailerClass } from '../../rules/trailer/ratings.js';
import { showCount, showDate, showNearDate, showShare } from '../components/show-quantity.js';
import { CLASS_WORDS } from '../words/build-words.js';
import { Chart, lineThrough, scalesOf } from './chart.js';

interface UsePictureProps {
  /** In the order of time. */
  readonly loads: readonly LoadedTrip[];
  readonly trailerClass: TrailerClass | null;
}

/** Each load of late as a share of payload, against the nine tenths it is meant for and the whole it may carry. */
export function UsePicture({ loads, trailerClass }: UsePictureProps) {
  const [first, last] = [loads[0], loads.at(-1)];
  if (first === undefined || last === undefined) return null;
  const from = dayNumber(first.trip.startedOn);
  const days = { from: -2, to: Math.max(dayNumber(last.trip.startedOn) - from, 7) + 2 };
  const most = Math.max(1.1, ...loads.map(({ share }) => share * 1.08));
  const scales = scalesOf(days, { from: 0, to: most });
  const line = (share: number) =>
    lineThrough(
      [
        [days.from, share],
        [days.to, share],
      ],
      scales,
    );
  return (
    <Chart
      title="Each load of late as a share of payload"
      scales={scales}
      across={[
        { at: 0, says: showNearDate(first.trip.startedOn) },
        { at: days.to - 2, says: showNearDate(last.trip.startedOn) },
      ]}
      up={[0, 0.5, 0.9, 1].map((share) => ({ at: share, says: showShare(share, 0) }))}
      acrossSays=""
      upSays="share of payload"
      words={<p>{useWords(loads, trailerClass)}</p>}
    >
      <path class="p-limit" d={line(1)} />
      <path class="p-chalk" d={line(0.9)} />
      {loads.map(({ trip, share }) => (
        <g key={trip.id}>
          <path
            class={share > 1 ? 'p-stem p-past' : 'p-stem'}
            d={lineThrough(
              [
                [dayNumber(trip.startedOn) - from, 0],
                [dayNumber(trip.startedOn) - from, share],
              ],
              scales,
            )}
          />
          <circle
            class={share > 1 ? 'p-reading p-past' : 'p-reading'}
            cx={scales.x(dayNumber(trip.startedOn) - from)}
            cy={scales.y(share)}
            r="7"
          />
        </g>
      ))}
    </Chart>
  );
}

function useWords(loads: readonly LoadedTrip[], trailerClass: TrailerClass | null): string {
  const over = loads.filter(({ share }) => share > 1).length;
  const high = loads.filter(({ share }) => share > 0.9 && share <= 1).length;
  const heaviest = loads.reduce((most, one) => (one.share > most.share ? one : most));
  const of = trailerClass === null ? '' : `, a trailer of the class ${CLASS_WORDS[trailerClass].toLowerCase()}`;
  return `${showCount(loads.length, 'load')} of late on this trailer${of}: ${over} over payload, ${high} more above 90 % of it. The heaviest came to ${showShare(heaviest.share, 0)} on ${showDate(heaviest.trip.startedOn)}.`;
}
