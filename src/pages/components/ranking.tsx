import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { couldTake } from '../../rules/ranking/rank-trailers.js';
import type { RankedTrailer } from '../../rules/ranking/ranked-trailer.js';
import type { PassedOverSum, YardRanking } from '../../use-cases/assessments/rank-yard.js';
import { remedyWords, verdictSentence } from '../words/fit-words.js';
import type { Names } from '../words/flag-words.js';
import {
  clashWords,
  hoursWords,
  notAskedWords,
  passedOverCounts,
  passedOverWords,
  tightestWords,
} from '../words/ranking-words.js';
import { Reasons, Remedies } from './fit-answer.js';
import { VerdictMark } from './marks.js';
import { YardNumber } from './yard-number.js';

interface RankedProps {
  readonly names: Names;
  readonly today: CivilDate;
  /** The job to be given one of them; null while it is only asked about, or by somebody who may not. */
  readonly jobId: string | null;
}

/** The trailers of the yard for a haul, best first, and what became of the rest. */
export function Ranking({ ranking, ...props }: RankedProps & { readonly ranking: YardRanking }) {
  return (
    <>
      {!ranking.ranked.some(couldTake) && (
        <p class="said">No trailer of the yard that is free could take it as it stands. Why not is below.</p>
      )}
      {ranking.ranked.length > 0 && <RankedCards ranked={ranking.ranked} {...props} />}
      <PassedOver passedOver={ranking.passedOver} notAsked={ranking.notAsked} />
    </>
  );
}

export function RankedCards({ ranked, ...props }: RankedProps & { readonly ranked: readonly RankedTrailer[] }) {
  return (
    <ol class="plain job-cards">
      {ranked.map((one) => (
        <RankedCard key={one.trailerId} one={one} {...props} />
      ))}
    </ol>
  );
}

function RankedCard({ one, names, today, jobId }: RankedProps & { readonly one: RankedTrailer }) {
  const { fit, clashes } = one;
  const [first, ...then] = fit.remedies;
  const hours = hoursWords(one.hoursFirst);
  return (
    <li class={`sheet job-card verdict-${fit.verdict}`}>
      <div class="apart">
        <YardNumber number={one.yardNumber} id={one.trailerId} />
        <VerdictMark verdict={fit.verdict} />
      </div>
      <p class="strong">{verdictSentence(fit)}</p>
      <p>{tightestWords(one)}</p>
      {clashes.length > 0 && <p class="strong">{clashWords(clashes)}</p>}
      {first && (
        <p>
          <span class="strong">First: </span>
          {remedyWords(first, names)}
          {hours && <span class="soft"> {hours}</span>}
        </p>
      )}
      {fit.reasons.length > 0 && (
        <details class="more">
          <summary>Why{then.length > 0 && ', and what else to do'}</summary>
          <Reasons fit={fit} names={names} today={today} />
          <Remedies fit={{ ...fit, remedies: then }} names={names} />
        </details>
      )}
      {jobId !== null && fit.verdict !== 'no-go' && (
        <p class="actions">
          <a class="button" href={`/jobs/${jobId}/change?trailer=${encodeURIComponent(one.yardNumber)}`}>
            Give it the job
          </a>
        </p>
      )}
    </li>
  );
}

/** Counted and said, and those nearest to a yes with the reason for their no. */
export function PassedOver({
  passedOver,
  notAsked,
}: {
  readonly passedOver: PassedOverSum;
  readonly notAsked: number;
}) {
  const said = [notAskedWords(notAsked), passedOverCounts(passedOver.counts)].filter((words) => words !== null);
  return (
    <>
      {said.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {passedOver.nearest.length > 0 && (
        <details class="more">
          <summary>Passed over, the nearest first ({passedOver.nearest.length})</summary>
          <ul class="lines">
            {passedOver.nearest.map((one) => (
              <li key={one.trailerId}>
                <YardNumber number={one.yardNumber} id={one.trailerId} /> {passedOverWords(one)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
