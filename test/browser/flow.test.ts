import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { openChromium, signIn } from './chromium.js';

let service: TestApp;
let yard: YardOfTest;
let address: string;
let chromium: Browser;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Flow Field');
  await service.app.listen(0, '127.0.0.1');
  address = await service.app.getUrl();
  chromium = await openChromium();
});
afterAll(async () => {
  await chromium?.close();
  await service?.close();
});

/** On a phone, and with script off: nothing on these pages needs it. */
async function phone(): Promise<Page> {
  const context = await chromium.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  const page = await context.newPage();
  await signIn(page, address, yard.owner.email, PASSWORD);
  return page;
}

describe('a morning at the yard, on a phone without script', () => {
  test('a trailer is entered, overloaded, flagged, and the gate says no before the next job', async () => {
    const page = await phone();
    await page.getByRole('link', { name: 'Trailers' }).click();
    await page.getByRole('link', { name: 'Add a trailer' }).click();
    await page.getByLabel('Number painted on it').fill('Q-2');
    await page.getByLabel('GVWR (lb)', { exact: false }).first().fill('14,000');
    await page.getByLabel(/^Empty weight/).fill('3,900');
    await page.getByLabel('How the empty weight is known').selectOption('weighed');
    await page.getByRole('button', { name: 'Add the trailer' }).click();
    await page.getByText('The trailer is on file').waitFor();
    expect(await page.getByText('10,100 lb').count()).toBeGreaterThan(0);

    await page.getByRole('link', { name: 'Record a trip' }).first().click();
    await page.getByLabel(/^Miles/).fill('38');
    await page.getByLabel('What', { exact: true }).nth(0).fill('Track loader with larger bucket');
    await page.getByLabel('Weight (lb)').nth(0).fill('10,230');
    await page.getByRole('button', { name: 'Record the trip' }).click();
    await page.getByText('The trip is recorded').waitFor();
    const flag = page.getByRole('listitem').filter({ hasText: 'loaded past its limit' });
    expect(await flag.getByText('Over a limit').count()).toBe(1);
    expect(await flag.textContent()).toContain('14,130 lb against 14,000 lb, over by 130 lb');

    await page.getByRole('link', { name: 'Book a job for it' }).click();
    await page.getByLabel('What it is called').fill('Orchard Lane');
    await page.getByLabel('What', { exact: true }).nth(0).fill('Track loader');
    await page.getByLabel('Weight (lb)').nth(0).fill('9,920');
    await page.getByLabel('What', { exact: true }).nth(1).fill('Grapple');
    await page.getByLabel('Weight (lb)').nth(1).fill('1,050');
    await page.getByLabel('Could it be spared?').nth(1).selectOption('leave-off');
    await page.getByRole('button', { name: 'Book the job' }).click();
    await page.getByText('The job is booked').waitFor();

    await page.getByRole('link', { name: 'Gate' }).click();
    const job = page.locator('.job-card').filter({ hasText: 'Orchard Lane' });
    expect(await job.getByText('No go').count()).toBe(1);
    expect(await job.textContent()).toContain('over by 870 lb');
    expect(await job.textContent()).toContain('Without Grapple');
    await page.context().close();
  });

  test('a photo goes with a check and is shown again', async () => {
    const page = await phone();
    await page.goto(`${address}/trailers`);
    await page.locator('main a.plate-no').first().click();
    await page.getByRole('link', { name: 'Record a check' }).click();
    await page.locator('main li a').first().click();
    await page.getByLabel(/pictures/).setInputFiles({ name: 'hub.png', mimeType: 'image/png', buffer: ONE_PIXEL });
    await page.getByLabel('Passed', { exact: true }).check();
    await page.getByRole('button', { name: 'Record the check' }).click();
    await page.getByText('The check is recorded').waitFor();
    const picture = page.locator('.photos img');
    expect(await picture.count()).toBe(1);
    const answer = await page.request.get(`${address}${await picture.getAttribute('src')}`);
    expect(answer.headers()['content-type']).toBe('image/png');
    expect((await answer.body()).equals(ONE_PIXEL)).toBe(true);
    await page.context().close();
  });
});

describe('by keyboard alone', () => {
  test('the first key leads past the doors, and every door and form field is reached and seen', async () => {
    const context = await chromium.newContext({ viewport: { width: 1280, height: 800 } });
    const page = await context.newPage();
    await signIn(page, address, yard.owner.email, PASSWORD);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');

    await page.goto(`${address}/fit`);
    const all = await page
      .locator('a[href], button, input:not([type=hidden]), select, textarea, summary')
      .evaluateAll((list) => list.filter((one) => (one as HTMLElement).checkVisibility()).length);
    /** Each place reached, and whether it was seen to be; a date field has several stops, the last its own button. */
    const reached = new Map<number, { what: string; seen: boolean }>();
    for (let key = 0; key < all + 20; key += 1) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const one = document.activeElement as HTMLElement | null;
        if (one === null || one === document.body) return null;
        const { outlineStyle, outlineWidth } = getComputedStyle(one);
        return {
          place: [...document.querySelectorAll('*')].indexOf(one),
          seen: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
          what: one.outerHTML.slice(0, 80),
        };
      });
      if (at === null) continue;
      reached.set(at.place, { what: at.what, seen: at.seen || reached.get(at.place)?.seen === true });
    }
    // Radio buttons of one group are one stop each, as browsers have it.
    const groups = await page.locator('input[type=radio]').evaluateAll((list) => {
      const visible = list.filter((one) => (one as HTMLElement).checkVisibility()) as HTMLInputElement[];
      return visible.length - new Set(visible.map((one) => one.name)).size;
    });
    expect([...reached.values()].filter(({ seen }) => !seen)).toEqual([]);
    expect(reached.size).toBe(all - groups);
    await context.close();
  });
});

/** A picture of one pixel. */
const ONE_PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
