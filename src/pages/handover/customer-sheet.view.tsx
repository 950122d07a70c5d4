import type { Caller } from '../../use-cases/caller.js';
import type { HandoverScreen } from '../../use-cases/show/show-handover.js';
import { Fact } from '../components/load-table.js';
import { showDate } from '../components/show-quantity.js';
import { Head, Page } from '../page.js';
import { ballWords, seenWords, thingWords } from '../words/handover-words.js';
import { ChangeList } from './change-list.js';
import { Signed } from './signature.js';

/** What the customer is given: whose trailer, when, what changed, with the pictures. Made to be printed. */
export function CustomerSheetPage({ caller, screen }: { readonly caller: Caller; readonly screen: HandoverScreen }) {
  const { yardName, trailer, out, back, taken } = screen;
  const swapped = out.hitch?.swappedTo ?? null;
  const theirs = out.hitch?.ball.sizeM ?? null;
  return (
    <Page title={`Customer sheet, ${trailer.yardNumber}, ${out.customer}`} caller={caller} door="Trailers" at="below">
      <Head title={out.customer} lede={`Trailer ${trailer.yardNumber} of ${yardName}.`}>
        <a class="button no-print" href={`/trailers/${trailer.id}/handovers/${screen.record.fact.id}`}>
          Back to the record
        </a>
      </Head>
      <dl class="facts sheet">
        <Fact name="Went out" value={`${showDate(out.on)}, by ${out.byName}`} />
        <Fact name="Came back" value={back === null ? 'Still out' : `${showDate(back.on)}, by ${back.byName}`} />
        {screen.jobName !== null && <Fact name="For" value={screen.jobName} />}
        {swapped !== null && (
          <Fact
            name={theirs === null ? 'Your own ball' : `Your own ${ballWords(theirs)} ball`}
            value={
              back === null ? 'Off your mount; ours is on it' : taken?.owesBall ? 'Not put back' : 'Back on your mount'
            }
          />
        )}
      </dl>
      {taken === null ? (
        <section class="stack-tight" aria-labelledby="went-out">
          <h2 id="went-out">As it went out</h2>
          <ul class="sheet">
            {out.seen.map((one) => (
              <li key={thingWords(one)}>
                {thingWords(one)}: {seenWords(one)}
              </li>
            ))}
          </ul>
        </section>
      ) : (
        <section class="stack" aria-labelledby="changed">
          <h2 id="changed">What changed while you had it</h2>
          <ChangeList changes={taken.changes} />
        </section>
      )}
      <section class="two" aria-label="Signatures">
        <Signed signature={out.signature} by={`${out.customer}, going out`} />
        {back !== null && <Signed signature={back.signature} by={`${out.customer}, coming back`} />}
      </section>
    </Page>
  );
}
