import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { showDates, showNearDate } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import type { Lane, LaneDue, LaneJob } from './lanes.js';

interface LaneWordsProps {
  readonly lanes: readonly Lane[];
  readonly today: CivilDate;
  /** Whether the reader may move a job. */
  readonly moves: boolean;
}

/** The same as the picture, to be read: and without a script, the way to move a job. */
export function LaneWords({ lanes, today, moves }: LaneWordsProps) {
  if (lanes.length === 0) return null;
  return (
    <details class="fold">
      <summary class="strong">The same in words{moves && ', and the way to move a job'}</summary>
      <ul class="lines sheet">
        {lanes.map((lane) => (
          <li class="stack-tight" key={lane.trailer?.id ?? 'none'}>
            {lane.trailer === null ? (
              <span class="strong">No trailer picked</span>
            ) : (
              <span class="row">
                <YardNumber number={lane.trailer.number} id={lane.trailer.id} />
                {lane.trailer.name && <span>{lane.trailer.name}</span>}
              </span>
            )}
            <ul class="plain">
              {lane.holds.map((hold) => (
                <li key={hold.id}>
                  On hold since {showNearDate(hold.openedOn)}: {hold.reason}
                </li>
              ))}
              {lane.rows.flat().map(({ job }) => (
                <JobWords key={job.id} job={job} moves={moves} />
              ))}
              {[...lane.due.values()].flat().map((due) => (
                <li key={due.checkKindId}>
                  <a href={`/trailers/${due.trailerId}/checks/${due.checkKindId}`}>{due.name}</a>,{' '}
                  {dueWords(due, today)}
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </details>
  );
}

function JobWords({ job, moves }: { readonly job: LaneJob; readonly moves: boolean }) {
  return (
    <li>
      <a href={`/jobs/${job.id}`}>{job.name}</a>, {showDates(job.startsOn, job.endsOn)}
      {moves && (
        <>
          {'. '}
          <a href={`/jobs/${job.id}/move`}>
            Move to another trailer<span class="hidden-words">: {job.name}</span>
          </a>
        </>
      )}
    </li>
  );
}

function dueWords({ state, dueOn }: LaneDue, today: CivilDate): string {
  if (dueOn === null) return state === 'never-done' ? 'no record of it, wanted now' : 'wanted now';
  if (state === 'overdue') return `overdue since ${showNearDate(dueOn)}`;
  return dueOn === today ? 'due today' : `due ${showNearDate(dueOn)}`;
}
