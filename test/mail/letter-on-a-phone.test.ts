import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { letterHtml } from '../../src/mail/letters/letter-html.js';
import type { Paper } from '../../src/mail/letters/paper.js';
import { plainText } from '../../src/mail/letters/plain-text.js';
import { openChromium } from '../browser/chromium.js';

/** Every part of a letter, and names as long and as hostile as people can enter them. */
const PAPER: Paper = {
  yardName: 'Ostrow & Daughters <Fencing>',
  subject: 'T-07 by Mon 2 Jun: hub repack',
  preview: 'Blocks Hollow Rd.',
  greeting: 'Dale "the nut" Finch,',
  opening: ['Three things for you, the most urgent first:'],
  summary: ['T-07 by Mon 2 Jun: hub repack', `T-08 to ${'Averylongplacename'.repeat(6)}: fix first`],
  sections: (['stop', 'first', 'plain'] as const).map((tone) => ({
    heading: `Section ${tone}`,
    entries: [
      {
        tone,
        title: `T-07, <script>document.title='run'</script>: ${tone}`,
        mark: 'By Mon 2 Jun',
        says: ['The first job it blocks: Hollow Rd & Mill St, Mon 9 Jun (140 mi).'],
        todo: ['Hub repack (2 h in the shop; bring 4 seals and grease).'],
        facts: [
          { label: 'In the yard', text: 'Tue 13 May to Mon 19 May, or Wed 21 May to Tue 27 May' },
          { label: 'Bring', text: '4 seals and grease' },
        ],
        link: { text: 'Done, later, or not mine', url: 'https://trailers.ostrow.example/trailers/1?a=1&b="2"' },
      },
    ],
  })),
  button: { text: 'Open the yard', url: 'https://trailers.ostrow.example/' },
  closing: ['This is arithmetic on what was entered.'],
};

let chromium: Browser;
beforeAll(async () => {
  chromium = await openChromium();
});
afterAll(() => chromium.close());

describe.each(['light', 'dark'] as const)('a letter opened on a phone in %s', (colorScheme) => {
  test('fits the width, reads with enough contrast, runs nothing and asks nobody for anything', async () => {
    const page = await chromium.newPage({ viewport: { width: 360, height: 740 }, colorScheme });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.setContent(letterHtml(PAPER), { waitUntil: 'load' });
    expect(asked).toEqual([]);
    expect(await page.title()).toBe(PAPER.subject);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe(
      colorScheme === 'dark' ? 'rgb(20, 25, 28)' : 'rgb(230, 233, 235)',
    );
    await page.evaluate(axe.source);
    const { violations } = (await page.evaluate(
      // Landmarks belong to pages; a mail program puts the letter inside its own.
      "axe.run({ rules: { region: { enabled: false }, 'landmark-one-main': { enabled: false }, 'page-has-heading-one': { enabled: false } } })",
    )) as axe.AxeResults;
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    await page.close();
  });
});

test('styles are in the elements themselves, for programs that drop style sheets', () => {
  const bare = letterHtml(PAPER).replace(/<style[\s\S]*?<\/style>/g, '');
  expect(bare).toMatch(/<h3[^>]* style="[^"]*font-size: 18px/);
  expect(bare).toMatch(/<a[^>]* class="button"[^>]* style="[^"]*background: #0b5394/);
});

test('the text says what the HTML says, in lines that survive being quoted', () => {
  const text = plainText(PAPER);
  for (const said of [...PAPER.summary, 'Hub repack (2 h in the shop', 'In the yard: Tue 13 May', 'Open the yard']) {
    expect(text.replace(/\s+/g, ' ')).toContain(said);
  }
  const tooLong = text.split('\n').filter((line) => line.length > 76 && line.trim().includes(' '));
  expect(tooLong).toEqual([]);
});
