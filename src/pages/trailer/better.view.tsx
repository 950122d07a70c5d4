import type { BetterTrailerFound } from '../../use-cases/assessments/find-better-trailer.js';
import type { Caller } from '../../use-cases/caller.js';
import { Caution } from '../components/caution.js';
import { ReadinessMark } from '../components/marks.js';
import { PassedOver } from '../components/ranking.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { flagWords, type Names } from '../words/flag-words.js';
import { busyWords, carriesWords, tightestWords } from '../words/ranking-words.js';

interface BetterProps {
  readonly caller: Caller;
  readonly found: BetterTrailerFound;
  readonly names: Names;
}

/** Which other trailer should do the work that one is flagged for. */
export function BetterPage({ caller, found, names }: BetterProps) {
  const { trailer, flag, best, all } = found;
  const words = flag === null ? null : flagWords(flag, names, caller.today);
  return (
    <Page title={`Instead of ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below">
      <Head
        title="Which trailer should do this work?"
        lede={words === null ? 'No such flag is up.' : `${words.title}. ${words.evidence}`}
      >
        <YardNumber number={trailer.yardNumber} id={trailer.id} />
      </Head>
      {words === null ? (
        <p class="empty">
          <a href={`/trailers/${trailer.id}#flags`}>Its flags of today</a> are on the trailer’s page.
        </p>
      ) : (
        <>
          <p class="said">
            {best === null
              ? 'No other trailer of the yard carries all of it. Lighten the loads, or hire one that does.'
              : `By weight, ${best.yardNumber} should do this work.`}{' '}
            Width, ramps and hitch are for Check fit to say.
          </p>
          <BetterCards all={all} />
          <PassedOver passedOver={found.passedOver} notAsked={found.notAsked} />
        </>
      )}
      <Caution />
    </Page>
  );
}

function BetterCards({ all }: Pick<BetterTrailerFound, 'all'>) {
  if (all.length === 0) return null;
  return (
    <ol class="plain job-cards">
      {all.map((one) => {
        const free = busyWords(one.busy, one.ofDays);
        return (
          <li class={`sheet job-card verdict-${one.carries === one.ofLoads ? 'go' : 'no-go'}`} key={one.trailerId}>
            <div class="apart">
              <YardNumber number={one.yardNumber} id={one.trailerId} />
              <ReadinessMark readiness={one.readiness} />
            </div>
            <p class="strong">{carriesWords(one.carries, one.ofLoads)}.</p>
            <p>{tightestWords(one)}</p>
            {free && <p class="soft">{free}</p>}
            <p>
              <a href={`/fit?trailer=${encodeURIComponent(one.yardNumber)}`}>Check fit on {one.yardNumber}</a>
            </p>
          </li>
        );
      })}
    </ol>
  );
}
