import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { CheckKindStore } from '../../src/store/check-kind-store.js';
import { Database } from '../../src/store/database.js';
import { PASSWORD, startApp, type TestApp } from '../support/app.js';

const YARD = { name: 'Cold Spring Rental', place: 'Cold Spring', timeZone: 'America/Denver' };
const OWNER = { yourName: 'Marl Tobin', email: 'marl@coldspring.example', password: PASSWORD };

describe('the first real yard', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  test('a slip in either half is named, and nothing is made', async () => {
    const answer = await service
      .browser()
      .post('/first-run', { ...YARD, ...OWNER, timeZone: 'Mars/Crater', password: 'short' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Choose a time zone of the list, such as America/Chicago.');
    expect(answer.body).toContain('Choose a password of at least 10 characters');
    expect(answer.body).toContain('value="Cold Spring Rental"');
    expect(answer.body).toContain('value="Marl Tobin"');
    expect((await service.browser().post('/sign-in', OWNER)).status).toBe(422);
    expect(await service.app.get(Database).yardIds()).toEqual([]);
  });

  test('is set up by anyone as long as there is none, with its owner and the usual checks', async () => {
    expect((await service.browser().get('/sign-in')).body).toContain('Set up your own yard');
    const browser = service.browser();
    expect((await browser.get('/first-run')).status).toBe(200);
    expect(await browser.post('/first-run', { ...YARD, ...OWNER })).toMatchObject({ status: 303, location: '/' });
    expect((await browser.get('/people')).body).toContain('Marl Tobin, owner');

    const [yardId = ''] = await service.app.get(Database).yardIds();
    const kinds = await service.app.get(Database).inYard(yardId, (tx) => service.app.get(CheckKindStore).list(tx));
    expect(kinds.map(({ code }) => code).sort()).toEqual(DEFAULT_CHECK_KINDS.map(({ code }) => code).sort());
  });

  test('after it strangers are told to be invited', async () => {
    const page = await service.browser().get('/first-run');
    expect(page.body).toContain('By invitation');
    const tried = await service.browser().post('/first-run', { ...YARD, ...OWNER, email: 'stranger@else.example' });
    expect(tried.status).toBe(403);
    expect((await service.browser().get('/sign-in')).body).not.toContain('Set up your own yard');
    expect(await service.app.get(Database).yardIds()).toHaveLength(1);
  });

  test('its owner may set up another, and then works in that one', async () => {
    const browser = await service.signedIn(OWNER);
    expect((await browser.get('/first-run')).body).toContain('Marl Tobin (marl@coldspring.example) will be its owner.');
    expect((await browser.post('/first-run', { ...YARD, name: 'Second Yard' })).location).toBe('/');
    expect((await browser.get('/people')).body).toContain('Work in Cold Spring Rental');
  });
});

describe('with sign-up open', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp({ signUp: 'open' });
  });
  afterAll(() => service.close());

  test('anyone may set up a yard, but not with an address somebody has', async () => {
    expect((await service.browser().post('/first-run', { ...YARD, ...OWNER })).status).toBe(303);
    const taken = await service.browser().post('/first-run', { ...YARD, ...OWNER, name: 'Thief' });
    expect(taken.status).toBe(422);
    expect(taken.body).toContain('Somebody signs in with this address already.');
    const other = await service.browser().post('/first-run', { ...YARD, ...OWNER, email: 'second@else.example' });
    expect(other.status).toBe(303);
    expect(await service.app.get(Database).yardIds()).toHaveLength(2);
  });
});
