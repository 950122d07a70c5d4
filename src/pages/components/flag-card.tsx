import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Flag } from '../../rules/flags/flag.js';
import { clearanceWords } from '../words/clearance-words.js';
import type { Names } from '../words/flag-words.js';
import { flagWords } from '../words/flag-words.js';
import { SeverityMark } from './marks.js';
import { showDate } from './show-quantity.js';
import { YardNumber } from './yard-number.js';

interface FlagCardProps {
  readonly flag: Flag;
  readonly names: Names;
  readonly today: CivilDate;
  readonly trailerId: string;
  /** Whose it is; left out on the trailer's own page. */
  readonly trailer?: { readonly id: string; readonly number: string; readonly name: string | null };
}

/** One flag: what is wrong, the evidence, what to do, and on asking how it was worked out. */
export function FlagCard({ flag, names, today, trailerId, trailer }: FlagCardProps) {
  const words = flagWords(flag, names, today);
  return (
    <li class={`sheet flagged flagged-${flag.severity}`}>
      <div class="apart">
        {trailer ? <YardNumber number={trailer.number} id={trailer.id} /> : <SeverityMark severity={flag.severity} />}
        {trailer ? (
          <SeverityMark severity={flag.severity} />
        ) : (
          flag.since && <span class="soft small">since {showDate(flag.since)}</span>
        )}
      </div>
      <h3>{words.title}</h3>
      <p>{words.evidence}</p>
      <p>
        <span class="strong">Do: </span>
        {words.todo}
      </p>
      {(flag.rule === 'class-drift' || flag.rule === 'outgrown') && (
        <p>
          <a href={`/trailers/${trailerId}/better?flag=${encodeURIComponent(flag.key)}`}>
            Which trailer should do this work?
          </a>
        </p>
      )}
      <p class="soft small">{clearanceWords(flag, names)}</p>
      <details class="more">
        <summary>How this was worked out</summary>
        <p class="small">
          {words.how}
          {trailer && flag.since && ` Up since ${showDate(flag.since)}.`}
        </p>
      </details>
    </li>
  );
}
