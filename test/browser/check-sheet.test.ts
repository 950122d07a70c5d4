import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { rowsOf } from '../support/rows.js';
import { openChromium, signIn } from './chromium.js';

/** A check with ticks that keep people safe, as every yard starts with. */
const KIND = DEFAULT_CHECK_KINDS.find(
  ({ lines }) => lines.filter((line) => line.kind === 'tick' && line.safety).length > 1,
);

let service: TestApp;
let yard: YardOfTest;
let address: string;
let chromium: Browser;
let sheetPath: string;
let trailerPath: string;

beforeAll(async () => {
  service = await startApp();
  // The phone's clock is the machine's: what it fills in as today must not lie ahead of the service's today.
  service.clock.at = new Date();
  yard = await service.makeYard('Poor Signal');
  await service.app.listen(0, '127.0.0.1');
  address = await service.app.getUrl();
  chromium = await openChromium();
  const owner = await service.signedIn(yard.owner);
  for (const yardNumber of ['T-07', 'T-17', 'Q-2']) await owner.post('/trailers/new', { yardNumber });
  const [found] = await rowsOf(
    service.databaseUrl,
    `select t.id as trailer, k.id as kind from trailer t, check_kind k where t.yard_number = 'T-07' and k.code = $1`,
    [KIND?.code],
  );
  trailerPath = `/trailers/${found?.trailer}`;
  sheetPath = `/sheets/${found?.trailer}/${found?.kind}`;
});
afterAll(async () => {
  await chromium?.close();
  await service?.close();
});

async function phone(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  await signIn(page, address, yard.hand.email, PASSWORD);
  return { context, page };
}

/** Opens the sheet with a signal, and waits until the phone could do without. */
async function openSheet(page: Page): Promise<void> {
  await page.goto(`${address}${sheetPath}`);
  await page.locator('form[data-kept=yes]').waitFor();
}

const answer = (page: Page, place: number, what: 'OK' | 'Bad') =>
  page.locator('.sheet-lines > li').nth(place).getByText(what, { exact: true }).click();

async function sign(page: Page, number = 'T-07'): Promise<void> {
  await page.getByLabel('Number painted on the trailer').fill(number);
  await page.getByLabel('Name typed as signature').fill('Wren Ostrow');
  await page.getByRole('button', { name: 'Record the check' }).click();
}

const records = () =>
  rowsOf(service.databaseUrl, 'select id, outcome, note, signed_name from check_record order by recorded_at');

