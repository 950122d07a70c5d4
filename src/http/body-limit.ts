import type { FastifyInstance } from 'fastify';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The largest body a route takes, in bytes, where it is not the service's own limit. */
    bodyLimitBytes?: number;
  }
}

/** Lets a route take a larger body than others, by `@RouteConfig({ bodyLimitBytes })`. Call it before routes are made. */
export function honourBodyLimits(fastify: FastifyInstance): void {
  fastify.addHook('onRoute', (route) => {
    const limit = route.config?.bodyLimitBytes;
    if (limit !== undefined) route.bodyLimit = limit;
  });
}
