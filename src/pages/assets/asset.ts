import { brotliCompressSync, gzipSync } from 'node:zlib';

/** A file pages are drawn with. Its name changes with its content, so browsers may keep it for ever. */
export interface Asset {
  readonly path: string;
  readonly mediaType: string;
  readonly body: string;
}

interface Packed {
  readonly encoding: 'br' | 'gzip' | null;
  readonly body: Buffer | string;
}

const packed = new Map<string, Buffer>();

/** The file as small as the asker can read it. Packed once for each way, then kept. */
export function packedFor({ path, body }: Asset, acceptEncoding: string): Packed {
  const encoding = /\bbr\b/.test(acceptEncoding) ? 'br' : /\bgzip\b/.test(acceptEncoding) ? 'gzip' : null;
  if (encoding === null) return { encoding, body };
  const key = `${encoding} ${path}`;
  const done = packed.get(key) ?? (encoding === 'br' ? brotliCompressSync(body) : gzipSync(body));
  packed.set(key, done);
  return { encoding, body: done };
}
