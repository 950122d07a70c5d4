import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { FastifyInstance } from 'fastify';

const packBrotli = promisify(brotliCompress);
const packGzip = promisify(gzip);

/** Below this a packed page is hardly smaller, and one packet of the network either way. */
const LEAST_BYTES = 1_400;
/** A third the size in a few milliseconds; higher takes ten times as long for a tenth less. */
const BROTLI_QUALITY = 4;

/**
 * Pages travel packed: a yard's signal is poor. Only pages, which hold no secret that an attacker's own words in them
 * could be compressed against: sign-in is a cookie, and forms are guarded by where they come from.
 */
export function packPages(server: FastifyInstance): void {
  server.addHook('onSend', async (request, reply, payload) => {
    const isPage = String(reply.getHeader('content-type') ?? '').startsWith('text/html');
    if (!isPage || typeof payload !== 'string' || payload.length < LEAST_BYTES) return payload;
    reply.header('vary', 'accept-encoding');
    const accepts = String(request.headers['accept-encoding'] ?? '');
    const encoding = /\bbr\b/.test(accepts) ? 'br' : /\bgzip\b/.test(accepts) ? 'gzip' : null;
    if (encoding === null) return payload;
    const packed =
      encoding === 'br'
        ? await packBrotli(payload, { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } })
        : await packGzip(payload);
    reply.header('content-encoding', encoding).header('content-length', packed.length);
    return packed;
  });
}
