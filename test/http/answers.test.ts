import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startApp, type TestApp } from '../support/app.js';

let service: TestApp;
beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

describe('every answer', () => {
  test('lets a page load nothing but what the service serves', async () => {
    for (const path of ['/sign-in', '/no-such-page', '/health', '/api/no-such-thing']) {
      const policy = String((await service.browser().get(path)).headers['content-security-policy']);
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).not.toMatch(/unsafe-|\*|https?:/);
    }
  });

  test('a page that does not exist is said so in words, with no stack', async () => {
    const answer = await service.browser().get('/no-such-page');
    expect(answer.status).toBe(404);
    expect(answer.body).toContain('There is nothing at this address');
    expect(answer.body).not.toMatch(/node_modules|\.ts:|Exception|Cannot GET/);
  });

  test('the API answers in JSON, also when it refuses', async () => {
    const answer = await service.browser().get('/api/no-such-thing');
    expect(answer.status).toBe(404);
    expect(JSON.parse(answer.body)).toEqual({
      problem: {
        kind: 'not-found',
        title: 'Nothing here',
        message: expect.stringContaining('nothing at this address'),
      },
    });
  });

  test('a body that is no JSON, and one that is too big, are refused in words', async () => {
    const json = { 'content-type': 'application/json' };
    const bad = await service.app.inject({ method: 'POST', url: '/sign-in', headers: json, payload: '{"half":' });
    expect(bad.statusCode).toBe(400);
    expect(bad.body).toContain('not in a form the service understands');
    const big = await service.app.inject({
      method: 'POST',
      url: '/sign-in',
      headers: json,
      payload: `"${'x'.repeat(1_100_000)}"`,
    });
    expect(big.statusCode).toBe(413);
    expect(big.body).toContain('larger than the service takes');
  });

  test('what a form holds may be anything: it is asked again, never a failure', async () => {
    for (const fields of [
      [
        ['email', 'a'],
        ['email', 'b'],
      ],
      [['email[x]', '1']],
    ] as const) {
      const answer = await service.browser().post('/sign-in', fields);
      expect(answer.status).toBe(422);
    }
    const poisoned = await service.browser().post('/sign-in', [['__proto__', '1']]);
    expect(poisoned.status).toBe(400);
    const odd = await service.app.inject({
      method: 'POST',
      url: '/sign-in',
      payload: { email: { deep: 1 }, password: 7 },
    });
    expect(odd.statusCode).toBe(422);
  });

  test('the service says that it is up', async () => {
    expect(await service.browser().get('/health')).toMatchObject({ status: 200, body: '{"status":"ok"}' });
  });
});
