import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { showDate } from '../components/show-quantity.js';

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
