import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { projectRoot } from '../../src/launch/project-root.js';
import { openChromium, signIn } from './chromium.js';
import { type DemoService, startDemo } from './demo-service.js';

/** `npm run shots` sets it: then every page is also kept as a picture in ./shots. */
const SHOTS = process.env.SHOTS === undefined ? null : join(projectRoot(), 'shots');
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe, width and touch say depends on the scheme and on whether tables are cards: two looks have both of each. The
 * other two are only there to be looked at.
 */
const LOOKS = [
  { width: 360, scheme: 'light', axe: true },
  { width: 1280, scheme: 'dark', axe: true },
  ...(SHOTS === null
    ? []
    : ([
        { width: 390, scheme: 'dark', axe: false },
        { width: 1280, scheme: 'light', axe: false },
      ] as const)),
] as const;

let demo: DemoService;
let chromium: Browser;
let signedIn: Awaited<ReturnType<BrowserContext['storageState']>>;
/** Every screen by a name for its picture. Those about one thing are found by following the lists. */
const screens = new Map<string, string>();

beforeAll(async () => {
  demo = await startDemo();
  chromium = await openChromium();
  const context = await chromium.newContext();
  const page = await context.newPage();
  await signIn(page, demo.address, demo.owner, demo.password);
  signedIn = await context.storageState();
  await findScreens(page);
  await context.close();
  if (SHOTS !== null) await mkdir(SHOTS, { recursive: true });
  // Nothing here asserts a time: filling the demo yard and opening the pages is slow on a busy machine.
}, 600_000);
afterAll(async () => {
  await chromium?.close();
  await demo?.close();
});

async function findScreens(page: Page): Promise<void> {
  const first = async (from: string, pattern: RegExp): Promise<string> => {
    await page.goto(`${demo.address}${from}`);
    const links = await page.locator('main a').evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? ''));
    const found = links.find((link) => pattern.test(link));
    if (found === undefined) throw new Error(`no link like ${pattern} on ${from}`);
    return found;
  };
  const id = '[0-9a-f-]{36}';
  const trailer = await first('/trailers', new RegExp(`^/trailers/${id}$`));
  const down = await first('/trailers?readiness=down', new RegExp(`^/trailers/${id}$`));
  const hired = await first('/trailers?text=T-01', new RegExp(`^/trailers/${id}$`));
  const pair = await first('/trailers?text=T-04', new RegExp(`^/trailers/${id}$`));
  const returned = await first(`${pair}/handovers`, new RegExp(`/handovers/${id}$`));
  const job = await first('/jobs', new RegExp(`^/jobs/${id}$`));
  for (const [name, path] of [
    ['gate', '/'],
    ['trailers', '/trailers'],
    ['trailers-none', '/trailers?text=no-such-number'],
    ['trailer', trailer],
    ['trailer-down', down],
    ['trailer-history', `${trailer}/history`],
    ['trailer-new', '/trailers/new'],
    ['trailer-papers', `${trailer}/papers`],
    ['trailer-gone', `${trailer}/gone`],
    ['better', await first('/flags', /\/better\?flag=/)],
    ['build', `${trailer}/build`],
    ['part-new', `${trailer}/parts/new`],
    ['part-remove', await first(trailer, /\/parts\/.+\/remove$/)],
    ['trip-new', `${trailer}/trips/new`],
    ['trip-mend', await first(`${trailer}/history`, /\/trips\/[0-9a-f-]{36}$/)],
    ['reading-new', `${trailer}/readings/new`],
    ['hold-new', `${trailer}/holds/new`],
    ['hold-lift', await first(down, /\/holds\/.+\/lift$/)],
    ['check-pick', `${trailer}/checks`],
    ['check-sheet', await first(`${trailer}/checks`, new RegExp(`^/sheets/${id}/${id}$`))],
    ['check-record', await first(`${trailer}/history`, new RegExp(`/records/${id}$`))],
    ['sheets', '/sheets'],
    ['handovers', `${hired}/handovers`],
    ['hand-out', `${pair}/hand-out`],
    ['take-back', `${hired}/take-back`],
    ['take-back-not-out', `${pair}/take-back`],
    ['handover', returned],
    ['customer-sheet', `${returned}/sheet`],
    ['jobs', '/jobs'],
    ['jobs-over', '/jobs?list=over'],
    ['job', job],
    ['job-trailers', `${job}/trailers`],
    ['job-new', '/jobs/new'],
    ['job-change', `${job}/change`],
    ['job-cancel', `${job}/cancel`],
    ['job-done', `${job}/done`],
    ['job-moves', `${job}/move`],
    ['job-move', await first(`${job}/move`, /\/move\/[0-9a-f-]{36}$/)],
    ['timeline', '/timeline'],
    ['timeline-all', '/timeline?show=all&weeks=4'],
    ['gate-found', '/?text=T-0'],
    ['machines', '/machines'],
    ['machine-new', '/machines/new'],
    ['machine', await first('/machines', new RegExp(`^/machines/${id}$`))],
    ['machine-replace', `${await first('/machines', new RegExp(`^/machines/${id}$`))}/replace`],
    ['tow-vehicle', await first('/machines', new RegExp(`^/tow-vehicles/${id}$`))],
    ['load', '/load'],
    ['load-answer', '/load?trailer=T-02&mass=7200&psi=65'],
    ['fit', '/fit'],
    ['due', '/due'],
    ['due-all', '/due?state=all'],
    ['flags', '/flags'],
    ['notices', '/notices'],
    ['notice', await first('/notices', new RegExp(`^/notices/${id}$`))],
    ['yard', '/yard'],
    ['check-kind', await first('/yard', new RegExp(`^/yard/checks/${id}$`))],
    ['people', '/people'],
    ['person', await first('/people', new RegExp(`^/people/${id}$`))],
    ['answer', await answerOf(page, new RegExp(`^/notices/${id}$`))],
    ['not-found', '/trailers/01890000-0000-7000-8000-000000000000'],
  ] as const) {
    screens.set(name, path);
  }
}

