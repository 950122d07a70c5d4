import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Clock } from '../../src/http/clock.js';
import { projectRoot } from '../../src/launch/project-root.js';
import { lbf } from '../../src/rules/units/force.js';
import { feet, inch } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import type { Caller } from '../../src/use-cases/caller.js';
import { AddMachine } from '../../src/use-cases/machines/add-machine.js';
import { AddTowVehicle } from '../../src/use-cases/machines/add-tow-vehicle.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';
import { aBuild, aFullBuild, tiresOn } from '../support/trailers.js';
import { must } from '../support/yard.js';
import { openChromium, signIn } from './chromium.js';

const SHOTS = process.env.SHOTS === undefined ? null : join(projectRoot(), 'shots');
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PHONE = { width: 390, height: 844 };
const DESK = { width: 1280, height: 900 };

let service: TestApp;
let yard: YardOfTest;
let address: string;
let chromium: Browser;
let signedIn: Awaited<ReturnType<BrowserContext['storageState']>>;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Load Field');
  await fillYard();
  await service.app.listen(0, '127.0.0.1');
  address = await service.app.getUrl();
  chromium = await openChromium();
  const context = await chromium.newContext();
  await signIn(await context.newPage(), address, yard.owner.email, PASSWORD);
  signedIn = await context.storageState();
  await context.close();
  if (SHOTS !== null) await mkdir(SHOTS, { recursive: true });
});
afterAll(async () => {
  await chromium?.close();
  await service?.close();
});

/** A trailer with everything said, and those of the scenarios "torsion, nose-high" and "tail heavy". */
async function fillYard(): Promise<void> {
  const { app } = service;
  const timeZone = 'America/Chicago';
  const clock = app.get(Clock, { strict: false });
  const caller: Caller = {
    yardId: yard.yardId,
    ...{ personId: yard.owner.id, name: yard.owner.name, role: 'owner', door: 'page' },
    ...{ now: clock.now(), today: clock.today(timeZone), timeZone },
  };
  const add = (yardNumber: string, build: ReturnType<typeof aBuild>, tires = 2) =>
    must(
      app
        .get(AddTrailer, { strict: false })
        .run(caller, { yardNumber, name: 'gray', stored: 'open', build, parts: tiresOn(tires) } as never),
    );
  const full = aFullBuild();
  await add('L-01', {
    ...full,
    body: 'fixed-deck',
    deck: { ...full.deck, tiltLengthM: null, pivotFromCouplerM: null },
  });
  const torsion = aBuild({ suspension: 'torsion' });
  await add('T-04', { ...torsion, hitch: { ...torsion.hitch, levelHeightM: inch(20) } });
  await add('T-05', aBuild());
  await must(
    app.get(AddMachine, { strict: false }).run(caller, {
      ...{ name: 'Skid steer', massKg: lb(7_400), basis: 'weighed', lengthM: feet(11), widthM: inch(66) },
      ...{ balancePointM: inch(76), contact: 'tires', contactCount: 4, contactLengthM: inch(9) },
      ...{ contactWidthM: inch(12), wheelbaseM: inch(43), clearanceM: inch(8) },
    } as never),
  );
  await must(
    app
      .get(AddTowVehicle, { strict: false })
      .run(caller, { name: 'Pickup', gvwrKg: lb(9_000), hitchTongueN: lbf(1_200) } as never),
  );
}

