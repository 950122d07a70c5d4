import { type ArgumentsHost, Catch, type ExceptionFilter, Logger } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Elsewhere } from './elsewhere.js';
import { type Failure, failureOf } from './failure.js';
import { isApi } from './paths.js';

/** Answers whatever a route threw: JSON for programs, a page for people. What was thrown goes to the log alone. */
@Catch()
export class FailureFilter implements ExceptionFilter {
  readonly #log = new Logger('Failure');
  readonly #page: (failure: Failure) => string;

  constructor(page: (failure: Failure) => string) {
    this.#page = page;
  }

  catch(thrown: unknown, host: ArgumentsHost): void {
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const failure = failureOf(thrown);
    if (failure.status >= 500) {
      this.#log.error({ err: thrown }, `${request.method} ${request.routeOptions?.url ?? ''} failed`);
    }
    if (reply.sent) return;
    reply.header('cache-control', 'no-store');
    if (isApi(request)) {
      if (failure.status === 401) reply.header('www-authenticate', 'Bearer realm="Axlebook"');
      const { kind, title, text, fields } = failure;
      const problem = { kind, title, message: text, ...(kind === 'invalid' ? { fields } : {}) };
      reply.status(failure.status).type('application/json; charset=utf-8').send({ problem });
    } else if (thrown instanceof Elsewhere) {
      reply.status(303).header('location', thrown.path).send();
    } else {
      reply.status(failure.status).type('text/html; charset=utf-8').send(this.#page(failure));
    }
  }
}
