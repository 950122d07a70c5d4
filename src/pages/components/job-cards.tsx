import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { JobWithFit } from '../../use-cases/show/jobs-with-fits.js';
import type { Names } from '../words/flag-words.js';
import { FitBrief } from './fit-answer.js';
import { VerdictMark } from './marks.js';
import { showDates, showDistance } from './show-quantity.js';
import { YardNumber } from './yard-number.js';

interface JobCardsProps {
  readonly jobs: readonly JobWithFit[];
  readonly names: Names;
  readonly today: CivilDate;
}

/** Jobs with their trailer, the answer and what to do first. */
export function JobCards({ jobs, names, today }: JobCardsProps) {
  return (
    <ul class="plain job-cards">
      {jobs.map(({ job, fit }) => (
        <li class={`sheet job-card verdict-${fit?.verdict ?? 'none'}`} key={job.id}>
          <div class="apart">
            {job.trailer ? (
              <YardNumber number={job.trailer.number} id={job.trailer.id} />
            ) : (
              <span class="unknown">No trailer picked</span>
            )}
            {fit && <VerdictMark verdict={fit.verdict} />}
          </div>
          <div class="stack-tight">
            <h3>
              <a href={`/jobs/${job.id}`}>{job.name}</a>
            </h3>
            <p class="soft">{jobLine(job)}</p>
            {job.work === 'hire' && job.trailer && job.startsOn <= today && (
              <p>
                <a href={`/trailers/${job.trailer.id}/hand-out?job=${job.id}`}>Hand it out</a>
              </p>
            )}
          </div>
          {fit ? (
            <FitBrief fit={fit} names={names} today={today} />
          ) : (
            <p>
              <a href={`/jobs/${job.id}/change`}>Pick a trailer</a> to see whether it fits, or see{' '}
              <a href={`/jobs/${job.id}/trailers`}>which trailers could take it</a>.
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

function jobLine(job: JobWithFit['job']): string {
  return [
    showDates(job.startsOn, job.endsOn),
    job.distanceKm === null ? null : showDistance(job.distanceKm),
    job.machineName,
    job.towVehicleName,
    job.driverName,
    job.work === 'hire' ? `hire${job.customer ? ` to ${job.customer}` : ''}` : null,
  ]
    .filter((part) => part !== null)
    .join(' · ');
}
