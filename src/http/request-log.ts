import type { LoggerService } from '@nestjs/common';
import type { FastifyInstance } from 'fastify';

const QUIET = new Set(['/health', '/favicon.svg', '/favicon.ico']);

/** Writes one line for each answered request: the route's pattern, never its values, because some of them are keys. */
export function logRequests(fastify: FastifyInstance, logger: LoggerService): void {
  fastify.addHook('onResponse', (request, reply, next) => {
    const route = request.routeOptions.url ?? 'no such route';
    if (!QUIET.has(route) && !route.startsWith('/assets/')) {
      const line = `${request.method} ${route} ${reply.statusCode} in ${Math.round(reply.elapsedTime)} ms`;
      if (reply.statusCode >= 500) logger.error(line);
      else logger.log(line, 'Request');
    }
    next();
  });
}
