import { useEffect, useState } from 'preact/hooks';
import { keptPages } from './keep-pages.js';
import {
  type Draft,
  draftsOf,
  dropDraft,
  dropSigned,
  mendSheet,
  type SignedSheet,
  signedSheets,
} from './phone-store.js';
import { onSheetsChanged, type Sent, sendWaiting } from './send-sheets.js';

/** How often it is tried again while something waits: a phone does not always notice that a signal is back. */
const TRY_EVERY_MS = 30_000;

interface Lying {
  readonly drafts: readonly Draft[];
  readonly signed: readonly SignedSheet[];
  /** Of other people, who must sign in themselves to send theirs. */
  readonly others: number;
  readonly pages: readonly { readonly path: string; readonly title: string }[];
}

/** How long it is told what became of a sheet, unless somebody takes it off the list sooner. */
const TOLD_FOR_MS = 7 * 24 * 3_600_000;

async function look(person: string): Promise<Lying> {
  const isOver = ({ answer, signedAt }: SignedSheet) =>
    answer?.kind === 'recorded' && Date.now() - signedAt > TOLD_FOR_MS;
  const lying = await signedSheets();
  await Promise.all(lying.filter(isOver).map(({ sendId }) => dropSigned(sendId)));
  const all = lying.filter((sheet) => !isOver(sheet));
  const signed = all.filter((sheet) => sheet.person === person);
  const pages = await keptPages();
  return { drafts: await draftsOf(person), signed, others: all.length - signed.length, pages };
}

/** All that lies on this phone, and its sending. */
export function PhoneSheets({ person }: { readonly person: string }) {
  const [lying, setLying] = useState<Lying | null>(null);
  const [sent, setSent] = useState<Sent | 'sending'>('all');
  const refresh = async () => setLying(await look(person));
  const send = async () => {
    setSent('sending');
    setSent(await sendWaiting(person));
    await refresh();
  };
  useEffect(() => {
    void refresh().then(send);
    const stop = onSheetsChanged(() => void refresh());
    const again = () => void send();
    addEventListener('online', again);
    const timer = setInterval(async () => {
      if ((await look(person)).signed.some((sheet) => sheet.answer === null)) again();
    }, TRY_EVERY_MS);
    return () => {
      stop();
      removeEventListener('online', again);
      clearInterval(timer);
    };
  }, [person]);
  if (lying === null) return <p class="empty">Looking at what lies on this phone …</p>;
  const waiting = lying.signed.filter((sheet) => sheet.answer === null);
  const answered = lying.signed.filter((sheet) => sheet.answer !== null).reverse();
  return (
    <div class="stack">
      <p class="said" role="status">
        {stateWords(waiting.length, sent)}
      </p>
      {sent === 'signed-out' && waiting.length > 0 && (
        <p>
          <a class="button button-main" href="/sign-in?next=/sheets">
            Sign in to send
          </a>
        </p>
      )}
      {waiting.length > 0 && (
        <Group title="Signed, waiting to be sent">
          {waiting.map((sheet) => (
            <Waiting key={sheet.sendId} sheet={sheet} />
          ))}
          <li>
            <button class="button" type="button" onClick={() => void send()} disabled={sent === 'sending'}>
              Send now
            </button>
          </li>
        </Group>
      )}
      {answered.length > 0 && (
        <Group title="What became of them">
          {answered.map((sheet) => (
            <Answered key={sheet.sendId} sheet={sheet} changed={refresh} />
          ))}
        </Group>
      )}
      {lying.drafts.length > 0 && (
        <Group title="Being filled in">
          {lying.drafts.map((draft) => (
            <Open key={draft.path} draft={draft} changed={refresh} />
          ))}
        </Group>
      )}
      <Group title="Opens without a signal">
        {lying.pages.map(({ path, title }) => (
          <li key={path}>
            <a href={path}>{title}</a>
          </li>
        ))}
        {lying.pages.length === 0 && (
          <li class="soft">
            No sheet yet. Open a trailer's list of checks while there is a signal: its sheets stay here.
          </li>
        )}
      </Group>
      {lying.others > 0 && (
        <p class="soft small">
          Sheets of somebody else lie here too ({lying.others}); they go when that person signs in.
        </p>
      )}
    </div>
  );
}

