import type { Caller } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { showInstant } from '../components/show-quantity.js';
import { actionWords, doorWords } from '../words/history-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

/** The latest of what was done; nothing in it is ever changed. */
export function HistorySection({ caller, screen }: SectionProps) {
  const { rows, total } = screen.history;
  return (
    <section class="stack-tight" aria-labelledby="history">
      <h2 class="chalked" id="history">
        History
      </h2>
      {rows.length === 0 ? (
        <p class="empty">Nothing has been done yet.</p>
      ) : (
        <HistoryLines rows={rows} timeZone={caller.timeZone} />
      )}
      {total > rows.length && (
        <p>
          <a href={`/trailers/${screen.trailer.id}/history`}>The whole history</a>
        </p>
      )}
    </section>
  );
}

export function HistoryLines({
  rows,
  timeZone,
}: {
  readonly rows: TrailerScreen['history']['rows'];
  readonly timeZone: string;
}) {
  return (
    <ol class="lines sheet" reversed>
      {rows.map((entry) => (
        <li key={entry.id} class="apart">
          <span>{actionWords(entry.action)}</span>
          <span class="soft small">
            {entry.who}, {doorWords(entry.door)}, {showInstant(entry.at, timeZone)}
          </span>
        </li>
      ))}
    </ol>
  );
}
