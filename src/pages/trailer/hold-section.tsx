import { type Caller, may } from '../../use-cases/caller.js';
import type { BrokenJob, TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { RankedCards } from '../components/ranking.js';
import { showDate, showDates } from '../components/show-quantity.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

/** Open holds stand at the top, taped off; lifted ones are folded away below. */
export function HoldSection({ caller, screen }: SectionProps) {
  const open = screen.holds.filter((hold) => hold.liftedOn === null);
  const lifted = screen.holds.filter((hold) => hold.liftedOn !== null);
  if (screen.holds.length === 0) return null;
  return (
    <section class="stack-tight" aria-label="Holds">
      {open.map((hold) => (
        <div class="sheet taped" key={hold.id}>
          <h2>On hold: this trailer must not go out</h2>
          <p>{hold.reason}</p>
          <p class="soft small">
            Since {showDate(hold.openedOn)}, by {hold.openedByName}
          </p>
          {may(caller, 'shop') && (
            <p class="actions">
              <a class="button" href={`/trailers/${screen.trailer.id}/holds/${hold.id}/lift`}>
                Lift the hold
              </a>
            </p>
          )}
        </div>
      ))}
      {screen.broken && <Broken caller={caller} screen={screen} broken={screen.broken} />}
      {lifted.length > 0 && (
        <details class="more">
          <summary>Earlier holds ({lifted.length})</summary>
          <ul class="lines sheet">
            {lifted.map((hold) => (
              <li key={hold.id}>
                {hold.reason}
                <p class="soft small">
                  {showDate(hold.openedOn)} by {hold.openedByName}; lifted {hold.liftedOn && showDate(hold.liftedOn)}
                  {hold.liftedByName && ` by ${hold.liftedByName}`}
                  {hold.liftReason && `: ${hold.liftReason}`}
                </p>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** The job that cannot go on this trailer while it is held, and who could take it. */
function Broken({ caller, screen, broken }: SectionProps & { readonly broken: BrokenJob }) {
  const { job, substitutes } = broken;
  return (
    <div class="stack-tight">
      <h3>
        It breaks <a href={`/jobs/${job.id}`}>{job.name}</a>, {showDates(job.startsOn, job.endsOn)}
      </h3>
      {substitutes.length === 0 ? (
        <p>No other trailer of the yard that is free could take it.</p>
      ) : (
        <>
          <p>Could take it instead:</p>
          <RankedCards
            ranked={substitutes}
            names={{ machines: screen.machineNames, checkKinds: screen.checkKindNames }}
            today={caller.today}
            jobId={may(caller, 'hand') ? job.id : null}
          />
        </>
      )}
      <p>
        <a href={`/jobs/${job.id}/trailers`}>All trailers for this job</a>
      </p>
    </div>
  );
}
