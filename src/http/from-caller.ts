import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Caller } from '../use-cases/caller.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks; put here by the sign-in guard. */
    caller?: Caller;
  }
}

/** Gives a controller's method the caller that the sign-in guard found. Only for routes that are not `@Open()`. */
export const FromCaller = createParamDecorator((_data: unknown, context: ExecutionContext): Caller => {
  const { caller } = context.switchToHttp().getRequest<FastifyRequest>();
  if (caller === undefined) throw new Error('FromCaller on a route where nobody signs in');
  return caller;
});
