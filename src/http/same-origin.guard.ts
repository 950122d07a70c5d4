import { type CanActivate, type ExecutionContext, ForbiddenException, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Config } from '../config.js';

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses a change that another site's page sends with this browser's cookies. Our forms work without script, so no
 * token is woven into them; the browser itself says where a form stood. A request that says nothing about its origin
 * comes from no browser of this decade and carries no cookie that another site could use (they are SameSite=Lax).
 */
@Injectable()
export class SameOriginGuard implements CanActivate {
  readonly #ownHost: string;

  constructor(config: Config) {
    this.#ownHost = new URL(config.baseUrl).host;
  }

  canActivate(context: ExecutionContext): boolean {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    if (SAFE.has(request.method) || this.#isOwn(request)) return true;
    throw new ForbiddenException();
  }

  #isOwn({ headers }: FastifyRequest): boolean {
    const site = headers['sec-fetch-site'];
    if (site !== undefined) return site === 'same-origin' || site === 'none';
    if (headers.origin === undefined) return true;
    // The host alone is compared: behind a proxy we cannot know whether the outside spoke https.
    const host = URL.parse(headers.origin)?.host;
    return host !== undefined && host !== '' && (host === this.#ownHost || host === headers.host);
  }
}
