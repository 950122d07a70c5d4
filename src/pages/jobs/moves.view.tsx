import type { Caller } from '../../use-cases/caller.js';
import type { MovesScreen } from '../../use-cases/show/show-moves.js';
import { Caution } from '../components/caution.js';
import { VerdictMark } from '../components/marks.js';
import { Pager } from '../components/pager.js';
import { showDates } from '../components/show-quantity.js';
import { TrailerFilterForm } from '../components/trailer-filter.js';
import { YardNumber } from '../components/yard-number.js';
import { filterQuery } from '../form/trailer-filter.js';
import { Head, Page } from '../page.js';
import type { Names } from '../words/flag-words.js';
import { moveInShort } from '../words/move-words.js';

interface MovesProps {
  readonly caller: Caller;
  readonly screen: MovesScreen;
}

/** The trailers a job could be moved to, each with its answer before anything is chosen. */
export function MovesPage({ caller, screen }: MovesProps) {
  const { job, choices, filter } = screen;
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  const path = `/jobs/${job.id}/move`;
  return (
    <Page title={`Another trailer for ${job.name}`} caller={caller} door="Jobs" at="below">
      <Head
        title={`Another trailer for ${job.name}`}
        lede={
          <>
            <a href={`/jobs/${job.id}`}>{job.name}</a>, {showDates(job.startsOn, job.endsOn)}
            {job.trailer ? `, now on ${job.trailer.number}` : ', no trailer yet'}. Where the load sits, and what a scale
            said, hold for the trailer they were taken on only.
          </>
        }
      >
        <a class="button" href={`/jobs/${job.id}/trailers`}>
          The best of the yard first
        </a>
      </Head>
      <TrailerFilterForm filter={filter} path={path} />
      {choices.rows.length === 0 ? (
        <p class="empty">No trailer is like that. Widen the search.</p>
      ) : (
        <ul class="plain job-cards">
          {choices.rows.map((choice) => (
            <Choice key={choice.trailer.id} choice={choice} path={path} names={names} />
          ))}
        </ul>
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: choices.total }}
        path={path}
        query={filterQuery(filter)}
        what="trailers"
      />
      <Caution />
    </Page>
  );
}

interface ChoiceProps {
  readonly choice: MovesScreen['choices']['rows'][number];
  readonly path: string;
  readonly names: Names;
}

function Choice({ choice: { trailer, answer }, path, names }: ChoiceProps) {
  return (
    <li class={`sheet job-card verdict-${answer?.fit.verdict ?? 'none'}`}>
      <div class="apart">
        <span class="row">
          <YardNumber number={trailer.number} id={trailer.id} />
          {trailer.name && <span>{trailer.name}</span>}
        </span>
        {answer && <VerdictMark verdict={answer.fit.verdict} />}
      </div>
      {answer === null ? (
        <p class="soft">It has this job now.</p>
      ) : (
        <>
          <ul class="plain">
            {moveInShort(answer, names).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          <p class="actions">
            <a class="button" href={`${path}/${trailer.id}`}>
              Move it to {trailer.number}
            </a>
          </p>
        </>
      )}
    </li>
  );
}