test('a sheet is filled in across a lost signal and a closed page, and arrives once', async () => {
  const { context, page } = await phone();
  await openSheet(page);
  await answer(page, 0, 'OK');
  await context.setOffline(true);
  await answer(page, 1, 'Bad');
  await page.getByLabel('Note', { exact: true }).fill('left hinge');
  await page
    .getByLabel(/pictures/)
    .setInputFiles({ name: 'hinge.png', mimeType: 'image/png', buffer: await bigPicture(page) });
  await page.locator('.shots img').waitFor();
  await page.getByText('must not go out. Sign and send').waitFor();
  await page.getByText('Kept on this phone,').waitFor();
  await page.close();

  const again = await context.newPage();
  await again.goto(`${address}${sheetPath}`);
  await again.getByText('Taken up where you left it').waitFor();
  expect(await again.getByLabel('Note', { exact: true }).inputValue()).toBe('left hinge');
  const shot = again.locator('.shots img');
  expect(await shot.count()).toBe(1);
  expect(await shot.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(1_600);
  expect(await again.locator('.sheet-lines > li').nth(1).getByLabel('Bad').isChecked()).toBe(true);
  await drawSignature(again);
  await again.getByLabel('Number painted on the trailer').fill('T-07');
  await again.getByRole('button', { name: 'Record the check' }).click();
  await again.getByText('No signal: sent as soon as there is one').waitFor();
  await again.getByText('T-07 must not go out. Found bad').waitFor();
  expect(await records()).toEqual([]);

  // Closed once more with the signed sheet on it: the list opens without a signal too.
  await again.goto(`${address}/sheets`);
  await again.getByText('1 signed sheet safe on this phone').waitFor();
  await context.setOffline(false);
  await again.getByText('T-07 is on hold now').waitFor();
  const [one, ...more] = await records();
  expect(more).toEqual([]);
  expect(one).toMatchObject({ outcome: 'fail', note: 'left hinge', signed_name: null });
  const pictures = await rowsOf(
    service.databaseUrl,
    'select media_type, is_signature, length(bytes) as size from check_photo order by is_signature',
  );
  expect(pictures).toMatchObject([
    { media_type: 'image/jpeg', is_signature: false },
    { media_type: 'image/png', is_signature: true },
  ]);
  const holds = await rowsOf(service.databaseUrl, 'select reason from hold where lifted_on is null');
  expect(holds).toHaveLength(1);
  await context.close();
});

test('a sheet whose answer was lost is sent again and recorded once', async () => {
  const before = (await records()).length;
  const { context, page } = await phone();
  await openSheet(page);
  await answer(page, 0, 'OK');
  // It reaches the service and is recorded, and the answer does not come back.
  const recording = service.app.get(RecordCheck, { strict: false });
  const real = recording.run.bind(recording);
  let lost = 0;
  recording.run = async (...asked) => {
    const answer = await real(...asked);
    lost += 1;
    if (lost === 1) throw new Error('the answer was lost');
    return answer;
  };
  await sign(page);
  // Page or worker tries again; whichever comes second finds it recorded.
  const arrived = page.getByText('it had arrived before, and is kept once');
  const refused = page.getByText('The service could not take it just now');
  await arrived.or(refused).first().waitFor();
  if (await refused.isVisible()) await page.getByRole('button', { name: 'Send now' }).click();
  await arrived.waitFor();
  expect(lost).toBeGreaterThan(1);
  expect(await records()).toHaveLength(before + 1);
  recording.run = real;
  await context.close();
});

test('what changed meanwhile is told, and both are kept', async () => {
  const before = (await records()).length;
  const { context, page } = await phone();
  await openSheet(page);
  await context.setOffline(true);
  await answer(page, 0, 'OK');
  const shop = await service.signedIn(yard.shop);
  const form = `${trailerPath}/checks/${sheetPath.split('/').at(-1)}`;
  const day = service.clock.today('America/Chicago');
  expect((await shop.post(form, { doneOn: day, outcome: 'pass', note: 'by the shop' })).status).toBe(303);
  expect((await shop.post(`${trailerPath}/holds/new`, { reason: 'Tongue cracked' })).status).toBe(303);
  await sign(page);
  await page.getByText('No signal').first().waitFor();
  await context.setOffline(false);
  await page.getByText('Changed while this was on its way').waitFor();
  expect(await page.getByText(/put on hold on .+: Tongue cracked/).count()).toBe(1);
  expect(await page.getByText(/Somebody else recorded this check meanwhile, passed on/).count()).toBe(1);
  expect(await records()).toHaveLength(before + 2);
  await context.close();
});

test('the number of another trailer is warned of, look-alikes by name, and nothing is signed for it', async () => {
  const before = (await records()).length;
  const { context, page } = await phone();
  await openSheet(page);
  expect(await page.getByText(/T-07 is easily taken for T-17/).count()).toBe(1);
  await answer(page, 0, 'OK');
  await sign(page, 'T-17');
  await page.getByRole('alert').getByText('Not signed yet').waitFor();
  expect(await page.getByText('You read T-17; this sheet is for T-07. The two look alike').count()).toBe(2);
  await sign(page, '');
  await page.getByText('Enter the number painted on the trailer, or scan its label').waitFor();
  await sign(page, ' t07');
  await page.getByText('Recorded.').waitFor();
  expect(await records()).toHaveLength(before + 1);
  await context.close();
});

test('signing out takes the kept pages off the phone', async () => {
  const { context, page } = await phone();
  await openSheet(page);
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByText('You are signed out').waitFor();
  await expect.poll(() => page.evaluate(() => caches.keys())).toEqual([]);
  await context.setOffline(true);
  await expect(page.goto(`${address}${sheetPath}`).then((got) => got?.status())).resolves.not.toBe(200);
  await context.close();
});

async function drawSignature(page: Page): Promise<void> {
  const pad = page.locator('.sign-pad canvas');
  await pad.scrollIntoViewIfNeeded();
  const box = await pad.boundingBox();
  if (box === null) throw new Error('nowhere to sign');
  await page.mouse.move(box.x + 20, box.y + 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 120, box.y + 20);
  await page.mouse.move(box.x + 200, box.y + 70);
  await page.mouse.up();
}

/** A picture larger than a phone has any reason to send, drawn by the browser itself. */
async function bigPicture(page: Page): Promise<Buffer> {
  const base64 = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 2_000;
    canvas.height = 1_500;
    const pen = canvas.getContext('2d');
    const noise = new ImageData(canvas.width, canvas.height);
    // Grain, as a camera's picture has: a linear congruential generator's high bits.
    let state = 1;
    for (let at = 0; at < noise.data.length; at += 4) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      noise.data.fill(state >>> 26, at, at + 3);
      noise.data[at + 3] = 255;
    }
    pen?.putImageData(noise, 0, 0);
    return canvas.toDataURL('image/png').split(',')[1] ?? '';
  });
  return Buffer.from(base64, 'base64');
}
