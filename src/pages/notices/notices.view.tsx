import type { Caller } from '../../use-cases/caller.js';
import type { NoticesScreen } from '../../use-cases/show/show-notices.js';
import { Pager } from '../components/pager.js';
import { showCount, showInstant } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { Head, Page } from '../page.js';
import { noticeReason, noticeStateWords } from '../words/notice-words.js';

interface NoticesProps {
  readonly caller: Caller;
  readonly screen: NoticesScreen;
  /** The folder mail is written to; null when it goes by SMTP. */
  readonly mailFolder: string | null;
  readonly said: string | null;
}

type Notice = NoticesScreen['notices']['rows'][number];

const TABS = [
  { state: null, label: 'All' },
  { state: 'waiting', label: 'Waiting' },
  { state: 'sent', label: 'Sent' },
  { state: 'dead', label: 'Given up' },
  { state: 'bounced', label: 'Came back' },
  { state: 'cancelled', label: 'Not sent' },
] as const;

export function NoticesPage({ caller, screen, mailFolder, said }: NoticesProps) {
  return (
    <Page title="Notices" caller={caller} door="Notices" said={said}>
      <Head title="Notices" lede="Every mail of the yard: to whom, why, and what became of it." />
      {mailFolder !== null && (
        <p class="caution">
          No mail server is set, so mails reach nobody: each is written as an .eml file to {mailFolder}, and can be read
          here. Set SMTP_URL to send them.
        </p>
      )}
      {screen.undelivered > 0 && (
        <p class="sheet flagged flagged-stop">
          <span>
            {showCount(screen.undelivered, 'mail did', 'mails did')} not reach{' '}
            {screen.undelivered === 1 ? 'its' : 'their'} reader. <a href="/notices?state=dead">Given up</a>,{' '}
            <a href="/notices?state=bounced">came back</a>.
          </span>
        </p>
      )}
      <nav class="tabs" aria-label="Which notices">
        {TABS.map(({ state, label }) => (
          <a
            key={label}
            href={state === null ? '/notices' : `/notices?state=${state}`}
            aria-current={state === screen.state ? 'page' : undefined}
          >
            {label}
          </a>
        ))}
      </nav>
      {screen.notices.rows.length === 0 ? (
        <p class="empty">No notice here.</p>
      ) : (
        <Table
          caption={`${showCount(screen.notices.total, 'notice')}, latest first`}
          rows={screen.notices.rows}
          rowKey={(row) => row.id}
          columns={[
            { label: 'Subject', lead: true, cell: (row) => <a href={`/notices/${row.id}`}>{row.subject}</a> },
            { label: 'To', cell: (row) => row.toName },
            { label: 'Why', cell: noticeReason },
            { label: 'Outcome', cell: (row) => <Outcome notice={row} timeZone={caller.timeZone} /> },
          ]}
        />
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: screen.notices.total }}
        path="/notices"
        query={screen.state === null ? {} : { state: screen.state }}
        what="notices"
      />
    </Page>
  );
}

export function Outcome({ notice, timeZone }: { readonly notice: Notice; readonly timeZone: string }) {
  const failed = notice.state === 'dead' || notice.state === 'bounced';
  return (
    <span>
      <span class={failed ? 'standing-over' : 'strong'}>{noticeStateWords(notice.state)}</span>
      <span class="block small soft">
        {notice.sentAt
          ? showInstant(notice.sentAt, timeZone)
          : notice.state === 'waiting'
            ? `not before ${showInstant(notice.notBefore, timeZone)}`
            : showInstant(notice.createdAt, timeZone)}
        {notice.attempts > 1 && `, ${showCount(notice.attempts, 'try', 'tries')}`}
      </span>
      {notice.lastError && notice.state !== 'sent' && <span class="block small">{notice.lastError}</span>}
    </span>
  );
}
