import type { NoticesScreen } from '../../use-cases/show/show-notices.js';
import { listWords } from './build-words.js';

type Notice = NoticesScreen['notices']['rows'][number];

const STATE_WORDS: Readonly<Record<Notice['state'], string>> = {
  waiting: 'Waiting',
  sent: 'Sent',
  dead: 'Given up',
  bounced: 'Came back',
  cancelled: 'Not sent',
};

const ITEM_WORDS: Readonly<Record<string, string>> = {
  'gate-brief': 'before a job',
  'due-soon': 'due soon',
  overdue: 'overdue',
  'stop-flag': 'stop',
  'address-failed': 'an address that fails',
};

const KIND_WORDS: Readonly<Record<string, string>> = {
  day: 'The day’s letter',
  stop: 'Do not load',
  'address-failed': 'An address fails',
  invitation: 'Invitation',
  reset: 'New password',
};

export function noticeStateWords(state: Notice['state']): string {
  return STATE_WORDS[state];
}

/** Why it was written: `before a job (T-02), overdue (T-02, T-07)`. */
export function noticeReason(notice: Pick<Notice, 'kind' | 'items'>): string {
  const byKind = Map.groupBy(notice.items, (item) => item.kind);
  const parts = [...byKind].map(([kind, items]) => {
    const numbers = [...new Set(items.map((item) => item.number).filter((number) => number !== null))];
    const words = ITEM_WORDS[kind] ?? kind.replaceAll('-', ' ');
    return numbers.length === 0 ? words : `${words} (${numbers.join(', ')})`;
  });
  const kind = KIND_WORDS[notice.kind] ?? notice.kind;
  return parts.length === 0 ? kind : `${kind}: ${listWords(parts)}`;
}