function stateWords(waiting: number, sent: Sent | 'sending'): string {
  if (waiting === 0) return 'Nothing waits to be sent.';
  const sheets = waiting === 1 ? '1 signed sheet' : `${waiting} signed sheets`;
  switch (sent) {
    case 'sending':
      return `Sending ${sheets} …`;
    case 'signed-out':
      return `${sheets} safe on this phone. You are no longer signed in: sign in to send.`;
    case 'other-person':
      return `${sheets} safe on this phone. Somebody else is signed in now; sign in yourself to send.`;
    case 'later':
      return `${sheets} safe on this phone. The service could not take it just now; it is tried again.`;
    default:
      return `${sheets} safe on this phone. No signal: sent as soon as there is one.`;
  }
}

function Group({ title, children }: { readonly title: string; readonly children: preact.ComponentChildren }) {
  return (
    <section class="stack-tight">
      <h2 class="chalked">{title}</h2>
      <ul class="cards">{children}</ul>
    </section>
  );
}

function Waiting({ sheet }: { readonly sheet: SignedSheet }) {
  return (
    <li class="sheet stack-tight">
      <SheetName sheet={sheet} />
      <p class="small">Signed {at(sheet.signedAt)}. Waits to be sent.</p>
      {sheet.badSafety.length > 0 && (
        <p class="tape-note">
          {sheet.yardNumber} must not go out. Found bad: {sheet.badSafety.join('; ')}. The hold is put on when this is
          sent; until then keep the trailer back and tell the yard.
        </p>
      )}
    </li>
  );
}

function Answered({ sheet, changed }: { readonly sheet: SignedSheet; readonly changed: () => Promise<void> }) {
  const { answer } = sheet;
  if (answer === null) return null;
  const off = async () => {
    await dropSigned(sheet.sendId);
    await changed();
  };
  const mend = async () => {
    await mendSheet(sheet);
    location.assign(sheet.path);
  };
  if (answer.kind === 'refused') {
    return (
      <li class="sheet stack-tight">
        <SheetName sheet={sheet} />
        <p class="strong">Not recorded yet. It stays here:</p>
        <ul>
          {answer.problems.map(({ message }) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
        <div class="actions">
          <button class="button button-main" type="button" onClick={() => void mend()}>
            Open it and mend it
          </button>
          <ThrowAway what={`${sheet.check}, ${sheet.yardNumber}`} run={off} />
        </div>
      </li>
    );
  }
  return (
    <li class="sheet stack-tight">
      <SheetName sheet={sheet} />
      <p>
        {answer.sentAgain ? 'Recorded; it had arrived before, and is kept once.' : 'Recorded.'}{' '}
        <a href={answer.record}>
          See the record<span class="hidden-words">: {sheet.check}</span>
        </a>
      </p>
      {answer.held && <p class="tape-note">{sheet.yardNumber} is on hold now. It must not go out.</p>}
      {answer.changed.length > 0 && (
        <div class="caution" role="note">
          <p class="strong">Changed while this was on its way:</p>
          <ul>
            {answer.changed.map(({ text, path }) => (
              <li key={text}>
                <a href={path}>{text}</a>
              </li>
            ))}
          </ul>
        </div>
      )}
      <button class="button" type="button" onClick={() => void off()}>
        Take it off this list
      </button>
    </li>
  );
}

function Open({ draft, changed }: { readonly draft: Draft; readonly changed: () => Promise<void> }) {
  const drop = async () => {
    await dropDraft(draft);
    await changed();
  };
  return (
    <li class="sheet stack-tight">
      <SheetName sheet={draft} />
      <p class="small">
        Kept {at(draft.savedAt)}, not signed. <a href={draft.path}>Go on with it</a>
      </p>
      <ThrowAway what={`${draft.check}, ${draft.yardNumber}`} run={drop} />
    </li>
  );
}

function ThrowAway({ what, run }: { readonly what: string; readonly run: () => Promise<void> }) {
  const ask = () => {
    if (confirm(`Throw away ${what}? It is nowhere else.`)) void run();
  };
  return (
    <button class="button button-stop" type="button" onClick={ask}>
      Throw it away
    </button>
  );
}

function SheetName({ sheet }: { readonly sheet: Pick<Draft, 'yardNumber' | 'check'> }) {
  return (
    <p class="row">
      <span class="plate-no">{sheet.yardNumber}</span> <span class="strong">{sheet.check}</span>
    </p>
  );
}

function at(instant: number): string {
  return new Intl.DateTimeFormat('en-US', { weekday: 'short', hour: 'numeric', minute: '2-digit' }).format(instant);
}
