import type { FastifyRequest } from 'fastify';

/** Whether a request came to the JSON API, which answers programs, and not to a page. */
export function isApi(request: FastifyRequest): boolean {
  return request.url === '/api' || request.url.startsWith('/api/');
}
