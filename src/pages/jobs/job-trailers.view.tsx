import type { YardRanking } from '../../use-cases/assessments/rank-yard.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { JobScreen } from '../../use-cases/show/show-job.js';
import { Caution } from '../components/caution.js';
import { Ranking } from '../components/ranking.js';
import { showDates } from '../components/show-quantity.js';
import { Head, Page } from '../page.js';

interface JobTrailersProps {
  readonly caller: Caller;
  readonly screen: JobScreen;
  readonly ranking: YardRanking;
}

/** Which trailers could take a booked job, best first. */
export function JobTrailersPage({ caller, screen, ranking }: JobTrailersProps) {
  const { job, row } = screen;
  return (
    <Page title="Which trailers could take it?" caller={caller} door="Jobs" at="below">
      <Head
        title="Which trailers could take it?"
        lede={
          <>
            <a href={`/jobs/${job.id}`}>{job.name}</a>, {showDates(job.startsOn, job.endsOn)}
            {row.trailer ? `, booked on ${row.trailer.number}` : ', no trailer picked yet'}. The best first. Where the
            load sits, and what a scale said, count for the trailer they were taken on only.
          </>
        }
      />
      <Ranking
        ranking={ranking}
        names={{ machines: screen.machineNames, checkKinds: screen.checkKindNames }}
        today={caller.today}
        jobId={may(caller, 'hand') ? job.id : null}
      />
      <Caution />
    </Page>
  );
}