/** A page of its own; null opens nothing yet, so that its cache is empty. */
async function open(
  path: string | null,
  { viewport = PHONE, script = true, scheme = 'light' as 'light' | 'dark' } = {},
) {
  const context = await chromium.newContext({
    viewport,
    javaScriptEnabled: script,
    colorScheme: scheme,
    storageState: signedIn,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  if (path !== null) await page.goto(`${address}${path}`);
  return { page, complaints, close: () => context.close() };
}

async function shot(page: Page, name: string): Promise<void> {
  if (SHOTS !== null) await page.screenshot({ path: join(SHOTS, `${name}.png`), fullPage: true });
}

/** The number in front of "lb" of a gauge. */
async function gauge(page: Page, name: string): Promise<string> {
  const found = page.locator('.gauges li').filter({ has: page.getByText(name, { exact: true }) });
  return (await found.textContent()) ?? '';
}

const verdict = (page: Page) => page.locator('.bench-verdict').textContent();

describe.each([
  ['phone', PHONE],
  ['desk', DESK],
] as const)('on a %s', (device, viewport) => {
  test('a machine is dragged along the deck, and the tongue, the form and the answer follow', async () => {
    const { page, complaints, close } = await open('/load', { viewport });
    await page.getByLabel('Trailer').first().fill('L-01');
    await page.getByLabel('Machine', { exact: true }).selectOption({ label: 'Skid steer (7,400 lb, weighed)' });
    await page.getByRole('button', { name: 'Check the load' }).click();
    const slider = page.getByRole('slider', { name: /Skid steer/ });
    await slider.waitFor();
    const before = await gauge(page, 'Tongue');
    await shot(page, `load-check-${device}`);

    const cargo = await page.locator('[data-cargo] .p-body').boundingBox();
    if (cargo === null) throw new Error('no machine is drawn');
    const from = { x: cargo.x + cargo.width / 2, y: cargo.y + cargo.height / 2 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 15, from.y, { steps: 4 });
    await page.mouse.move(from.x + viewport.width / 12, from.y, { steps: 4 });
    await page.mouse.up();
    // Further back is less on the tongue.
    const share = (text: string) => Number(/(-?[\d.]+) %/.exec(text)?.[1]);
    await expect.poll(async () => share(await gauge(page, 'Tongue'))).toBeLessThan(share(before));
    const typed = await page.getByLabel(/^Balances behind the coupler/).inputValue();
    expect(Number(typed)).toBeGreaterThan(100);
    expect(Math.round(Number(await slider.inputValue()))).toBe(Math.round(Number(typed)));
    // The knob lies below the balance point of the drawing.
    const balance = await page.locator('.p-balance').boundingBox();
    const line = await slider.boundingBox();
    const [least, most] = [Number(await slider.getAttribute('min')), Number(await slider.getAttribute('max'))];
    const knob = (line?.x ?? 0) + 8 + ((Number(typed) - least) / (most - least)) * ((line?.width ?? 0) - 16);
    expect(Math.abs(knob - (balance?.x ?? 0) - (balance?.width ?? 0) / 2)).toBeLessThan(4);

    await page.getByRole('button', { name: 'Best place' }).click();
    await expect.poll(async () => share(await gauge(page, 'Tongue'))).toBe(share(before));
    expect(complaints).toEqual([]);
    await close();
  });

  test('the same by keyboard alone, and what is drawn is told in words', async () => {
    const { page, close } = await open('/load?trailer=L-01&mass=7400&at=170', { viewport });
    const slider = page.getByRole('slider');
    await slider.focus();
    const spoken = () => slider.getAttribute('aria-valuetext');
    expect(await spoken()).toContain('14 ft 2 in behind the coupler');
    await page.keyboard.press('ArrowRight');
    await expect.poll(spoken).toContain('14 ft 3 in behind the coupler');
    await page.keyboard.press('PageDown');
    await expect.poll(spoken).toContain('13 ft 3 in behind the coupler');
    expect(await page.getByLabel(/^Balances behind the coupler/).inputValue()).toBe('159');
    expect(await page.locator('.picture figcaption').first().textContent()).toContain('13 ft 3 in behind the coupler');
    await close();
  });

  test('torsion axles, nose high: level the hitch first, unloading second', async () => {
    const { page, close } = await open('/load', { viewport, script: device === 'desk' });
    await page.getByLabel('Trailer').first().fill('T-04');
    await page.getByText('It stands on a scale').click();
    await page.getByLabel('On the tongue').fill('1,500');
    await page.getByLabel('On axle 1').fill('3,700');
    await page.getByLabel('On axle 2').fill('7,200');
    await page.getByLabel('Coupler height, hitched').fill('23');
    await page.getByRole('button', { name: 'Check the load' }).click();
    await page.locator('.bench-verdict').waitFor();
    expect(await verdict(page)).toContain('Go after');
    expect(await gauge(page, 'Axle 2')).toContain('7,200 lb of 7,000 lb');
    expect(await gauge(page, 'Tire, axle 2 left')).toContain('3,600 lb of 3,420 lb');
    expect(await gauge(page, 'All axles together')).toContain('inside');
    const remedies = page.getByRole('region', { name: 'What would make it yes' });
    expect(await remedies.locator('li').first().textContent()).toContain('until the deck is level (coupler at 20 in)');
    expect(await remedies.textContent()).toContain('Or take');
    await shot(page, `load-check-torsion-${device}`);
    await close();
  });

  test('tail heavy: 12 to 14.5 in forward, never past what the hitch carries', async () => {
    const { page, close } = await open('/load', { viewport });
    await page.getByLabel('Trailer').first().fill('T-05');
    await page.getByLabel('Its weight this time').fill('7,400');
    await page.getByLabel('Tow vehicle').selectOption({ label: 'Pickup' });
    await page.getByText('It stands on a scale').click();
    await page.getByLabel('Whole trailer').fill('11,000');
    await page.getByLabel('On the tongue').fill('640');
    await page.getByRole('button', { name: 'Check the load' }).click();
    await page.getByRole('slider').waitFor();
    expect(await verdict(page)).toContain('Go after');
    expect(await gauge(page, 'Tongue')).toContain('5.8 %');
    const remedies = page.getByRole('region', { name: 'What would make it yes' });
    expect(await remedies.textContent()).toContain('Move the load 11.9 to 14.5 in forward: 1,100 lb to 1,200 lb');
    expect(await remedies.textContent()).toContain('Weigh');

    // 640 + 7,400 × 13 ÷ 192 = 1,141 lb: by the buttons, as a gloved thumb does it.
    for (let inches = 0; inches < 13; inches += 1) await page.getByRole('button', { name: '1 in forward' }).click();
    await expect.poll(() => gauge(page, 'Tongue')).toContain('1,141 lb, 10.4 %');
    expect(await verdict(page)).toContain('weigh it again');
    await shot(page, `load-check-tail-${device}`);
    await close();
  });
});

describe('without script', () => {
  test('the form answers, and says what it cannot read beside its field', async () => {
    const { page, close } = await open('/load', { script: false });
    await page.getByLabel('Trailer').first().fill('L-01');
    await page.getByLabel('Its weight this time').fill('7400');
    await page.getByRole('button', { name: 'Check the load' }).click();
    expect(await page.locator('.picture').count()).toBe(2);
    expect(await page.locator('#the-answer').textContent()).toContain('its best place');
    await page.getByLabel('Coupler height, hitched').fill('high');
    await page.getByRole('button', { name: 'Check again' }).click();
    expect(await page.getByRole('alert').textContent()).toContain('Enter the coupler height as it rode as a number');
    await close();
  });
});

describe('the page', () => {
  test.each(['light', 'dark'] as const)(
    'in %s: nothing axe finds, no wider than a phone, no jump when its script comes, and 60 KB in all',
    async (scheme) => {
      const { page, close } = await open(null, { scheme });
      await page.addInitScript(() => {
        const jumps = { sum: 0 };
        Object.assign(globalThis, { jumps });
        new PerformanceObserver((list) => {
          for (const one of list.getEntries()) jumps.sum += (one as unknown as { value: number }).value;
        }).observe({ type: 'layout-shift', buffered: true });
      });
      const sizes: Promise<number>[] = [];
      page.on('response', (response) => {
        sizes.push(
          response
            .request()
            .sizes()
            .then(({ responseBodySize }) => responseBodySize),
        );
      });
      await page.goto(`${address}/load?trailer=L-01&mass=7400`, { waitUntil: 'networkidle' });
      await page.getByRole('slider').waitFor();
      await page.evaluate(AXE);
      const violations = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as {
          axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
        return (await axe.run({ runOnly: { type: 'tag', values: tags } })).violations;
      });
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
      expect(await page.evaluate(() => (globalThis as unknown as { jumps: { sum: number } }).jumps.sum)).toBeLessThan(
        0.01,
      );
      expect((await Promise.all(sizes)).reduce((sum, size) => sum + size, 0)).toBeLessThan(60 * 1024);
      await shot(page, `load-check-plain-${scheme}`);
      await close();
    },
  );
});
