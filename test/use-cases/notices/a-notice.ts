import { day } from '../../../src/rules/calendar/civil-date.js';
import type { LetterItem } from '../../../src/rules/notice/plan-letters.js';
import { newId } from '../../../src/store/new-id.js';
import { type NoticeKind, NoticeStore } from '../../../src/store/notice-store.js';
import type { NoticeService } from './notice-service.js';
import type { OstrowYard, Person } from './ostrow-yard.js';

/** Writes a notice that may go out from noon of 12 May 2025 (Chicago) on. Returns its id. */
export async function aNotice(
  service: NoticeService,
  yard: OstrowYard,
  to: Person,
  more: { readonly kind?: NoticeKind; readonly items?: readonly LetterItem[] } = {},
): Promise<string> {
  const id = newId();
  await service.database.inYard(yard.yardId, (tx) =>
    service.get(NoticeStore).insert(tx, {
      id,
      personId: to.personId,
      kind: more.kind ?? 'day',
      key: `test|${id}`,
      to: { name: to.name, address: to.address },
      subject: `Notice ${id}`,
      text: 'Repack the hubs of T-07.\n',
      html: '<p>Repack the hubs of T-07.</p>',
      messageId: `<${id}@ostrow.example>`,
      notBefore: new Date('2025-05-12T17:00:00Z'),
      writtenAt: new Date('2025-05-12T11:00:00Z'),
      toldOn: day('2025-05-12'),
      items: more.items ?? [],
    }),
  );
  return id;
}

/** What became of a notice, as it stands in its row. */
export async function noticeRow(service: NoticeService, id: string): Promise<NoticeRow> {
  const [row] = await service.sql<NoticeRow>(
    'select state, attempts, last_error, not_before, sent_at, body_text, to_email from notice where id = $1',
    [id],
  );
  if (row === undefined) throw new Error(`no notice ${id}`);
  return row;
}

interface NoticeRow {
  readonly state: string;
  readonly attempts: number;
  readonly last_error: string | null;
  readonly not_before: Date;
  readonly sent_at: Date | null;
  readonly body_text: string;
  readonly to_email: string;
}
