import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { Due } from '../../rules/inspection/due.js';
import type { DueScreen } from '../../use-cases/show/show-due.js';
import { sheetPath } from '../sheets/sheet-data.js';
import { dueWhen } from '../words/due-words.js';
import { YardNumber } from './yard-number.js';

const STATE_WORDS: Readonly<Record<Due['state'], string>> = {
  overdue: 'Overdue',
  'due-soon': 'Soon',
  later: 'Later',
  'never-done': 'No record',
  unknown: 'Cannot say',
};

/** How pressing, as shape and word. */
export function DueMark({ due, safety }: { readonly due: Due; readonly safety: boolean }) {
  const look =
    due.state === 'overdue'
      ? safety
        ? 'stop'
        : 'limit'
      : due.state === 'later'
        ? 'later'
        : due.state === 'unknown'
          ? 'unknown'
          : 'watch';
  return <span class={`mark mark-small mark-${look}`}>{STATE_WORDS[due.state]}</span>;
}

interface DueLineProps {
  readonly row: DueScreen['due']['rows'][number];
  readonly today: CivilDate;
}

/** One thing due, as a line of a list. */
export function DueLine({ row, today }: DueLineProps) {
  return (
    <li class="stack-tight">
      <div class="due-line">
        <span class="row">
          <YardNumber number={row.trailer.number} id={row.trailer.id} />
          <span class="strong">{row.checkKind.name}</span>
        </span>
        <DueMark due={row.due} safety={row.checkKind.safety} />
      </div>
      <p class="small">
        {dueWhen(row.due, today)}.{' '}
        <a href={sheetPath(row.trailer.id, row.checkKind.id)} class="no-print">
          Record it
          <span class="hidden-words">
            : {row.checkKind.name}, {row.trailer.number}
          </span>
        </a>
      </p>
    </li>
  );
}
