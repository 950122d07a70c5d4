import { RequestMethod } from '@nestjs/common';
import { ModulesContainer } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { OPEN } from '../../src/http/open.js';

export interface Route {
  readonly method: string;
  /** With its parameters, such as `/people/:personId`. */
  readonly path: string;
  /** Needs no sign-in. */
  readonly open: boolean;
}

/** Every route of every controller, as Nest's own metadata has it: a test that walks them misses none. */
export function routesOf(app: NestFastifyApplication): readonly Route[] {
  const routes: Route[] = [];
  for (const module of app.get(ModulesContainer).values()) {
    for (const { metatype } of module.controllers.values()) {
      if (metatype === null || metatype === undefined) continue;
      const prototype = metatype.prototype as Record<string, unknown>;
      for (const name of Object.getOwnPropertyNames(prototype)) {
        const handler = name === 'constructor' ? undefined : prototype[name];
        if (typeof handler !== 'function' || !Reflect.hasMetadata('path', handler)) continue;
        const open = [handler, metatype].some((target) => Reflect.getMetadata(OPEN, target) === true);
        const method = RequestMethod[Reflect.getMetadata('method', handler) as number] ?? 'GET';
        for (const start of listed(Reflect.getMetadata('path', metatype))) {
          for (const end of listed(Reflect.getMetadata('path', handler))) {
            routes.push({ method, path: joined(start, end), open });
          }
        }
      }
    }
  }
  return routes.sort((a, b) => (a.path + a.method < b.path + b.method ? -1 : 1));
}

function listed(path: unknown): readonly string[] {
  return Array.isArray(path) ? path.map(String) : [String(path ?? '')];
}

function joined(...parts: readonly string[]): string {
  return `/${parts
    .flatMap((part) => part.split('/'))
    .filter((part) => part !== '')
    .join('/')}`;
}
