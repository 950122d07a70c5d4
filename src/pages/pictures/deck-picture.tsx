import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { dayNumber, daysAfter, MEAN_YEAR_DAYS, yearsBetween } from '../../rules/calendar/day-number.js';
import { chanceOfNewDeck, type DeckOutlook, deckDates } from '../../rules/deck/deck-outlook.js';
import { showDate, showNumber, showShare } from '../components/show-quantity.js';
import { Chart, lineThrough, roundSteps, scalesOf } from './chart.js';

const STEPS = 30;

/** The chance that a deck lying today still lies, over the years to come. */
export function DeckPicture({ outlook, today }: { readonly outlook: DeckOutlook; readonly today: CivilDate }) {
  const { tenPercentOn, halfOn, ninetyPercentOn } = deckDates(outlook, today);
  const days = Math.max(Math.round((dayNumber(ninetyPercentOn) - dayNumber(today)) * 1.2), 30);
  const years = { from: 0, to: days / MEAN_YEAR_DAYS };
  const scales = scalesOf(years, { from: 0, to: 1 });
  const lies = (day: number) => 1 - chanceOfNewDeck(outlook, today, daysAfter(today, day));
  const curve = Array.from({ length: STEPS + 1 }, (_, step) => {
    const day = Math.round((days * step) / STEPS);
    return [day / MEAN_YEAR_DAYS, lies(day)] as const;
  });
  const marks = [
    { on: tenPercentOn, share: 0.9 },
    { on: halfOn, share: 0.5 },
    { on: ninetyPercentOn, share: 0.1 },
  ];
  return (
    <Chart
      title="Chance that this deck still lies, over the years to come"
      scales={scales}
      across={roundSteps(years, 6).map((value) => ({ at: value, says: showNumber(value, 1) }))}
      up={[0, 0.1, 0.5, 0.9, 1].map((share) => ({ at: share, says: showShare(share, 0) }))}
      acrossSays="years from today"
      upSays="still lies"
      words={
        <p>
          Of decks like it that lie today, nine in ten still lie on {showDate(tenPercentOn)}, half on {showDate(halfOn)}
          , one in ten on {showDate(ninetyPercentOn)}.
        </p>
      }
    >
      <path class="p-trend" d={lineThrough(curve, scales)} />
      {marks.map(({ on, share }) => (
        <circle key={share} class="p-reading" cx={scales.x(yearsBetween(today, on))} cy={scales.y(share)} r="8" />
      ))}
    </Chart>
  );
}
