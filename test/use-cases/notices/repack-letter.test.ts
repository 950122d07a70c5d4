import type { ParsedMail } from 'mailparser';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { PlanYardDay } from '../../../src/use-cases/notices/plan-yard-day.js';
import { type Inbox, startInbox } from '../../support/inbox.js';
import { type NoticeService, startNoticeService, value } from './notice-service.js';
import { type OstrowYard, ostrowYard, trailerSeven } from './ostrow-yard.js';

// Job card section 12, scenario 12: what a person needs to hear about one repack before three jobs, in one mail.

let inbox: Inbox;
let service: NoticeService;
let yard: OstrowYard;
let mail: ParsedMail;

beforeAll(async () => {
  inbox = await startInbox();
  service = await startNoticeService(inbox.url);
  yard = await ostrowYard(service);
  await trailerSeven(service, yard);
  const morning = yard.at('2025-05-12T11:00:00Z');
  expect(value(await service.get(PlanYardDay).run(morning))).toEqual({ planned: true, written: 1 });
  expect(await service.deliverAll(morning)).toEqual(['sent']);
  const [received] = inbox.mails;
  if (received === undefined) throw new Error('no mail came');
  mail = received;
});

afterAll(async () => {
  await service.close();
  await inbox.close();
});

test('one mail goes to the person who does the work, not three for three jobs', () => {
  expect(inbox.mails).toHaveLength(1);
  expect(mail.to).toMatchObject({ value: [{ name: 'Dale Finch', address: yard.dale.address }] });
});

test('the subject names the trailer, the work, the day and the job it blocks', () => {
  expect(mail.subject).toBe('T-07 by Mon 2 Jun, before Hollow Rd Mon 9 Jun: Wheel bearings: open, inspect, repack');
});

test.each(['text', 'html'] as const)('the %s says all that a person needs, by itself', (form) => {
  const said = plain(
    form === 'text' ? (mail.text ?? '') : (mail.html || '').replace(/<style[\s\S]*?<\/style>|<[^>]+>/g, ' '),
  );
  for (const needed of [
    'T-07, the long black one',
    'Wheel bearings: open, inspect, repack',
    'By Mon 2 Jun',
    'Last done Sun 2 Jun 2024',
    'due every 12 months, every 12,000 mi, before the next trip after the hubs were under water ' +
      'or before the next trip after standing for half a year, whichever comes first',
    'By the calendar that is Mon 2 Jun',
    'The first job it blocks: Hollow Rd, Mon 9 Jun (140 mi)',
    'T-07 is not ready for any job',
    'Somebody can be hurt',
    'Tue 13 May to Mon 19 May, or Wed 21 May to Tue 27 May, or Thu 29 May to Mon 2 Jun',
    '2 h in the shop',
    'a seal for each hub, bearing grease and cotter pins',
    'seals, shoes and magnets',
    "The plate, the maker's manual, local law and a qualified person come first",
  ]) {
    expect(said).toContain(needed);
  }
});

test('the letter leads to the page where it is answered', () => {
  expect(mail.text).toMatch(/https:\/\/trailers\.ostrow\.example\/answer\?item=due%7C\S+/);
});

test('nothing of the letter is loaded from anywhere when it is opened', () => {
  expect(mail.html || '').not.toMatch(/<img|<link|@import|url\(|src=/);
});

function plain(text: string): string {
  return text.replaceAll('&#39;', "'").replaceAll('&amp;', '&').replace(/\s+/g, ' ');
}
