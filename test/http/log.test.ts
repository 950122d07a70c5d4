import { afterAll, beforeAll, expect, test } from 'vitest';
import { shortError } from '../../src/http/log-settings.js';
import { PASSWORD, startApp, type TestApp } from '../support/app.js';

// A file of its own: the logger of the first app in a process stays for the later ones.
let service: TestApp;

beforeAll(async () => {
  service = await startApp({ logLevel: 'trace' });
});
afterAll(() => service.close());

test('neither session tokens, passwords nor links with secrets are ever logged', async () => {
  const { owner } = await service.makeYard('Loud Hill');
  const browser = await service.signedIn(owner);
  await browser.get('/people');
  await browser.post('/sign-in', { email: owner.email, password: 'wrong but secret' });
  await browser.post('/forgot-password', { email: owner.email });
  await browser.get('/reset-password?token=a-reset-token-to-look-for');
  await browser.get('/invitation?token=join_an-invitation-to-look-for');
  await browser.get('/no-such-page?token=a-lost-token-to-look-for');
  const log = service.log.join('');
  expect(log).toContain('POST /sign-in 303');
  const [cookie = ''] = browser.cookies.values();
  const token = decodeURIComponent(cookie).split('.')[0] ?? '';
  expect(token.length).toBeGreaterThan(20);
  for (const secret of [token, PASSWORD, 'wrong but secret', 'a-reset-token', 'join_an', 'a-lost-token', owner.email]) {
    expect(log).not.toContain(secret);
  }
});

test('an error of the database driver is logged without the client it carries', () => {
  const error = Object.assign(new Error('connection refused'), {
    code: 'ECONNREFUSED',
    client: { password: 'the database password' },
  });
  expect(JSON.stringify(shortError(error))).not.toContain('the database password');
  expect(shortError(error)).toMatchObject({ type: 'Error', message: 'connection refused', code: 'ECONNREFUSED' });
});
