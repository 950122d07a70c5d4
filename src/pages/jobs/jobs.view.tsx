import { type Caller, may } from '../../use-cases/caller.js';
import type { JobsScreen } from '../../use-cases/show/show-jobs.js';
import { Caution } from '../components/caution.js';
import { JobCards } from '../components/job-cards.js';
import { Pager } from '../components/pager.js';
import { showCount, showDates } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';

interface JobsProps {
  readonly caller: Caller;
  readonly screen: JobsScreen;
  readonly said: string | null;
}

export function JobsPage({ caller, screen, said }: JobsProps) {
  const coming = screen.which === 'coming';
  return (
    <Page title="Jobs" caller={caller} door="Jobs" said={said}>
      <Head title="Jobs" lede={coming ? 'To come and under way, soonest first.' : 'Over or called off, latest first.'}>
        {may(caller, 'hand') && (
          <a class="button button-main" href="/jobs/new">
            Book a job
          </a>
        )}
        <a class="button" href="/machines">
          Machines and tow vehicles
        </a>
      </Head>
      <nav class="tabs" aria-label="Which jobs">
        <a href="/jobs" aria-current={coming ? 'page' : undefined}>
          To come
        </a>
        <a href="/jobs?list=over" aria-current={coming ? undefined : 'page'}>
          Over
        </a>
      </nav>
      {screen.jobs.rows.length === 0 ? (
        <p class="empty">{coming ? 'No job is booked.' : 'No job is over yet.'}</p>
      ) : coming ? (
        <JobCards
          jobs={screen.jobs.rows}
          names={{ machines: screen.machineNames, checkKinds: screen.checkKindNames }}
          today={caller.today}
        />
      ) : (
        <OverTable screen={screen} />
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: screen.jobs.total }}
        path="/jobs"
        query={coming ? {} : { list: 'over' }}
        what="jobs"
      />
      {coming && <Caution />}
    </Page>
  );
}

const STATE_WORDS = { booked: 'Not closed', cancelled: 'Cancelled', done: 'Done' } as const;

function OverTable({ screen }: { readonly screen: JobsScreen }) {
  return (
    <Table
      caption={showCount(screen.jobs.total, 'job')}
      rows={screen.jobs.rows}
      rowKey={({ job }) => job.id}
      columns={[
        { label: 'Job', lead: true, cell: ({ job }) => <a href={`/jobs/${job.id}`}>{job.name}</a> },
        { label: 'Days', cell: ({ job }) => showDates(job.startsOn, job.endsOn) },
        {
          label: 'Trailer',
          cell: ({ job }) => job.trailer && <YardNumber number={job.trailer.number} id={job.trailer.id} />,
        },
        { label: 'Became', cell: ({ job }) => STATE_WORDS[job.state] },
      ]}
    />
  );
}
