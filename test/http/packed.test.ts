import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startApp, type TestApp } from '../support/app.js';

let service: TestApp;

beforeAll(async () => {
  service = await startApp();
  await service.makeYard('Packed Field');
});
afterAll(() => service?.close());

function get(url: string, accepts?: string) {
  return service.app.inject({
    method: 'GET',
    url,
    headers: { host: 'yard.test', ...(accepts === undefined ? {} : { 'accept-encoding': accepts }) },
  });
}

describe('what goes over a poor signal', () => {
  test.each([
    ['br', brotliDecompressSync],
    ['gzip', gunzipSync],
  ] as const)('a page is packed as %s, the same page', async (encoding, unpack) => {
    const plain = await get('/sign-in');
    const packed = await get('/sign-in', encoding);
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(packed.headers).toMatchObject({
      'content-encoding': encoding,
      vary: expect.stringContaining('accept-encoding'),
    });
    expect(unpack(packed.rawPayload).toString()).toBe(plain.body);
    expect(packed.rawPayload.length).toBeLessThan(plain.body.length * 0.6);
    expect(Number(packed.headers['content-length'])).toBe(packed.rawPayload.length);
  });

  test('what pages are drawn with is packed and kept for ever; whoever cannot unpack gets it plain', async () => {
    const page = (await get('/sign-in')).body;
    const [sheet = ''] = /\/assets\/axlebook-[0-9a-f]+\.css/.exec(page) ?? [];
    const plain = await get(sheet);
    const packed = await get(sheet, 'gzip, br');
    expect(packed.headers).toMatchObject({
      'content-encoding': 'br',
      'cache-control': expect.stringContaining('immutable'),
    });
    expect(brotliDecompressSync(packed.rawPayload).toString()).toBe(plain.body);
    expect(plain.body).toContain('.picture');
  });
});
