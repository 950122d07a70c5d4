import type { WearTrend } from '../../rules/inspection/wear-trends.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { PhoneFold } from '../components/fold.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { showDate } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { WearPicture } from '../pictures/wear-picture.js';
import { measuredWords } from '../words/measured-words.js';
import { reachedWords, wearTitle } from '../words/wear-words.js';

/** How each part that is measured again and again wears, its limit, and when that comes or why nobody can say. */
export function WearSection({ screen }: { readonly screen: TrailerScreen }) {
  const { wear } = screen.assessment;
  if (wear.length === 0) return null;
  return (
    <section class="stack-tight" aria-labelledby="wear">
      <h2 class="chalked" id="wear">
        Wear
      </h2>
      <ul class="lines sheet">
        {nearest(wear).map((trend) => (
          <li key={trend.key} class="stack-tight">
            <div class="apart">
              <span class="strong">{wearTitle(trend)}</span>
              <span>{measuredWords(trend.quantity, trend.latest.value)}</span>
            </div>
            <p class="small">{reachedWords(trend)}</p>
          </li>
        ))}
      </ul>
      <PhoneFold summary={`All ${wear.length} that are measured`}>
        <Table
          caption="What was measured, its limit, and when it comes there"
          rows={wear}
          rowKey={(row) => row.key}
          columns={[
            { label: 'Part', lead: true, cell: (row) => wearTitle(row) },
            { label: 'Latest', right: true, cell: (row) => latestWords(row) },
            { label: 'Limit', right: true, cell: limitCell },
            { label: 'Comes there', cell: reachedWords },
            { label: 'Readings', right: true, cell: readingsCell },
          ]}
        />
      </PhoneFold>
      {wear.some(({ line }) => line !== null) && (
        <details class="fold">
          <summary>
            <span class="strong">Wear drawn out, with its band and limit</span>
          </summary>
          <div class="cards">
            {wear.map((trend) => (
              <WearPicture key={trend.key} trend={trend} />
            ))}
          </div>
        </details>
      )}
      <HowWorkedOut workings={screen.workings.filter(({ of }) => of === 'wear')} what="wear" />
    </section>
  );
}

/** Of each quantity the place that comes to its limit first: past it, then by day, then those nobody can say of. */
function nearest(wear: readonly WearTrend[]): readonly WearTrend[] {
  const byQuantity = Map.groupBy(wear, ({ quantity }) => quantity);
  return [...byQuantity.values()].map(
    (trends) => trends.toSorted((a, b) => (reachedBy(a) < reachedBy(b) ? -1 : 1))[0] as WearTrend,
  );
}

function reachedBy({ toLimit }: WearTrend): string {
  if (toLimit.kind === 'past') return '';
  return (toLimit.kind === 'reached-by' ? toLimit.on.middle : null) ?? '9999';
}

function latestWords({ quantity, latest }: WearTrend): string {
  return `${measuredWords(quantity, latest.value)}, ${showDate(latest.on)}`;
}

function limitCell({ quantity, limit }: WearTrend) {
  return limit === null ? <span class="unknown">unknown</span> : measuredWords(quantity, limit.value);
}

function readingsCell({ readings, leftOut }: WearTrend): string {
  return leftOut.length === 0 ? String(readings.length) : `${readings.length}, and ${leftOut.length} left out as odd`;
}
