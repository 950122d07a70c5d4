import type { Caller } from '../../use-cases/caller.js';
import type { MoveScreen } from '../../use-cases/show/show-move.js';
import { Caution } from '../components/caution.js';
import { FitBrief } from '../components/fit-answer.js';
import { VerdictMark } from '../components/marks.js';
import { showDates } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { clashWords } from '../words/ranking-words.js';

interface MoveProps {
  readonly caller: Caller;
  readonly screen: MoveScreen;
  /** Where the job was dragged from, to go back to. */
  readonly back: string | null;
  readonly wrong: string | null;
}

/** What the other trailer answers, before it gets the job. */
export function MovePage({ caller, screen, back, wrong }: MoveProps) {
  const { job, trailer, answer, asks } = screen;
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  const has = job.trailer?.id === trailer.id;
  return (
    <Page title={`Move ${job.name}`} caller={caller} door="Jobs" at="below">
      <Head
        title={`Move ${job.name}`}
        lede={
          <>
            <a href={`/jobs/${job.id}`}>{job.name}</a>, {showDates(job.startsOn, job.endsOn)}
            {job.trailer ? `, from ${job.trailer.number}` : ', no trailer yet'} to {trailer.number}.
          </>
        }
      />
      {wrong && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      <section class={`sheet job-card verdict-${answer.fit.verdict}`} aria-labelledby="answer">
        <h2 id="answer" class="row">
          <YardNumber number={trailer.number} id={trailer.id} />
          <VerdictMark verdict={answer.fit.verdict} />
        </h2>
        {answer.clashes.length > 0 && <p class="strong">{clashWords(answer.clashes)}</p>}
        <FitBrief fit={answer.fit} names={names} today={caller.today} />
      </section>
      <Caution />
      <form class="actions" method="post" action={`/jobs/${job.id}/move/${trailer.id}`}>
        {back && <input type="hidden" name="back" value={back} />}
        {asks && <input type="hidden" name="despite" value="yes" />}
        {has ? (
          <p>It has this job already.</p>
        ) : (
          <button class={asks ? 'button button-stop' : 'button button-main'} type="submit">
            {asks ? 'Move it all the same' : `Move it to ${trailer.number}`}
          </button>
        )}
        <a class="button" href={back ?? `/jobs/${job.id}/move`}>
          Back without moving
        </a>
      </form>
    </Page>
  );
}
