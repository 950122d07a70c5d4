import { type Caller, may } from '../../use-cases/caller.js';
import type { NoticeScreen } from '../../use-cases/show/show-notice.js';
import { Fact } from '../components/load-table.js';
import { showDate, showInstant } from '../components/show-quantity.js';
import { Head, Page } from '../page.js';
import { noticeReason } from '../words/notice-words.js';
import { Outcome } from './notices.view.js';

interface NoticeProps {
  readonly caller: Caller;
  readonly notice: NoticeScreen;
}

const ANSWER_WORDS: Readonly<Record<string, string>> = {
  done: 'Done',
  later: 'Later',
  'not-mine': 'Not mine',
  'already-done': 'Already done',
};

/** One mail, readable here whether or not it could be sent. */
export function NoticePage({ caller, notice }: NoticeProps) {
  const failed = notice.state === 'dead' || notice.state === 'bounced';
  return (
    <Page title={notice.subject} caller={caller} door="Notices" at="below">
      <Head title={notice.subject} lede={noticeReason(notice)} />
      <dl class="facts sheet">
        <Fact name="To" value={`${notice.toName}, ${notice.toEmail}`} />
        <Fact name="Written" value={showInstant(notice.createdAt, caller.timeZone)} />
        <div>
          <dt>Outcome</dt>
          <dd>
            <Outcome notice={notice} timeZone={caller.timeZone} />
          </dd>
        </div>
      </dl>
      {failed && may(caller, 'shop') && (
        <form class="actions" method="post" action={`/notices/${notice.id}/again`}>
          <button class="button" type="submit">
            Send it again
          </button>
        </form>
      )}
      {notice.answers.length > 0 && (
        <section class="stack-tight" aria-labelledby="answers">
          <h2 class="chalked" id="answers">
            Answers
          </h2>
          <ul class="lines sheet">
            {notice.answers.map((answer) => (
              <li key={`${answer.answer} ${answer.answeredOn} ${answer.byName}`}>
                {ANSWER_WORDS[answer.answer] ?? answer.answer}
                {answer.untilOn && ` until ${showDate(answer.untilOn)}`}
                {answer.reason && `: ${answer.reason}`}
                <span class="soft small">
                  {' '}
                  {answer.byName ?? 'somebody'}, {showDate(answer.answeredOn)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section class="stack-tight" aria-labelledby="mail">
        <h2 class="chalked" id="mail">
          The mail
        </h2>
        {notice.bodyText === '' ? (
          <p class="empty">Its text holds a link that works as a key, so only its reader has it.</p>
        ) : (
          <>
            <pre class="sheet mail-text">{notice.bodyText}</pre>
            <p>
              <a href={`/notices/${notice.id}/mail`}>See it as the reader does</a>
            </p>
          </>
        )}
      </section>
    </Page>
  );
}
