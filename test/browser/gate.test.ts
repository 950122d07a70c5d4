import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import pg from 'pg';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day } from '../../src/rules/calendar/civil-date.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { fillFleet } from '../support/fleet.js';
import { openChromium, signIn } from './chromium.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PHONE = { width: 390, height: 844 };
const DESK = { width: 1280, height: 900 };

let service: TestApp;
let owner: pg.Pool;
let yard: YardOfTest;
let address: string;
let chromium: Browser;

beforeAll(async () => {
  service = await startApp();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 1 });
  yard = await service.makeYard('Fleet');
  await fillFleet(owner, yard.yardId, 60, day('2026-03-02'));
  await service.app.listen(0, '127.0.0.1');
  address = await service.app.getUrl();
  chromium = await openChromium();
}, 300_000);
afterAll(async () => {
  await chromium?.close();
  await owner?.end();
  await service?.close();
});

async function open(look: { readonly width: number; readonly height: number }, script = true): Promise<Page> {
  const context = await chromium.newContext({ viewport: look, javaScriptEnabled: script });
  const page = await context.newPage();
  await signIn(page, address, yard.hand.email, PASSWORD);
  return page;
}

/** Everything axe finds against WCAG 2.2 AA, as `rule: element`. */
async function axe(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    interface Found {
      readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
    }
    const { axe: run } = globalThis as unknown as { axe: { run(options: object): Promise<Found> } };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const { violations } = await run.run({ runOnly: { type: 'tag', values: tags } });
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
  });
}

async function scrollsSideways(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
}

async function trailerOf(job: string): Promise<string> {
  const { rows } = await owner.query(
    'select t.yard_number from job j join trailer t on t.id = j.trailer_id where j.name = $1',
    [job],
  );
  return String(rows[0]?.yard_number);
}

describe('on a phone without script', () => {
  test('a trailer is found at the gate, and its job given to another one after the answer was read', async () => {
    const page = await open(PHONE, false);
    await page.getByLabel(/^Number, name, plate/).fill('T-30');
    await page.getByRole('button', { name: 'Show', exact: true }).click();
    await page.getByRole('heading', { name: /Trailers like that/ }).waitFor();
    await page.getByRole('link', { name: 'Out 30' }).click();
    await page.getByRole('link', { name: 'Move to another trailer' }).click();
    await page.getByLabel(/^Number, name, plate/).fill('T-32');
    await page.getByRole('button', { name: 'Show', exact: true }).click();
    await page.getByRole('link', { name: 'Move it to T-32' }).click();
    await page.getByRole('button', { name: 'Move it to T-32' }).click();
    expect(await page.getByRole('status').textContent()).toContain('The job is moved');
    expect(await trailerOf('Out 30')).toBe('T-32');
    await page.context().close();
  });

  test('the days of the time line scroll in their own frame, and the same stands there in words', async () => {
    const page = await open(PHONE, false);
    await page.goto(`${address}/timeline`);
    expect(await scrollsSideways(page)).toBe(false);
    const frame = page.getByRole('region', { name: 'Days of the trailers' });
    expect(await frame.evaluate((one) => one.scrollWidth > one.clientWidth)).toBe(true);
    await page.getByText('The same in words').click();
    expect(await page.getByRole('link', { name: /^Move to another trailer ?: Out 5$/ }).count()).toBe(1);
    await page.context().close();
  });
});

describe('at a desk', () => {
  test('the slash leads to the search, unless somebody turned that off', async () => {
    const page = await open(DESK);
    const search = page.getByLabel(/^Number, name, plate/);
    await page.keyboard.press('/');
    await page.keyboard.type('T-4');
    expect(await search.inputValue()).toBe('T-4');
    await page.getByLabel('leads to the search').uncheck();
    await page.reload();
    await page.keyboard.press('/');
    expect(await search.evaluate((one) => one === document.activeElement)).toBe(false);
    await page.context().close();
  });

  test('a job is dragged onto another row, which answers before it is let go', async () => {
    const page = await open(DESK);
    await page.goto(`${address}/timeline?show=all`);
    const job = page.getByRole('link', { name: /^Out 10 / });
    const row = page.locator('tbody[data-number="T-12"]');
    await job.hover();
    await page.mouse.down();
    await row.hover({ force: true });
    await page.getByText(/^T-12: (?!asking)/).waitFor();
    expect(await trailerOf('Out 10')).toBe('T-10');
    await page.mouse.up();
    await page.waitForURL(/said=job-moved/);
    expect(await trailerOf('Out 10')).toBe('T-12');
    await page.context().close();
  });

  test('the same by keys; a trailer out on these days is asked about once more', async () => {
    const page = await open(DESK);
    await page.goto(`${address}/timeline?text=T-4`);
    // T-5 is not among those like T-4; T-40 and T-45 are, and T-40 is on hold.
    const job = page.getByRole('link', { name: /^Out 45 / });
    await job.focus();
    await page.keyboard.press('Space');
    for (let up = 0; up < 8; up++) {
      await page.keyboard.press('ArrowUp');
      if (await page.locator('tbody.lane-over-row[data-number="T-40"]').count()) break;
    }
    await page.getByText(/^T-40: (?!asking)/).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Move it all the same' }).waitFor();
    expect(await trailerOf('Out 45')).toBe('T-45');
    await page.getByRole('link', { name: 'Back without moving' }).click();
    await page.waitForURL(/\/timeline\?text=T-4/);
    await page.context().close();
  });
});

test.each([
  ['phone', PHONE],
  ['desk', DESK],
])('axe finds nothing on a %s', async (_name, look) => {
  const page = await open(look);
  const { rows } = await owner.query(`select id, trailer_id from job where name = 'Out 20'`);
  const paths = ['/', '/?readiness=down', '/trailers', '/timeline?show=all', `/jobs/${rows[0].id}/move`];
  for (const path of [...paths, `/jobs/${rows[0].id}/move/${rows[0].trailer_id}`]) {
    await page.goto(`${address}${path}`);
    expect([path, await axe(page), await scrollsSideways(page)]).toEqual([path, [], false]);
  }
  await page.context().close();
});
