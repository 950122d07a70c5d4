import { kg } from '../../rules/units/mass.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { JobScreen } from '../../use-cases/show/show-job.js';
import { Caution } from '../components/caution.js';
import { FitAnswer } from '../components/fit-answer.js';
import { Fact } from '../components/load-table.js';
import { RankedCards } from '../components/ranking.js';
import { showDates, showDistance, showMass } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { BASIS_WORDS, CDL_WORDS, REMEDY_WORDS } from '../words/build-words.js';

interface JobProps {
  readonly caller: Caller;
  readonly screen: JobScreen;
  readonly said: string | null;
}

export function JobPage({ caller, screen, said }: JobProps) {
  const { job, row, fit } = screen;
  const open = job.state === 'booked';
  return (
    <Page title={job.name} caller={caller} door="Jobs" at="below" said={said}>
      <Head title={job.name} lede={showDates(job.startsOn, job.endsOn)}>
        {row.trailer && <YardNumber number={row.trailer.number} id={row.trailer.id} />}
      </Head>
      {job.state === 'cancelled' && <p class="said">This job was cancelled.</p>}
      {job.state === 'done' && <p class="said">This job is done; it is on file as a trip.</p>}
      {open && may(caller, 'hand') && (
        <div class="actions">
          {job.work === 'hire' && job.startsOn <= caller.today && job.trailerId !== null && (
            <>
              <a class="button" href={`/trailers/${job.trailerId}/hand-out?job=${job.id}`}>
                Hand it out
              </a>
              <a class="button" href={`/trailers/${job.trailerId}/take-back`}>
                Take it back
              </a>
            </>
          )}
          {job.startsOn <= caller.today && job.trailerId !== null && (
            <a class="button button-main" href={`/jobs/${job.id}/done`}>
              It is done
            </a>
          )}
          <a class="button" href={`/jobs/${job.id}/change`}>
            Change it
          </a>
          <a class="button" href={`/jobs/${job.id}/move`}>
            {row.trailer ? 'Move to another trailer' : 'Pick a trailer'}
          </a>
          <a class="button button-stop" href={`/jobs/${job.id}/cancel`}>
            Cancel it
          </a>
        </div>
      )}
      <section class="sheet" aria-labelledby="answer">
        <h2 id="answer">May it go?</h2>
        {fit ? (
          <FitAnswer
            fit={fit}
            names={{ machines: screen.machineNames, checkKinds: screen.checkKindNames }}
            today={caller.today}
          />
        ) : (
          <p class="soft">
            {open && job.trailerId === null
              ? 'No trailer is picked yet.'
              : 'The job is over, so there is nothing to ask.'}
          </p>
        )}
        {open && (
          <p class="actions">
            <a class="button" href={`/jobs/${job.id}/trailers`}>
              Which trailers could take it?
            </a>
          </p>
        )}
      </section>
      {fit?.verdict === 'no-go' && (
        <section class="stack-tight" aria-labelledby="instead">
          <h2 class="chalked" id="instead">
            Could take it instead
          </h2>
          {screen.substitutes.length === 0 ? (
            <p class="empty">No other trailer of the yard that is free could take it.</p>
          ) : (
            <RankedCards
              ranked={screen.substitutes}
              names={{ machines: screen.machineNames, checkKinds: screen.checkKindNames }}
              today={caller.today}
              jobId={may(caller, 'hand') ? job.id : null}
            />
          )}
        </section>
      )}
      <Caution />
      <section class="stack-tight" aria-labelledby="haul">
        <h2 class="chalked" id="haul">
          The haul
        </h2>
        <dl class="facts sheet">
          <Fact name="Miles" value={job.distanceKm === null ? null : showDistance(job.distanceKm)} />
          <Fact name="Machine" value={row.machineName ?? 'none'} />
          <Fact name="Tow vehicle" value={row.towVehicleName} />
          <Fact
            name="Driver"
            value={
              job.driver && `${job.driver.name}${job.driver.cdl ? `, ${CDL_WORDS[job.driver.cdl].toLowerCase()}` : ''}`
            }
          />
          <Fact
            name="Work"
            value={job.work === 'own' ? 'Own work' : `Hire${job.customer ? ` to ${job.customer}` : ''}`}
          />
          <Fact name="In commerce" value={job.commercial === null ? null : job.commercial ? 'Yes' : 'No'} />
          {job.note && <Fact name="Note" value={job.note} />}
        </dl>
        {job.load.cargo.length > 0 && (
          <Table
            caption={`On the deck, ${showMass(kg(job.load.cargo.reduce((sum, item) => sum + item.massKg, 0)))} together`}
            rows={job.load.cargo}
            rowKey={(item) => `${item.name} ${item.massKg}`}
            columns={[
              { label: 'What', lead: true, cell: (item) => item.name },
              { label: 'Weight', right: true, cell: (item) => showMass(item.massKg) },
              { label: 'Known how', cell: (item) => BASIS_WORDS[item.basis] },
              { label: 'Could be spared', cell: (item) => (item.remedy ? REMEDY_WORDS[item.remedy] : 'No') },
            ]}
          />
        )}
      </section>
    </Page>
  );
}
