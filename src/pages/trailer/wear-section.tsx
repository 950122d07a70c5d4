import type { WearTrend } from '../../rules/inspection/wear-trends.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { showDate } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
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
      <HowWorkedOut workings={screen.workings.filter(({ of }) => of === 'wear')} what="wear" />
    </section>
  );
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
