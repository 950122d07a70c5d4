import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApp, type TestApp } from '../support/app.js';
import { type Route, routesOf } from '../support/routes.js';

let service: TestApp;
let routes: readonly Route[];

beforeAll(async () => {
  service = await startApp();
  routes = routesOf(service.app);
});
afterAll(() => service.close());

/** Whoever opens another route to everybody writes it down here, with the reason at hand. */
const OPEN_TO_ALL = [
  // What pages are drawn with.
  'GET /assets/:file',
  'GET /favicon.ico',
  'GET /favicon.svg',
  // Keeps pages on a phone; holds nothing of any yard itself.
  'GET /sw.js',
  // Getting in.
  'GET /sign-in',
  'POST /sign-in',
  'POST /sign-out',
  'GET /forgot-password',
  'POST /forgot-password',
  'GET /reset-password',
  'POST /reset-password',
  'GET /invitation',
  'POST /invitation',
  'GET /first-run',
  'POST /first-run',
  // How the API is spoken; nothing of any yard.
  'GET /api/openapi.json',
  // Asked by whatever keeps the service running.
  'GET /health',
];

/** Opened by a signed secret in the address, from a mail. */
const OPEN_BY_SECRET = /^(GET|POST) \/(answer|notices\/answer|n)\b/;

test('the walk finds the routes', () => {
  expect(routes.length).toBeGreaterThan(20);
});

test('only what must be is open to everybody', () => {
  const open = routes.filter((route) => route.open).map(({ method, path }) => `${method} ${path}`);
  expect(open.filter((route) => !OPEN_BY_SECRET.test(route)).sort()).toEqual([...OPEN_TO_ALL].sort());
});

test('every other route sends a stranger to sign-in, and a program away', async () => {
  for (const { method, path } of routes.filter((route) => !route.open)) {
    const url = path.replace(/:\w+/g, '01890000-0000-7000-8000-000000000000');
    const answer = await service.app.inject({ method: method as 'GET', url });
    if (path === '/api' || path.startsWith('/api/')) expect(answer.statusCode, `${method} ${path}`).toBe(401);
    else
      expect([answer.statusCode, answer.headers.location], `${method} ${path}`).toEqual([
        303,
        expect.stringMatching(/^\/sign-in/),
      ]);
    expect(answer.headers['set-cookie'], `${method} ${path}`).toBeUndefined();
  }
});

test('a key that was never made opens nothing', async () => {
  for (const { method, path } of routes.filter((route) => !route.open && route.path.startsWith('/api'))) {
    const url = path.replace(/:\w+/g, '01890000-0000-7000-8000-000000000000');
    const headers = { authorization: 'Bearer axlebook_made-up' };
    expect((await service.app.inject({ method: method as 'GET', url, headers })).statusCode, url).toBe(401);
  }
});
