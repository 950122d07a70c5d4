import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { Caution } from '../components/caution.js';
import { FitBrief } from '../components/fit-answer.js';
import { FlagCard } from '../components/flag-card.js';
import { Fact } from '../components/load-table.js';
import { ReadinessMark, VerdictMark } from '../components/marks.js';
import { showDates, showDistance } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { SideView } from '../pictures/side-view.js';
import { BODY_WORDS, CLASS_WORDS, HITCH_WORDS } from '../words/build-words.js';
import { contradictionWords } from '../words/contradiction-words.js';
import { lacksWords, stopsWords } from '../words/unknown-words.js';
import { BuildSection } from './build-section.js';
import { DeckSection } from './deck-section.js';
import { DueSection } from './due-section.js';
import { HistorySection } from './history-section.js';
import { HoldSection } from './hold-section.js';
import { HubSection } from './hub-section.js';
import { LimitSection } from './limit-section.js';
import { PaperSection } from './paper-section.js';
import { PartSection } from './part-section.js';
import { UseSection } from './use-section.js';
import { WearSection } from './wear-section.js';

interface TrailerProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
  readonly said: string | null;
}

export function TrailerPage({ caller, screen, said }: TrailerProps) {
  const { trailer, assessment } = screen;
  const path = `/trailers/${trailer.id}`;
  const gone = trailer.status !== 'in-service';
  return (
    <Page title={`Trailer ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below" said={said}>
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} /> {trailer.name}
          </span>
        }
        lede={<Lede screen={screen} />}
      >
        <ReadinessMark readiness={assessment.readiness} />
      </Head>
      {!gone && may(caller, 'hand') && (
        <nav class="actions" aria-label={`Record for ${trailer.yardNumber}`}>
          <a class="button button-main" href={`/sheets/${screen.trailer.id}`}>
            Record a check
          </a>
          <a class="button" href={`${path}/trips/new`}>
            Record a trip
          </a>
          <a class="button" href={`${path}/readings/new`}>
            Meter reading
          </a>
          <a class="button" href={`/load?trailer=${encodeURIComponent(trailer.yardNumber)}`}>
            Load check
          </a>
          <a class="button" href={`${path}/handovers`}>
            Out and return
          </a>
          <a class="button" href={`/fit?trailer=${encodeURIComponent(trailer.yardNumber)}`}>
            Check fit
          </a>
          <a class="button button-stop" href={`${path}/holds/new`}>
            Put on hold
          </a>
        </nav>
      )}
      <nav class="jumps" aria-label="On this page">
        <a href="#flags">Flags</a>
        <a href="#due">Due</a>
        <a href="#jobs">Jobs</a>
        <a href="#limits">Limits</a>
        <a href="#parts">Parts</a>
        <a href="#use">Use</a>
        <a href="#build">Build sheet</a>
        <a href="#history">History</a>
      </nav>
      {screen.build !== null && <SideView build={screen.build} yardNumber={trailer.yardNumber} load={null} />}
      <HoldSection caller={caller} screen={screen} />
      <FlagSection caller={caller} screen={screen} />
      <div class="two">
        <div class="stack">
          <DueSection caller={caller} screen={screen} />
          <LimitSection screen={screen} />
        </div>
        <div class="stack">
          <JobSection caller={caller} screen={screen} />
          <UnknownSection screen={screen} />
          <DeckSection caller={caller} screen={screen} />
          <HubSection screen={screen} />
          <PaperSection caller={caller} screen={screen} />
        </div>
      </div>
      <WearSection screen={screen} />
      <PartSection caller={caller} screen={screen} />
      <UseSection caller={caller} screen={screen} />
      <BuildSection caller={caller} screen={screen} />
      <HistorySection caller={caller} screen={screen} />
      <Caution />
    </Page>
  );
}

function Lede({ screen }: { readonly screen: TrailerScreen }) {
  const { build, assessment } = screen;
  const parts = [
    build?.body ? BODY_WORDS[build.body] : null,
    build?.hitch.kind ? HITCH_WORDS[build.hitch.kind].toLowerCase() : null,
    assessment.ratings?.trailerClass ? `class ${CLASS_WORDS[assessment.ratings.trailerClass].toLowerCase()}` : null,
  ].filter((part) => part !== null);
  return (
    <>
      {parts.length > 0
        ? parts.join(' · ')
        : build === null
          ? 'Its build is not on file yet.'
          : 'Body and hitch are not known yet.'}
    </>
  );
}

function FlagSection({ caller, screen }: Omit<TrailerProps, 'said'>) {
  const { flags, contradictions } = screen.assessment;
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  return (
    <section class="stack" aria-labelledby="flags">
      <h2 class="chalked" id="flags">
        Flags
      </h2>
      {flags.length === 0 && contradictions.length === 0 && <p class="empty">No flag is up.</p>}
      {flags.length > 0 && (
        <ul class="cards">
          {flags.map((flag) => (
            <FlagCard key={flag.key} flag={flag} names={names} today={caller.today} trailerId={screen.trailer.id} />
          ))}
        </ul>
      )}
      {contradictions.length > 0 && (
        <div class="sheet flagged">
          <h3>The build sheet contradicts itself</h3>
          <ul>
            {contradictions.map((found) => {
              const words = contradictionWords(found);
              return <li key={words}>{words}</li>;
            })}
          </ul>
        </div>
      )}
    </section>
  );
}

function JobSection({ caller, screen }: Omit<TrailerProps, 'said'>) {
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  return (
    <section class="stack-tight" aria-labelledby="jobs">
      <h2 class="chalked" id="jobs">
        Jobs to come
      </h2>
      {screen.jobs.length === 0 ? (
        <p class="empty">None booked.</p>
      ) : (
        <ul class="lines sheet">
          {screen.jobs.map(({ job, fit }) => (
            <li class="stack-tight" key={job.id}>
              <div class="apart">
                <a class="strong" href={`/jobs/${job.id}`}>
                  {job.name}
                </a>
                <VerdictMark verdict={fit.verdict} />
              </div>
              <p class="soft small">
                {showDates(job.startsOn, job.endsOn)}
                {job.distanceKm !== null && ` · ${showDistance(job.distanceKm)}`}
              </p>
              <FitBrief fit={fit} names={names} today={caller.today} />
            </li>
          ))}
        </ul>
      )}
      {screen.trailer.status === 'in-service' && may(caller, 'hand') && (
        <p>
          <a href={`/jobs/new?trailer=${encodeURIComponent(screen.trailer.yardNumber)}`}>Book a job for it</a>
        </p>
      )}
    </section>
  );
}

function UnknownSection({ screen }: { readonly screen: TrailerScreen }) {
  const { unknowns } = screen.assessment;
  if (unknowns.length === 0) return null;
  const byFact = Map.groupBy(unknowns, ({ lacks }) => lacks);
  return (
    <section class="stack-tight" aria-labelledby="unknown">
      <h2 class="chalked" id="unknown">
        Not known
      </h2>
      <dl class="lines sheet">
        {[...byFact].map(([lacks, group]) => (
          <Fact
            key={lacks}
            name={lacksWords(lacks)}
            value={`so ${group.map(({ stops }) => stopsWords(stops)).join('; ')}`}
          />
        ))}
      </dl>
    </section>
  );
}
