import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Callers } from './callers.js';
import { Elsewhere } from './elsewhere.js';
import { OPEN } from './open.js';
import { isApi } from './paths.js';

/** Lets a request through when somebody of a yard sent it, and puts them on it. Routes marked `@Open()` pass. */
@Injectable()
export class SignInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly callers: Callers,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    if (this.reflector.getAllAndOverride<boolean>(OPEN, [context.getHandler(), context.getClass()])) return true;
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    const found = await this.callers.find(request, isApi(request) ? 'api' : 'page');
    if (found.kind === 'nobody') throw new Elsewhere(`/sign-in${wayBack(request)}`, 401);
    for (const cookie of found.cookies) reply.header('set-cookie', cookie);
    if (found.kind === 'no-yard') throw new Elsewhere('/first-run', 403);
    request.caller = found.caller;
    // What one person saw must not come out of a shared browser's cache, or a proxy's, for the next.
    reply.header('cache-control', 'private, no-store');
    return true;
  }
}

/** A page asked for is shown after sign-in; a form sent is not, because it would have to be sent again. */
function wayBack(request: FastifyRequest): string {
  return request.method === 'GET' && request.url !== '/' ? `?next=${encodeURIComponent(request.url)}` : '';
}
