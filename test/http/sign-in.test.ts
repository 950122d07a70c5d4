import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SIGN_IN_TRIES } from '../../src/http/sign-in/sign-in-library.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';

let service: TestApp;
let yard: YardOfTest;

beforeAll(async () => {
  service = await startApp();
  yard = await service.makeYard('Clay Bottom');
});
afterAll(() => service.close());

describe('signing in and out', () => {
  test('a page asked for is shown after signing in', async () => {
    const browser = service.browser();
    const sent = await browser.get('/people?said=key');
    expect(sent).toMatchObject({ status: 303, location: '/sign-in?next=%2Fpeople%3Fsaid%3Dkey' });
    const form = await browser.get(sent.location ?? '');
    expect(form.body).toContain('name="next" value="/people?said=key"');
    const entered = await browser.post('/sign-in', {
      email: yard.owner.email,
      password: PASSWORD,
      next: '/people?said=key',
    });
    expect(entered).toMatchObject({ status: 303, location: '/people?said=key' });
    expect((await browser.get('/people')).body).toContain(yard.owner.name);
  });

  test('the session cookie is out of reach of scripts and of other sites', async () => {
    const entered = await service.browser().post('/sign-in', { email: yard.hand.email, password: PASSWORD });
    expect(String(entered.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Lax/);
  });

  test('capitals in the mail address do not matter', async () => {
    const entered = await service
      .browser()
      .post('/sign-in', { email: yard.hand.email.toUpperCase(), password: PASSWORD });
    expect(entered.status).toBe(303);
  });

  test('nobody is sent to another site after signing in', async () => {
    for (const next of ['https://else.example/', '//else.example', '/\\else.example', 'javascript:alert(1)']) {
      const entered = await service
        .browser()
        .post('/sign-in', { email: yard.owner.email, password: PASSWORD, next }, { from: '203.0.113.9' });
      expect(entered, next).toMatchObject({ status: 303, location: '/' });
    }
  });

  test('a wrong password says so at the form, keeps the address and lets nobody in', async () => {
    const browser = service.browser();
    const answer = await browser.post('/sign-in', { email: yard.owner.email, password: 'not this one' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('do not go together');
    expect(answer.body).toContain(`value="${yard.owner.email}"`);
    expect(answer.body).not.toContain('not this one');
    expect((await browser.get('/people')).status).toBe(303);
  });

  test('an address nobody has is answered like a wrong password', async () => {
    const known = await service
      .browser()
      .post('/sign-in', { email: yard.owner.email, password: 'not this one' }, { from: '203.0.113.10' });
    const unknown = await service
      .browser()
      .post('/sign-in', { email: 'nobody@claybottom.example', password: 'not this one' }, { from: '203.0.113.10' });
    expect(unknown.status).toBe(known.status);
    expect(unknown.body.replace('nobody@claybottom.example', '')).toBe(known.body.replace(yard.owner.email, ''));
  });

  test('an empty form names both fields', async () => {
    const answer = await service.browser().post('/sign-in');
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Enter the mail address you sign in with.');
    expect(answer.body).toContain('Enter your password.');
  });

  test('signing out ends the session, also for somebody who kept the cookie', async () => {
    const browser = await service.signedIn(yard.shop);
    const kept = new Map(browser.cookies);
    expect(await browser.post('/sign-out')).toMatchObject({ status: 303, location: '/sign-in?said=out' });
    for (const [name, value] of kept) browser.cookies.set(name, value);
    expect(await browser.get('/people')).toMatchObject({ status: 303, location: '/sign-in?next=%2Fpeople' });
  });
});

describe('guessing', () => {
  // After the first two, too long to be worth hashing: the tries are counted all the same, and the test is quick.
  const wrong = (n: number) => (n < 2 ? `guess number ${n}` : 'x'.repeat(200));

  test('twenty tries from one address, then it must wait, even with the right password; others need not', async () => {
    const guess = (password: string, from: string) =>
      service.browser().post('/sign-in', { email: yard.viewer.email, password }, { from });
    for (let n = 0; n < SIGN_IN_TRIES; n += 1) expect((await guess(wrong(n), '203.0.113.1')).status).toBe(422);
    const stopped = await guess(PASSWORD, '203.0.113.1');
    expect(stopped.status).toBe(429);
    expect(stopped.body).toContain('Wait 5 minutes, then try again.');
    expect((await guess(PASSWORD, '203.0.113.2')).status).toBe(303);
  });

  test('the address a client claims to have does not give it fresh tries', async () => {
    const guess = (claimed: string) =>
      service
        .browser()
        .post(
          '/sign-in',
          { email: yard.viewer.email, password: 'x'.repeat(200) },
          { from: '203.0.113.3', headers: { 'x-forwarded-for': claimed, 'x-axlebook-client': claimed } },
        );
    for (let n = 0; n < SIGN_IN_TRIES; n += 1) await guess(`198.51.100.${n}`);
    expect((await guess('198.51.100.99')).status).toBe(429);
  });
});

describe('another site', () => {
  const foreign = { headers: { origin: 'https://else.example' } };

  test('its page cannot make a signed-in browser change anything', async () => {
    const browser = await service.signedIn(yard.owner);
    const invited = { email: 'new@claybottom.example', role: 'owner' };
    expect((await browser.post('/people/invitations', invited, foreign)).status).toBe(403);
    const crossSite = { headers: { origin: 'http://yard.test', 'sec-fetch-site': 'cross-site' } };
    expect((await browser.post('/people/invitations', invited, crossSite)).status).toBe(403);
    const sibling = { headers: { origin: 'http://yard.test', 'sec-fetch-site': 'same-site' } };
    expect((await browser.post('/people/invitations', invited, sibling)).status).toBe(403);
    expect((await browser.post('/people/invitations', invited, { headers: { origin: 'null' } })).status).toBe(403);
    expect((await browser.get('/people')).body).not.toContain('new@claybottom.example');
  });

  test('its page cannot sign a browser in or out', async () => {
    const browser = await service.signedIn(yard.owner);
    expect((await browser.post('/sign-out', {}, foreign)).status).toBe(403);
    expect((await browser.get('/people')).status).toBe(200);
    const stranger = await service.browser().post('/sign-in', { email: yard.hand.email, password: PASSWORD }, foreign);
    expect(stranger.status).toBe(403);
  });
});
