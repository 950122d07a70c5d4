import { type ArgumentsHost, Catch, type ExceptionFilter, Logger } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Failure, failureOf } from './failure.js';

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
    if (failure.status >= 500)
      this.#log.error({ err: thrown }, `${request.method} ${request.routeOptions?.url ?? ''} failed`);
    if (reply.sent) return;
    reply.header('cache-control', 'no-store').status(failure.status);
    if (wantsJson(request)) {
      reply
        .type('application/json; charset=utf-8')
        .send({ error: { title: failure.title, message: failure.text, fields: failure.fields } });
    } else {
      reply.type('text/html; charset=utf-8').send(this.#page(failure));
    }
  }
}

function wantsJson(request: FastifyRequest): boolean {
  return request.url.startsWith('/api/') || request.url === '/health';
}
