import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clientOf } from '../support/api-client.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { aBuild, tiresOn } from '../support/trailers.js';
import { openChromium, signIn } from './chromium.js';

let service: TestApp;
let yard: YardOfTest;
let address: string;
let chromium: Browser;
let trailerId: string;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Counter Field');
  const owner = await clientOf(service, yard, yard.owner);
  const added = await owner.must<{ trailerId: string }>('POST', '/api/trailers', {
    ...{ yardNumber: '118', build: aBuild({ plate: 14_000 }), parts: tiresOn(2) },
  });
  trailerId = added.trailerId;
  await service.app.listen(0, '127.0.0.1');
  address = await service.app.getUrl();
  chromium = await openChromium();
});
afterAll(async () => {
  await chromium?.close();
  await service?.close();
});

const line = (page: Page, name: string) => page.getByRole('group', { name, exact: true });

test('on a phone without script: refused on a small ball, out on ours, back with a swapped tire and a bent ramp', async () => {
  const context = await chromium.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  const page = await context.newPage();
  await signIn(page, address, yard.owner.email, PASSWORD);

  await page.goto(`${address}/trailers/${trailerId}`);
  await page.getByRole('link', { name: 'Out and return' }).click();
  await page.getByRole('link', { name: 'Hand it out' }).click();
  await page.getByLabel('Customer', { exact: true }).fill('Brindle Pools');
  await page.getByLabel(/^Customer's ball, size/).fill('2');
  await page.getByLabel(/^Customer's ball, rating/).fill('7,500');
  await page.getByLabel('Lamps and brakes', { exact: true }).check();
  await page.getByRole('button', { name: 'Hand it out' }).click();
  expect(await page.getByRole('alert').textContent()).toContain('takes 2-5/16 in and the ball is 2 in');

  await page.getByLabel(/^Our ball, size/).fill('2-5/16');
  await page.getByLabel(/^Our ball, rating/).fill('14,000');
  const ramp = line(page, 'Ramp, right');
  await ramp.locator('summary').click();
  await ramp.getByLabel('Photo').setInputFiles({ name: 'out.png', mimeType: 'image/png', buffer: ONE_PIXEL });
  await page.getByRole('button', { name: 'Hand it out' }).click();
  await page.getByText('It is handed out').waitFor();

  await page.getByRole('link', { name: 'Take it back' }).click();
  const tire = line(page, 'Tire, axle 2 left');
  expect(await tire.textContent()).toContain('range E');
  await tire.getByLabel('Load range read').fill('D');
  await tire.locator('summary').click();
  await tire.getByLabel(/^Maximum load/).fill('3,000');
  const bent = line(page, 'Ramp, right');
  await bent.getByLabel('How it is').selectOption('bent');
  await bent.locator('summary').click();
  await bent.getByLabel('Photo').setInputFiles({ name: 'back.png', mimeType: 'image/png', buffer: ONE_PIXEL });
  await page.getByRole('button', { name: 'Take it back' }).click();
  expect(await page.getByRole('alert').textContent()).toContain('own 2 in ball was taken off');
  expect(await page.getByLabel('Load range read').nth(2).inputValue()).toBe('D');

  await page.getByLabel(/^Yes, .* saw it$/).check();
  await bent.getByLabel('Photo').setInputFiles({ name: 'back.png', mimeType: 'image/png', buffer: ONE_PIXEL });
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByText('It is back, and on hold').waitFor();
  const changed = page.locator('.change-chargeable');
  expect(await changed.count()).toBe(2);
  expect(await changed.first().textContent()).toContain('another tire: load range and maximum load differ');
  expect(await changed.last().locator('img').count()).toBe(2);

  await page.getByRole('link', { name: 'Customer sheet' }).click();
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Brindle Pools');
  expect(await page.locator('main').textContent()).toContain('Back on your mount');
  expect(await page.getByRole('link', { name: 'Back to the record' }).isVisible()).toBe(false);
  await page.goto(`${address}/trailers/${trailerId}`);
  expect(await page.locator('main').textContent()).toContain('Came back with tire 2L swapped, right ramp bent');
  await context.close();
});

/** A picture of one pixel. */
const ONE_PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
