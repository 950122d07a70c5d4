import type { FastifyHelmetOptions } from '@fastify/helmet';

/**
 * Pages may load what this service serves, and nothing else: no inline script or style, no foreign origin, no frame.
 * `data:` pictures are let in for previews of photos and drawn codes. Written out, because the library's own list
 * allows more and upgrades plain HTTP, which would break a yard that runs it on its own network.
 */
export function securityHeaders(baseUrl: string): FastifyHelmetOptions {
  const self = ["'self'"];
  return {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: self,
        styleSrc: self,
        imgSrc: [...self, 'data:', 'blob:'],
        fontSrc: self,
        connectSrc: self,
        manifestSrc: self,
        workerSrc: self,
        formAction: self,
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: baseUrl.startsWith('https:') ? { maxAge: 15_552_000, includeSubDomains: false } : false,
    referrerPolicy: { policy: 'same-origin' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    xFrameOptions: { action: 'deny' },
  };
}
