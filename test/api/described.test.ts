import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ApiDescription, ApiSchema } from '../support/api-schema.js';
import { startApp, type TestApp } from '../support/app.js';
import { routesOf } from '../support/routes.js';
import { pathOf, type YardByApi, yardByApi } from '../support/yard-by-api.js';

let service: TestApp;
let full: YardByApi;
let description: ApiDescription;
let schema: ApiSchema;

beforeAll(async () => {
  service = await startApp();
  full = await yardByApi(service, 'Kestrel');
  const answer = await service.app.inject({ url: '/api/openapi.json' });
  description = answer.json() as ApiDescription;
  schema = new ApiSchema(description);
});
afterAll(() => service.close());

const apiRoutes = () => routesOf(service.app).filter(({ path }) => path.startsWith('/api/'));

/** Answered in other ways than JSON, or described by a standard of its own. */
const OTHERWISE = ['/api/photos/:photoId', '/api/openapi.json'];

describe('the description of the API', () => {
  test('is valid OpenAPI 3.1, and anybody may read it', async () => {
    const verdict = await new Validator().validate(structuredClone(description) as never);
    expect(verdict).toEqual({ valid: true });
    expect(description).toMatchObject({ openapi: '3.1.0' });
  });

  test('has every route, and no other', () => {
    const described = Object.entries(description.paths).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const registered = apiRoutes().map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
    expect(described.sort()).toEqual(registered.sort());
    expect(registered.length).toBeGreaterThan(50);
  });

  test('says the unit of every number that has one in its name', () => {
    const silent = fieldsOf(description.components.schemas)
      .filter(({ name }) => UNITS.some(({ ends }) => ends.test(name)))
      .filter(({ name, text }) => !UNITS.some(({ ends, says }) => ends.test(name) && says.test(text)))
      .map(({ name, text }) => `${name}: ${text}`);
    expect(silent).toEqual([]);
  });
});

describe('what is really answered', () => {
  test('to every reading is as described', async () => {
    const wrong: string[] = [];
    for (const { method, path } of apiRoutes()) {
      if (method !== 'GET' || OTHERWISE.includes(path)) continue;
      const answer = await full.owner.send('GET', pathOf(path, full.ids));
      if (answer.status !== 200) wrong.push(`${path}: ${answer.status} ${answer.text}`);
      for (const one of schema.wrongInAnswer('GET', path, answer.status, answer.json)) wrong.push(`${path}: ${one}`);
    }
    expect(wrong).toEqual([]);
  });

  test('a photo comes back as it was sent', async () => {
    const answer = await full.owner.send('GET', `/api/photos/${full.ids.photoId}`);
    expect(answer).toMatchObject({ status: 200, headers: { 'content-type': 'image/png' } });
    expect(answer.text.slice(1, 4)).toBe('PNG');
  });

  test('to every refusal is as described', async () => {
    const wrong: string[] = [];
    for (const { method, path } of apiRoutes()) {
      if (OTHERWISE.includes(path)) continue;
      const nothing = path.replace(/:\w+/g, 'no-id');
      const answer = await full.owner.send(method, nothing, method === 'GET' ? undefined : { gvwrLb: 1 });
      if (answer.status < 400) continue;
      for (const one of schema.wrongInAnswer(method, path, answer.status, answer.json)) wrong.push(`${path}: ${one}`);
    }
    expect(wrong).toEqual([]);
  });

  test('to every writing is as described, and so is what was sent', async () => {
    const wrong: string[] = [];
    const done = new Set<string>();
    for (const { method, route, params, body } of full.writings) {
      const answer = await full.owner.send(method, pathOf(route, params), body);
      done.add(`${method} ${route}`);
      // No mail was given up here, so none can be sent again.
      const expected = route.endsWith('/send-again') ? [409] : [200, 201];
      if (!expected.includes(answer.status)) wrong.push(`${method} ${route}: ${answer.status} ${answer.text}`);
      for (const one of schema.wrongInRequest(method, route, body)) wrong.push(`${method} ${route} takes: ${one}`);
      for (const one of schema.wrongInAnswer(method, route, answer.status, answer.json)) {
        wrong.push(`${method} ${route} answers: ${one}`);
      }
    }
    expect(wrong).toEqual([]);
    const writing = apiRoutes().filter(({ method }) => method !== 'GET');
    expect([...done].sort()).toEqual(writing.map(({ method, path }) => `${method} ${path}`).sort());
  });
});

const UNITS = [
  { ends: /Kg$/, says: /\bkg\b/ },
  { ends: /[a-z]N$/, says: /\bN\b/ },
  { ends: /NPerM$/, says: /\b(newtons per metre|N\/m)\b/ },
  { ends: /Km$/, says: /\bkm\b/ },
  { ends: /Kpa$/, says: /\bkPa\b/ },
  {
    ends: /(length|width|height|depth|balancePoint|fromCoupler|ballSize|spacing|thickness|track|wheelbase|clearance|offCentre)M$/i,
    says: /\bm\b/,
  },
  { ends: /Cents$/, says: /\bcents\b/ },
];

function fieldsOf(value: unknown): readonly { name: string; text: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const properties = (value as { properties?: Record<string, unknown> }).properties ?? {};
  return [
    ...Object.entries(properties).map(([name, field]) => ({ name, text: JSON.stringify(field) })),
    ...Object.values(value).flatMap(fieldsOf),
  ];
}
