import { Controller, Get, Headers, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Open } from '../../http/open.js';
import { type Asset, packedFor } from './asset.js';
import { islandAsset, islandScripts } from './island-scripts.js';
import { stylesheet } from './stylesheet.js';

/** The three lamps of the header board. */
const ICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="4" fill="#2a343a"/><rect y="24" width="32" height="5" fill="#fff"/><rect y="24" width="12" height="5" fill="#b01420"/><rect x="20" y="24" width="12" height="5" fill="#b01420"/><g fill="#ffb733"><circle cx="7" cy="12" r="4"/><circle cx="16" cy="12" r="4"/><circle cx="25" cy="12" r="4"/></g></svg>`;

/** What pages are drawn with. Open to anyone: the sign-in page needs it too. */
@Open()
@Controller()
export class AssetController {
  @Get('assets/:file')
  asset(
    @Param('file') file: string,
    @Headers('accept-encoding') accepts: string | undefined,
    @Res() reply: FastifyReply,
  ): void {
    const asset = assetAt(`/assets/${file}`);
    if (asset === undefined) {
      reply.status(404).type('text/plain; charset=utf-8').send('No such file; load the page again.');
      return;
    }
    const { encoding, body } = packedFor(asset, accepts ?? '');
    if (encoding !== null) reply.header('content-encoding', encoding);
    reply
      .header('vary', 'accept-encoding')
      .header('cache-control', 'public, max-age=31536000, immutable')
      .type(asset.mediaType)
      .send(body);
  }

  /** Keeps the sheets of whoever is signed in on their phone. Asked for anew each time, so that a mended one takes over. */
  @Get('sw.js')
  worker(@Res() reply: FastifyReply): void {
    const { mediaType, body } = islandAsset('sheet-worker');
    reply.header('cache-control', 'no-cache').type(mediaType).send(body);
  }

  @Get(['favicon.svg', 'favicon.ico'])
  icon(@Res() reply: FastifyReply): void {
    reply.header('cache-control', 'public, max-age=86400').type('image/svg+xml').send(ICON);
  }
}

function assetAt(path: string): Asset | undefined {
  const sheet = stylesheet();
  return path === sheet.path ? sheet : [...islandScripts().values()].find((script) => script.path === path);
}
