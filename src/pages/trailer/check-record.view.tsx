import type { CheckedLine } from '../../rules/facts/check.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { CheckRecordScreen } from '../../use-cases/show/show-check-record.js';
import { Fact } from '../components/load-table.js';
import { showDate, showInstant, showMoney } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { positionWords } from '../words/build-words.js';
import { doorWords } from '../words/history-words.js';
import { measuredWords } from '../words/measured-words.js';

interface CheckRecordProps {
  readonly caller: Caller;
  readonly screen: CheckRecordScreen;
  readonly said: string | null;
}

/** One check as recorded: who, when, what was read, photos. */
export function CheckRecordPage({ caller, screen, said }: CheckRecordProps) {
  const { trailer, record, kind } = screen;
  const { fact } = record;
  const name = kind?.name ?? 'Check';
  const lines = new Map(kind?.lines.map((line) => [line.code, line.text]));
  return (
    <Page title={`${name}, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below" said={said}>
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> {name}
          </span>
        }
        lede={`${fact.outcome === 'pass' ? 'Passed' : 'Failed'} on ${showDate(fact.doneOn)}.`}
      />
      {!record.standing && <p class="said">This record no longer stands: it was mended or taken back later.</p>}
      <dl class="facts sheet">
        <Fact name="Done by" value={screen.byName} />
        <Fact name="Recorded" value={`${showInstant(record.recordedAt, caller.timeZone)}, ${doorWords(record.door)}`} />
        {kind?.proof && (
          <>
            <Fact
              name="Passed by"
              value={fact.inspectedBy && (fact.inspectedBy === 'state' ? 'A State program' : 'Own or hired inspector')}
            />
            <Fact
              name={`Proof on the trailer (${kind.proof.what})`}
              value={fact.proofOnTrailer === null ? null : fact.proofOnTrailer ? 'Seen' : 'Missing'}
            />
          </>
        )}
        {screen.costCents !== null && <Fact name="Cost" value={showMoney(screen.costCents)} />}
        {screen.note && <Fact name="Note" value={screen.note} />}
        {screen.signedName && <Fact name="Signed" value={screen.signedName} />}
      </dl>
      {fact.lines.length > 0 && (
        <Table
          caption="What was looked at"
          rows={fact.lines}
          rowKey={(line) => `${line.code} ${line.position}`}
          columns={[
            { label: 'Line', lead: true, cell: (line) => lines.get(line.code) ?? line.code },
            { label: 'Where', cell: (line) => (line.position === null ? '' : positionWords(line.position)) },
            { label: 'Found', cell: found },
          ]}
        />
      )}
      {screen.photoIds.length > 0 && (
        <section class="stack-tight" aria-labelledby="photos">
          <h2 class="chalked" id="photos">
            Photos
          </h2>
          <ul class="photos">
            {screen.photoIds.map((photoId, place) => (
              <li key={photoId}>
                <a href={`/photos/${photoId}`}>
                  <img
                    src={`/photos/${photoId}`}
                    alt={`${name}, ${place + 1} of ${screen.photoIds.length}`}
                    loading="lazy"
                  />
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {screen.signatureId && (
        <p class="stack-tight">
          <span class="label">Signed by hand</span>
          <img class="signature" src={`/photos/${screen.signatureId}`} alt={`Signature under ${name}`} loading="lazy" />
        </p>
      )}
      {record.standing && may(caller, 'shop') && (
        <form class="actions" method="post" action={`/trailers/${trailer.id}/records/${fact.id}/withdraw`}>
          <button class="button button-stop" type="submit">
            It was never done: take it back
          </button>
        </form>
      )}
    </Page>
  );
}

function found(line: CheckedLine): string {
  const measured = line.measured && measuredWords(line.measured.quantity, line.measured.value);
  const result = line.result && (line.result === 'ok' ? 'OK' : 'Bad');
  return [measured, result].filter((part) => part !== null).join(', ');
}