/** Where a letter of the demo yard leads to be answered; only mails link there. */
async function answerOf(page: Page, notice: RegExp): Promise<string> {
  await page.goto(`${demo.address}/notices`);
  const links = await page.locator('main a').evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? ''));
  for (const link of new Set(links.filter((one) => notice.test(one)))) {
    await page.goto(`${demo.address}${link}`);
    const found = /\/answer\?item=\S+/.exec((await page.locator('.mail-text').textContent()) ?? '');
    if (found !== null) return found[0];
  }
  throw new Error('no letter of the demo yard asks for an answer');
}

interface AxeFinding {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Runs axe inside the page; the strict policy of the service stays on, so it goes in by the debugger, not by a tag. */
async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const violations = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(options: object): Promise<{ violations: readonly AxeFinding[] }> };
    };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    return (await axe.run({ runOnly: { type: 'tag', values: tags } })).violations;
  });
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map((node) => node.html.slice(0, 160))
          .slice(0, 3)
          .join(' | ')}`,
    );
}

async function tooWide(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= width) return [];
    return [...document.querySelectorAll('body *')]
      .filter((one) => one.getBoundingClientRect().right > width + 1)
      .slice(0, 4)
      .map(
        (one) =>
          `${one.tagName.toLowerCase()}.${one.className} reaches ${Math.round(one.getBoundingClientRect().right)}`,
      );
  });
}

/** What a finger must hit: at least 24 px either way (WCAG 2.2, 2.5.8), links inside a sentence excepted. */
async function tooSmall(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, input:not([type=hidden]), select, textarea, summary, nav a, a.button, a.plate-no',
      ),
    ]
      .filter((one) => one.checkVisibility() && !one.classList.contains('skip'))
      .map((one) => ({ one, box: (one.closest('label.pick') ?? one).getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43 && box.width > 0)
      .map(({ one, box }) => `${one.tagName.toLowerCase()}.${one.className} is ${Math.round(box.height)} px high`),
  );
}

describe.each(LOOKS)('every page at $width px, $scheme', ({ width, scheme, axe }) => {
  let context: BrowserContext;
  let page: Page;
  const complaints: string[] = [];
  beforeAll(async () => {
    context = await chromium.newContext({
      viewport: { width, height: 844 },
      colorScheme: scheme,
      storageState: signedIn,
    });
    page = await context.newPage();
    page.on('console', (message) => {
      // The page of something that is not there is a 404, and the browser says so.
      if (message.type() === 'error' && !message.text().includes('404')) complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
  });
  afterAll(() => context?.close());

  test('is readable, reachable by touch and free of anything axe calls serious', async () => {
    const wrong: Record<string, readonly string[]> = {};
    for (const [name, path] of screens) {
      complaints.length = 0;
      await page.goto(`${demo.address}${path}`);
      const found = [
        ...(axe ? await axeFindings(page) : []),
        ...(await tooWide(page)),
        ...(await tooSmall(page)),
        ...complaints,
        ...((await page.locator('h1').count()) === 1 ? [] : ['not exactly one h1']),
      ];
      if (found.length > 0) wrong[name] = found;
      if (SHOTS !== null)
        await page.screenshot({ path: join(SHOTS, `${name}-${width}-${scheme}.png`), fullPage: true });
    }
    expect(wrong).toEqual({});
  }, 600_000);

  if (!axe) return;

  test('a form sent back says what is wrong so that everybody finds it', async () => {
    await page.goto(`${demo.address}/trailers/new`);
    await page.getByLabel('Number painted on it').fill('Z-1');
    await page.getByLabel('GVWR').first().fill('fourteen');
    await page.getByRole('button', { name: 'Add the trailer' }).click();
    expect(await page.getByRole('alert').textContent()).toContain("Enter the plate's GVWR as a number");
    expect(await page.getByLabel('GVWR').first().getAttribute('aria-invalid')).toBe('true');
    expect([...(await axeFindings(page)), ...(await tooWide(page))]).toEqual([]);
    if (SHOTS !== null)
      await page.screenshot({ path: join(SHOTS, `trailer-wrong-${width}-${scheme}.png`), fullPage: true });
  });

  test('an answer to a fit is readable', async () => {
    await page.goto(`${demo.address}/fit`);
    await page.getByLabel('Trailer').first().fill('T-02');
    await page.getByLabel('Machine').first().selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Can it?' }).click();
    await page.getByRole('heading', { name: 'The answer' }).waitFor();
    expect([...(await axeFindings(page)), ...(await tooWide(page))]).toEqual([]);
    if (SHOTS !== null)
      await page.screenshot({ path: join(SHOTS, `fit-answer-${width}-${scheme}.png`), fullPage: true });
  });
});
