import type { TrailersScreen } from '../../use-cases/show/show-trailers.js';
import { addressWith, filterQuery, type TrailerFilter } from '../form/trailer-filter.js';
import { readinessWord } from './marks.js';
import { showNumber } from './show-quantity.js';

interface TallyProps {
  readonly counts: TrailersScreen['counts'];
  readonly filter: TrailerFilter;
  /** The page that shows those of one count. */
  readonly path: string;
}

/** How many trailers are in each state of readiness, each count the way to them. */
export function Tally({ counts, filter, path }: TallyProps) {
  return (
    <ul class="tally" aria-label="Trailers by readiness">
      {(['ready', 'due', 'down'] as const).map((readiness) => (
        <li key={readiness}>
          <a
            href={addressWith(path, filterQuery({ ...filter, readiness }))}
            class={readiness === 'ready' ? undefined : `tally-${readiness}`}
            aria-current={filter.readiness === readiness ? 'true' : undefined}
          >
            <b>{showNumber(counts[readiness])}</b> {readinessWord(readiness)}
          </a>
        </li>
      ))}
    </ul>
  );
}
