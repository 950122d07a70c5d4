import type { Handover } from '../../rules/facts/handover.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { HandoverScreen } from '../../use-cases/show/show-handover.js';
import { Caution } from '../components/caution.js';
import { Fact } from '../components/load-table.js';
import { VerdictMark } from '../components/marks.js';
import { showDate, showDates, showInstant, showMass, showShare } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { ballWords, PLUG_WORDS, seenWords, thingWords } from '../words/handover-words.js';
import { doorWords } from '../words/history-words.js';
import { ChangeList } from './change-list.js';
import { Signed } from './signature.js';

interface HandoverProps {
  readonly caller: Caller;
  readonly screen: HandoverScreen;
  readonly said: string | null;
}

/** One time that a trailer was out: what changed, what that asks for, and all that was seen. */
export function HandoverPage({ caller, screen, said }: HandoverProps) {
  const { trailer, record, out, back, taken } = screen;
  const path = `/trailers/${trailer.id}`;
  const when = back === null ? `since ${showDate(out.on)}` : showDates(out.on, back.on);
  return (
    <Page title={`Out and return, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below" said={said}>
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> {back === null ? 'Out with' : 'Back from'}{' '}
            {out.customer}
          </span>
        }
        lede={`${when}${screen.jobName === null ? '' : `, for ${screen.jobName}`}.`}
      >
        <a class="button" href={`${path}/handovers/${record.fact.id}/sheet`}>
          Customer sheet
        </a>
        {back === null && record.standing && may(caller, 'hand') && (
          <a class="button button-main" href={`${path}/take-back`}>
            Take it back
          </a>
        )}
        {back !== null && out.jobId !== null && may(caller, 'hand') && (
          <a class="button" href={`/jobs/${out.jobId}`}>
            The job
          </a>
        )}
      </Head>
      {!record.standing && <p class="said">This record no longer stands: it was taken back later.</p>}
      {taken !== null && (
        <section class="stack" aria-labelledby="changed">
          <h2 class="chalked" id="changed">
            What changed
          </h2>
          {taken.owesBall && (
            <p class="said">{out.customer}'s own ball did not go back on their mount: they signed for it.</p>
          )}
          <ChangeList changes={taken.changes} />
          {taken.unseen.length > 0 && (
            <p class="soft">Not looked at again: {taken.unseen.map(thingWords).join('; ')}.</p>
          )}
        </section>
      )}
      <AtRisk screen={screen} />
      <Coupled out={out} />
      <AllSeen out={out} back={back} />
      <section class="two" aria-label="Signatures">
        <SignedOn handover={out} title="Out" />
        {back !== null && <SignedOn handover={back} title="Back" />}
      </section>
      <p class="soft small">
        Recorded {showInstant(record.recordedAt, caller.timeZone)}, {doorWords(record.door)}.
      </p>
      {record.standing && may(caller, 'shop') && <TakeRecordBack screen={screen} />}
      <Caution />
    </Page>
  );
}

function AtRisk({ screen }: { readonly screen: HandoverScreen }) {
  const { atRisk } = screen;
  if (atRisk === null) return null;
  return (
    <section class="sheet flagged stack-tight" aria-labelledby="at-risk">
      <h2 id="at-risk">Next booking at risk</h2>
      <p class="row">
        <VerdictMark verdict={atRisk.fit.verdict} />
        <span>
          <a href={`/jobs/${atRisk.jobId}`}>{atRisk.name}</a>, {showDates(atRisk.startsOn, atRisk.endsOn)}
        </span>
      </p>
      {atRisk.substitutes.length === 0 ? (
        <p>No other trailer in the yard is free and fit for it.</p>
      ) : (
        <>
          <p>In the yard, free on those days:</p>
          <ul class="plain stack-tight">
            {atRisk.substitutes.map((one) => (
              <li class="row" key={one.trailerId}>
                <YardNumber number={one.yardNumber} id={one.trailerId} />
                <VerdictMark verdict={one.verdict} />
                {one.marginShare !== null && (
                  <span class="soft">{showShare(one.marginShare, 0)} of its tightest limit to spare</span>
                )}
              </li>
            ))}
          </ul>
          <p>
            <a href={`/jobs/${atRisk.jobId}/change`}>Give the job another trailer</a>
          </p>
        </>
      )}
    </section>
  );
}

function Coupled({ out }: { readonly out: Handover }) {
  const { hitch } = out;
  if (hitch === null) return null;
  return (
    <section class="stack-tight" aria-labelledby="coupled">
      <h2 class="chalked" id="coupled">
        How it was coupled
      </h2>
      <dl class="facts sheet">
        <Fact name="Customer's ball" value={ballLine(hitch.ball)} />
        {hitch.swappedTo !== null && <Fact name="Our ball, on their mount" value={ballLine(hitch.swappedTo)} />}
        <Fact name="Plugged in, worked" value={hitch.plug === null ? null : PLUG_WORDS[hitch.plug]} />
      </dl>
    </section>
  );
}

function ballLine({ sizeM, ratingKg }: NonNullable<Handover['hitch']>['ball']): string | null {
  if (sizeM === null && ratingKg === null) return null;
  const size = sizeM === null ? 'size unknown' : ballWords(sizeM);
  return `${size}, ${ratingKg === null ? 'rating unknown' : `rated ${showMass(ratingKg)}`}`;
}

function AllSeen({ out, back }: { readonly out: Handover; readonly back: Handover | null }) {
  const isSame = (a: Handover['seen'][number], b: Handover['seen'][number]) =>
    a.thing === b.thing && a.position === b.position;
  const rows = [
    ...out.seen.map((was) => ({ was, is: back?.seen.find((one) => isSame(one, was)) ?? null })),
    ...(back?.seen ?? []).filter((is) => !out.seen.some((was) => isSame(was, is))).map((is) => ({ was: null, is })),
  ];
  return (
    <Table
      caption="All that was looked at"
      rows={rows}
      rowKey={({ was, is }) => thingWords((was ?? is) as Handover['seen'][number])}
      columns={[
        { label: 'What', lead: true, cell: ({ was, is }) => thingWords((was ?? is) as Handover['seen'][number]) },
        { label: 'Out', cell: ({ was }) => (was === null ? 'not looked at' : seenWords(was)) },
        ...(back === null
          ? []
          : [
              {
                label: 'Back',
                cell: ({ is }: (typeof rows)[number]) => (is === null ? 'not looked at' : seenWords(is)),
              },
            ]),
      ]}
    />
  );
}

function SignedOn({ handover, title }: { readonly handover: Handover; readonly title: string }) {
  return (
    <div class="sheet stack-tight">
      <h2>
        {title}, {showDate(handover.on)}
      </h2>
      <p class="soft">{handover.byName} for the yard.</p>
      {handover.signature === null ? (
        <p class="soft">The customer did not sign.</p>
      ) : (
        <Signed signature={handover.signature} by={handover.customer} />
      )}
    </div>
  );
}

function TakeRecordBack({ screen }: { readonly screen: HandoverScreen }) {
  const { trailer, record } = screen;
  return (
    <details>
      <summary>It was written down wrong</summary>
      <form class="form" method="post" action={`/trailers/${trailer.id}/handovers/${record.fact.id}/withdraw`}>
        <p class="soft">
          Taken back, it can be recorded anew. A hold it put on and tires it put on file stay until somebody changes
          them.
        </p>
        <div class="field wide">
          <label for="f-reason">Why</label>
          <input class="input" id="f-reason" name="reason" required maxLength={200} autoComplete="off" />
        </div>
        <div class="actions">
          <button class="button button-stop" type="submit">
            Take this record back
          </button>
        </div>
      </form>
    </details>
  );
}
