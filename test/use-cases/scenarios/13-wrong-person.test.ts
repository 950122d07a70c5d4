import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { ResultStore } from '../../../src/store/result-store.js';
import { RecordCheck } from '../../../src/use-cases/checks/record-check.js';
import { BookJob } from '../../../src/use-cases/jobs/book-job.js';
import { AnswerItem } from '../../../src/use-cases/notices/answer-item.js';
import { PlanYardDay } from '../../../src/use-cases/notices/plan-yard-day.js';
import { RecordBounce } from '../../../src/use-cases/notices/record-bounce.js';
import { PersonLeft } from '../../../src/use-cases/people/person-left.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { type NoticeService, startNoticeService, value } from '../notices/notice-service.js';
import { type OstrowYard, ostrowYard, type Person, trailerSeven } from '../notices/ostrow-yard.js';

/** A Monday; the job is on the Friday, 16 May. */
const MORNING = '2025-05-12T11:00:00Z';
const NOON = '2025-05-12T17:00:00Z';

/** The smallest picture a phone could send: the first bytes of a JPEG. */
const PHOTO = { mediaType: 'image/jpeg', bytes: new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16]) };

describe('Wrong person: the reminder goes to Dale, who left, and the mail comes back', () => {
  let inbox: Inbox;
  let service: NoticeService;
  let yard: OstrowYard;
  let trailerId: string;

  beforeAll(async () => {
    inbox = await startInbox();
    service = await startNoticeService(inbox.url);
    yard = await ostrowYard(service);
    ({ trailerId } = await trailerSeven(service, yard));
    value(
      await service.get(BookJob).run(yard.at('2025-05-11T15:00:00Z', yard.marta), {
        name: 'Friday haul',
        trailerId,
        startsOn: day('2025-05-16'),
        endsOn: day('2025-05-16'),
        haulerPersonId: yard.wren.personId,
      }),
    );
    value(await service.get(PlanYardDay).run(yard.at(MORNING)));
    await service.deliverAll(yard.at(MORNING));
  });
  afterAll(async () => {
    await service.close();
    await inbox.close();
  });

  const toldTo = ({ personId }: Person) =>
    service.sql<{ item_key: string; item: { unowned?: boolean } }>(
      `select i.item_key, i.item from notice_item i join notice n on n.id = i.notice_id
       where n.person_id = $1 and i.check_kind_id = $2 order by i.id`,
      [personId, yard.hubs.id],
    );

  const records = () =>
    service.sql<{ by_name: string; done_on: string }>(
      `select by_name, done_on::text from check_record where trailer_id = $1 and done_on > '2025-01-01' order by id`,
      [trailerId],
    );

  const repackDue = async () => {
    const kept = await service.database.inYard(yard.yardId, (tx) => service.get(ResultStore).find(tx, trailerId));
    return kept?.due.find((one) => one.code === 'hub-repack')?.dueOn;
  };

  it('only Dale was told at first', async () => {
    expect(inbox.mails.map((mail) => mail.to)).toMatchObject([{ value: [{ address: yard.dale.address }] }]);
  });

  it('the owner is told the same day, and the item goes to the backup, shown as unowned', async () => {
    inbox.mails.length = 0;
    const bounce = { personId: yard.dale.personId, note: 'mailbox does not exist' };
    value(await service.get(RecordBounce).run(yard.at(NOON, yard.marta), bounce));
    await service.deliverAll(yard.at(NOON));
    const toOwner = inbox.mails.find((mail) => JSON.stringify(mail.to).includes(yard.marta.address));
    expect(toOwner?.subject).toContain('Mail to Dale Finch does not arrive');
    const [item] = await toldTo(yard.wren);
    expect(item?.item.unowned).toBe(true);
  });

  it('from the day Dale is marked as gone nothing more goes to him', async () => {
    value(await service.get(PersonLeft).run(yard.at(NOON, yard.marta), { personId: yard.dale.personId }));
    inbox.mails.length = 0;
    value(await service.get(PlanYardDay).run(yard.at('2025-05-13T11:00:00Z')));
    await service.deliverAll(yard.at('2025-05-13T11:00:00Z'));
    expect(inbox.mails.filter((mail) => JSON.stringify(mail.to).includes(yard.dale.address))).toEqual([]);
  });

  it('the backup puts it off to after Saturday, but a job is on Friday: refused, and Thursday offered', async () => {
    const [item] = await toldTo(yard.wren);
    const later = { itemKey: item?.item_key ?? '', answer: 'later' as const, reason: 'seals come Thursday' };
    const tuesday = yard.at('2025-05-13T17:00:00Z', yard.wren);
    const refused = await service.get(AnswerItem).run(tuesday, { ...later, until: day('2025-05-18') });
    expect(refused).toMatchObject({
      ok: false,
      problem: {
        kind: 'invalid',
        fields: [{ field: 'until', message: expect.stringMatching(/2025-05-15 at the latest.*Friday haul/) }],
      },
    });
    expect(await service.get(AnswerItem).run(tuesday, { ...later, until: day('2025-05-15') })).toMatchObject({
      ok: true,
    });
  });

  it('done on Thursday, from the phone and with a photo, it is closed for all', async () => {
    const { checkRecordId, besides } = value(
      await service.get(RecordCheck).run(yard.at('2025-05-15T20:00:00Z', yard.wren), {
        trailerId,
        checkKindId: yard.hubs.id,
        doneOn: day('2025-05-15'),
        outcome: 'pass',
        photos: [PHOTO],
      }),
    );
    expect(besides).toEqual([]);
    expect(await service.sql('select media_type from check_photo where check_record_id = $1', [checkRecordId])).toEqual(
      [{ media_type: 'image/jpeg' }],
    );
    expect(await repackDue()).toBe('2026-05-15');
    const before = [await toldTo(yard.wren), await toldTo(yard.marta)];
    value(await service.get(PlanYardDay).run(yard.at('2025-05-16T11:00:00Z')));
    expect([await toldTo(yard.wren), await toldTo(yard.marta)]).toEqual(before);
  });

  it('a late second "done" of another person is kept beside the first, and moves nothing twice', async () => {
    const second = {
      trailerId,
      checkKindId: yard.hubs.id,
      doneOn: day('2025-05-15'),
      outcome: 'pass' as const,
    };
    const friday = '2025-05-16T20:00:00Z';
    const { besides } = value(await service.get(RecordCheck).run(yard.at(friday, yard.marta), second));
    expect(besides).toHaveLength(1);
    expect(await records()).toEqual([
      { by_name: 'Wren Castell', done_on: '2025-05-15' },
      { by_name: 'Marta Ostrow', done_on: '2025-05-15' },
    ]);
    expect(await repackDue()).toBe('2026-05-15');
  });

  it('the same person sending the same once more, as a phone does on a poor signal, adds nothing', async () => {
    const before = await records();
    const again = { trailerId, checkKindId: yard.hubs.id, doneOn: day('2025-05-15'), outcome: 'pass' as const };
    value(await service.get(RecordCheck).run(yard.at('2025-05-16T20:01:00Z', yard.marta), again));
    expect(await records()).toEqual(before);
  });
});
