import { type CanActivate, type ExecutionContext, Injectable, UnsupportedMediaTypeException } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';

const WITHOUT_BODY = new Set(['GET', 'HEAD', 'OPTIONS', 'DELETE']);

/** What changes something comes as JSON. A form, which any page can send, is not taken here. */
@Injectable()
export class JsonOnlyGuard implements CanActivate {
  canActivate(context: ExecutionContext): boolean {
    const { method, headers } = context.switchToHttp().getRequest<FastifyRequest>();
    if (WITHOUT_BODY.has(method)) return true;
    const type = headers['content-type']?.split(';', 1)[0]?.trim().toLowerCase();
    if (type === 'application/json') return true;
    throw new UnsupportedMediaTypeException();
  }
}
