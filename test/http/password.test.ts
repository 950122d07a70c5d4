import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';

let service: TestApp;
let yard: YardOfTest;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Stone Ford');
});
afterAll(() => service.close());

/** Waits for the letter to be written: it goes out after the answer, so that its time tells nobody anything. */
async function mailTo(email: string): Promise<string> {
  for (;;) {
    const mail = (await service.mails()).find((one) => one.includes(email));
    if (mail !== undefined) return mail.replace(/=\r?\n/g, '').replace(/=3D/g, '=');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

const NEW = 'a dry deck under cover';

describe('a forgotten password', () => {
  test('is set anew by a mailed link, once, and every old session ends', async () => {
    const before = await service.signedIn(yard.hand);
    const asked = await service.browser().post('/forgot-password', { email: yard.hand.email });
    expect(asked.status).toBe(200);
    expect(asked.body).toContain('Look into your mail');

    const mail = await mailTo(yard.hand.email);
    expect(mail).toContain('Subject: Set a new Axlebook password');
    const link = /http:\/\/yard\.test(\/reset-password\?token=([\w-]+))/.exec(mail);
    const [path, token] = [link?.[1] ?? '', link?.[2] ?? ''];
    expect(token.length).toBeGreaterThan(20);

    // A mail scanner looks at the link first; that must not use it up.
    expect((await service.browser().get(path)).body).toContain('Choose a new password');
    expect((await service.browser().get(path)).status).toBe(200);
    const short = await service.browser().post('/reset-password', { token, password: 'short' });
    expect(short.status).toBe(422);
    expect(short.body).toContain('at least 10 characters');

    const set = await service.browser().post('/reset-password', { token, password: NEW });
    expect(set).toMatchObject({ status: 303, location: '/sign-in?said=new-password' });
    expect((await service.browser().get('/sign-in?said=new-password')).body).toContain('The new password holds.');
    expect((await before.get('/people')).status).toBe(303);
    expect((await service.browser().post('/sign-in', { email: yard.hand.email, password: PASSWORD })).status).toBe(422);
    expect((await service.browser().post('/sign-in', { email: yard.hand.email, password: NEW })).status).toBe(303);

    const again = await service.browser().post('/reset-password', { token, password: 'another long password' });
    expect(again.status).toBe(422);
    expect(again.body).toContain('This link does not work');
  });

  test('asking for an address nobody has looks the same and mails nobody', async () => {
    const known = await service
      .browser()
      .post('/forgot-password', { email: yard.shop.email }, { from: '203.0.113.20' });
    const unknown = await service
      .browser()
      .post('/forgot-password', { email: 'who@stoneford.example' }, { from: '203.0.113.20' });
    expect([unknown.status, unknown.body]).toEqual([known.status, known.body]);
    await mailTo(yard.shop.email);
    expect((await service.mails()).some((mail) => mail.includes('who@stoneford.example'))).toBe(false);
  });

  test('the link leads to the configured address, whatever host the request named', async () => {
    await service.browser().post(
      '/forgot-password',
      { email: yard.viewer.email },
      {
        from: '203.0.113.21',
        headers: { host: 'evil.example', origin: 'http://evil.example' },
      },
    );
    const mail = await mailTo(yard.viewer.email);
    expect(mail).toContain('http://yard.test/reset-password');
    expect(mail).not.toContain('evil.example');
  });

  test('five letters an hour from one address are enough', async () => {
    const ask = () => service.browser().post('/forgot-password', { email: yard.owner.email }, { from: '203.0.113.22' });
    for (let n = 0; n < 5; n += 1) expect((await ask()).status).toBe(200);
    expect((await ask()).status).toBe(429);
  });

  test('a link that never was does nothing', async () => {
    const answer = await service
      .browser()
      .post('/reset-password', { token: 'made-up', password: NEW }, { from: '203.0.113.23' });
    expect(answer.status).toBe(422);
    expect((await service.browser().get('/reset-password')).status).toBe(404);
  });
});
