import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { PhoneFold } from '../components/fold.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { Fact } from '../components/load-table.js';
import { showForce, showMass } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { CLASS_WORDS } from '../words/build-words.js';
import { limitWords, originWords } from '../words/limit-words.js';

/** Every limit with its origin, which governs, and what is left for cargo. */
export function LimitSection({ screen }: { readonly screen: TrailerScreen }) {
  const { ratings } = screen.assessment;
  const gvwr = screen.build?.plate.gvwrKg ?? null;
  return (
    <section class="stack-tight" aria-labelledby="limits">
      <h2 class="chalked" id="limits">
        Limits
      </h2>
      {ratings === null || ratings.limits.length === 0 ? (
        <p class="empty">No rating is on file yet, so there is no limit to show. Enter the plate under Build sheet.</p>
      ) : (
        <>
          <dl class="facts sheet">
            <Fact
              name="Payload left for cargo"
              value={ratings.payloadKg === null ? null : showMass(ratings.payloadKg)}
            />
            <Fact name="What governs it" value={ratings.governing === null ? null : limitWords(ratings.governing)} />
            <Fact
              name="Class (common practice)"
              value={ratings.trailerClass === null ? null : CLASS_WORDS[ratings.trailerClass]}
            />
          </dl>
          {ratings.axleSumKg !== null && gvwr !== null && ratings.axleSumKg > gvwr && (
            <p class="small">
              The axles add up to {showMass(ratings.axleSumKg)}. That does not raise the plate: {showMass(gvwr)} is what
              the whole trailer may weigh.
            </p>
          )}
          <HowWorkedOut workings={screen.workings.filter(({ of }) => of === 'payload')} what="payload" />
          <PhoneFold summary={`Each rated number, ${ratings.limits.length}`}>
            <Table
              caption="Each rated number and where it comes from"
              rows={ratings.limits}
              rowKey={(row) => `${row.kind} ${row.subject}`}
              columns={[
                { label: 'Limit', lead: true, cell: (row) => limitWords(row) },
                { label: 'Rated', right: true, cell: (row) => showForce(row.limitN) },
                { label: 'From', cell: (row) => originWords(row.origin) },
                {
                  label: 'Governs',
                  cell: (row) =>
                    ratings.governing?.kind === row.kind && ratings.governing.subject === row.subject ? 'yes' : '',
                },
              ]}
            />
          </PhoneFold>
        </>
      )}
    </section>
  );
}
