import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ApiAnswer } from '../support/api-client.js';
import { type ApiDescription, ApiSchema } from '../support/api-schema.js';
import { startApp, type TestApp } from '../support/app.js';
import { isAbout, STRAY_FIELD, shortened, spoiled } from '../support/spoiled.js';
import { tableSums } from '../support/table-sums.js';
import { pathOf, type Writing, type YardByApi, yardByApi } from '../support/yard-by-api.js';

let service: TestApp;
let full: YardByApi;
let schema: ApiSchema;
let before: Record<string, string>;

beforeAll(async () => {
  service = await startApp();
  full = await yardByApi(service, 'Kestrel');
  schema = new ApiSchema((await service.app.inject({ url: '/api/openapi.json' })).json() as ApiDescription);
  before = await tableSums(service.databaseUrl);
});
afterAll(() => service.close());

/** Fields that a use case reads and its route does not offer: the address has said them. */
const SAID_BY_ADDRESS = new Set([
  ...['trailerId', 'buildSheetId', 'partId', 'tripId', 'readingId', 'checkRecordId', 'holdId', 'machineId', 'jobId'],
  'handoverId',
  ...['towVehicleId', 'checkKindId', 'correctsId', 'neverTaken', 'name', 'customer', 'note'],
]);

describe('whatever a program sends', () => {
  test('each bad field is refused by name with its fix, and not one row of any table changes', async () => {
    const wrong: string[] = [];
    let tried = 0;
    for (const writing of full.writings) {
      for (const { path, bad, value } of spoiled(writing.body)) {
        tried += 1;
        const answer = await send(writing, bad);
        const says = `${writing.method} ${writing.route} with ${path} = ${JSON.stringify(value)?.slice(0, 40)}`;
        const fields = fieldsOf(answer);
        const named = fields.find(({ field }) => isAbout(field, path));
        if (answer.status !== 422) wrong.push(`${says}: ${answer.status} ${answer.text.slice(0, 200)}`);
        else if (named === undefined) wrong.push(`${says} names only ${fields.map(({ field }) => field)}`);
        else if (!/^[A-Z"].{12,}[.]$/s.test(named.message)) wrong.push(`${says} says only: ${named.message}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(700);
    expect(await tableSums(service.databaseUrl)).toEqual(before);
    // A fuse: some hundreds of requests, each with its transaction.
  }, 900_000);

  test('a field that must be there is asked for by name', async () => {
    const wrong: string[] = [];
    for (const writing of full.writings) {
      const needed = requiredIn(writing);
      for (const { path, bad } of shortened(writing.body).filter((one) => needed.includes(one.path))) {
        const answer = await send(writing, bad);
        const isNamed = fieldsOf(answer).some(({ field }) => isAbout(field, path));
        if (answer.status !== 422 || !isNamed) wrong.push(`${writing.route} without ${path}: ${answer.text}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(await tableSums(service.databaseUrl)).toEqual(before);
  });

  test('the description names just the fields that are read', async () => {
    const wrong: string[] = [];
    // A computation's fields are in a schema of its own, asked for by its name.
    for (const writing of full.writings.filter(({ route }) => route !== '/api/calc/:computation')) {
      for (const { path, bad } of spoiled(writing.body).filter(({ path }) => path.endsWith(STRAY_FIELD))) {
        const answer = await send(writing, bad);
        const told = fieldsOf(answer).find(({ field }) => field === path)?.message ?? '';
        const read = /use one of: (.*)\.$/.exec(told)?.[1]?.split(', ');
        if (read === undefined) continue;
        const described = propertiesAt(writing, path);
        const hidden = described.filter((field) => !read.includes(field === 'base64' ? 'bytes' : field));
        const undescribed = read.filter(
          (field) => !described.includes(field === 'bytes' ? 'base64' : field) && !SAID_BY_ADDRESS.has(field),
        );
        if (hidden.length + undescribed.length > 0) {
          wrong.push(`${writing.route} at ${path}: describes unread ${hidden}, and leaves out ${undescribed}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  }, 600_000);

  test('what the address has said is not said again in the body', async () => {
    const { trailerId } = full.ids;
    const answer = await full.owner.send('POST', `/api/trailers/${trailerId}/holds`, { reason: 'bent', trailerId });
    expect(answer.status).toBe(422);
    expect(fieldsOf(answer)).toEqual([{ field: 'trailerId', message: expect.stringContaining('leave it out') }]);
  });

  test('a photo is refused by the name it was sent under', async () => {
    const at = `/api/trailers/${full.ids.trailerId}/checks`;
    const check = full.writings.find(({ route }) => route.endsWith('/checks'))?.body;
    for (const base64 of ['not base64!', '', 'aGVsbG8=', 7]) {
      const answer = await full.owner.send('POST', at, { ...check, photos: [{ mediaType: 'image/png', base64 }] });
      expect(answer.status, String(base64)).toBe(422);
      expect(fieldsOf(answer).map(({ field }) => field)).toEqual(['photos[0].base64']);
    }
    expect(await tableSums(service.databaseUrl)).toEqual(before);
  });

  test('a parameter of a list that is misspelt or out of range is refused, not passed over', async () => {
    for (const [query, field] of [
      ['page=0', 'page'],
      ['page=x', 'page'],
      ['page=1e99', 'page'],
      ['page=1&page=2', 'page'],
      ['readiness=shiny', 'readiness'],
      ['redyness=due', 'redyness'],
      [`text=${'x'.repeat(200)}`, 'text'],
    ] as const) {
      const answer = await full.owner.send('GET', `/api/trailers?${query}`);
      expect([query, answer.status, [...new Set(fieldsOf(answer).map((one) => one.field))]]).toEqual([
        query,
        422,
        [field],
      ]);
    }
    const odd = await full.owner.send('GET', `/api/trailers?text=${encodeURIComponent("%_\\'; drop table trailer")}`);
    expect(odd).toMatchObject({ status: 200, json: { rows: [], total: 0 } });
    expect((await full.owner.send('GET', '/api/trailers?text=%00')).status).toBeLessThan(500);
  });
});

describe('a request that cannot be read', () => {
  const raw = (payload: string, type: string | null, path = `/api/trailers`) =>
    service.app.inject({
      method: 'POST',
      url: path,
      headers: { authorization: `Bearer ${full.owner.key}`, ...(type === null ? {} : { 'content-type': type }) },
      payload,
    });

  test('is told what it was: no JSON, no object, no JSON type, too large', async () => {
    for (const [payload, type, status, kind] of [
      ['{"yardNumber":', 'application/json', 400, 'unreadable'],
      ['', 'application/json', 400, 'unreadable'],
      ['{"__proto__":{"role":"owner"}}', 'application/json', 400, 'unreadable'],
      ['[]', 'application/json', 422, 'invalid'],
      ['"T-07"', 'application/json', 422, 'invalid'],
      ['null', 'application/json', 422, 'invalid'],
      ['yardNumber=T-07', 'application/x-www-form-urlencoded', 415, 'wrong-media-type'],
      ['{"yardNumber":"T-07"}', 'text/plain', 415, 'wrong-media-type'],
      ['<trailer/>', 'application/xml', 415, 'wrong-media-type'],
      [`{"note":"${'x'.repeat(1_100_000)}"}`, 'application/json', 413, 'too-large'],
    ] as const) {
      const answer = await raw(payload, type);
      expect([payload.slice(0, 40), answer.statusCode, answer.json().problem?.kind]).toEqual([
        payload.slice(0, 40),
        status,
        kind,
      ]);
    }
  });

  test('only a check, with its photos, may be larger', async () => {
    const photo = { mediaType: 'image/png', base64: Buffer.alloc(1_500_000).toString('base64') };
    const answer = await raw(
      JSON.stringify({ checkKindId: full.ids.checkKindId, doneOn: '2026-03-01', photos: [photo] }),
      'application/json',
      `/api/trailers/${full.ids.trailerId}/checks`,
    );
    expect(answer.statusCode).toBe(422);
    expect(answer.json().problem.fields.map((one: { field: string }) => one.field)).toEqual(['photos[0].base64']);
  });

  test('for an address that is none, or an id that is none, is told that nothing is there', async () => {
    for (const path of ['/api/trailers/7', "/api/trailers/'or'1", '/api/nothing', `/api/trailers/${NOBODY}`]) {
      const answer = await full.owner.send('GET', path);
      expect([path, answer.status, (answer.json as Refused).problem.kind]).toEqual([path, 404, 'not-found']);
    }
    expect(await tableSums(service.databaseUrl)).toEqual(before);
  });
});

const NOBODY = '0197a000-0000-7000-8000-000000000000';

interface Refused {
  readonly problem: {
    readonly kind: string;
    readonly fields?: readonly { readonly field: string; readonly message: string }[];
  };
}

function fieldsOf({ json }: ApiAnswer): readonly { readonly field: string; readonly message: string }[] {
  return (json as Refused | null)?.problem?.fields ?? [];
}

function send({ method, route, params }: Writing, body: unknown): Promise<ApiAnswer> {
  return full.owner.send(method, pathOf(route, params), body);
}

type Schema = Readonly<Record<string, unknown>>;

function requiredIn({ method, route }: Writing): readonly string[] {
  const described = schema.operation(method, route).requestBody?.content['application/json'].schema ?? {};
  return (schema.behind(described).required ?? []) as readonly string[];
}

/** Names of the fields that the description gives for the object in which `path` lies. */
function propertiesAt({ method, route, body }: Writing, path: string): readonly string[] {
  let at: Schema = schema.operation(method, route).requestBody?.content['application/json'].schema ?? {};
  let value: unknown = body;
  for (const step of path
    .replace(/\[(\d+)\]/g, '.$1')
    .split('.')
    .slice(0, -1)) {
    value = (value as Schema)[step];
    at = stepInto(resolved(at), step);
    at = branch(resolved(at), value);
  }
  return Object.keys((resolved(at).properties ?? {}) as object);
}

function stepInto(at: Schema, step: string): Schema {
  return /^\d+$/.test(step) ? (at.items as Schema) : ((at.properties as Record<string, Schema>)[step] ?? {});
}

/** Behind references, and the part that is not null. */
function resolved(at: Schema): Schema {
  const behind = schema.behind(at);
  const some = (behind.anyOf as readonly Schema[] | undefined)?.find((one) => one.type !== 'null');
  return some === undefined ? behind : resolved(some);
}

/** Of several kinds, the one that the value is of. */
function branch(at: Schema, value: unknown): Schema {
  const kinds = at.oneOf as readonly Schema[] | undefined;
  const kind = (value as { kind?: unknown } | null)?.kind;
  return (
    kinds?.find((one) => {
      const properties = resolved(one).properties as Record<string, Schema> | undefined;
      return properties?.kind?.const === kind || (properties?.kind?.enum as unknown[] | undefined)?.includes(kind);
    }) ?? at
  );
}
