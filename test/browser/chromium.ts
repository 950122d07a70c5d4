import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';

/** `npm test` names the one it found; run alone, the usual place is looked at. */
const PATHS = [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'];

/** Quiet: nothing it does on its own leaves this machine. */
const FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A real Chromium. Root may not use its sandbox, so for root it goes without. */
export function openChromium(): Promise<Browser> {
  const executablePath = PATHS.find((path) => path !== undefined && path !== '' && existsSync(path));
  if (executablePath === undefined) {
    throw new Error('No Chromium here. Install it (apt-get install chromium), or set CHROMIUM_PATH to one.');
  }
  const sandbox = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium.launch({ executablePath, args: [...FLAGS, ...sandbox] });
}

/** Signs in through the form, as a person does. */
export async function signIn(page: Page, address: string, email: string, password: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.getByLabel(/^Mail address/).fill(email);
  await page.getByLabel(/^Password/i).fill(password);
  await page.getByRole('button', { name: /sign in/i }).click();
  await page.waitForURL(`${address}/`);
}
