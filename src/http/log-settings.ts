import type { IncomingMessage } from 'node:http';
import type { Params } from 'nestjs-pino';
import type { DestinationStream } from 'pino';
import type { Options } from 'pino-http';
import type { Config } from '../config.js';

/** Pino's number for `info`. */
const INFO = 30;

interface ShortError {
  readonly type: string;
  readonly message: string;
  readonly code?: string;
  readonly stack?: string;
}

/**
 * An error as the log keeps it: kind, message, code and stack. Errors of the Postgres driver carry their whole
 * client, password included, so nothing else of them is written.
 */
export function shortError(error: unknown): ShortError {
  if (!(error instanceof Error)) return { type: typeof error, message: String(error).slice(0, 500) };
  const code: unknown = 'code' in error ? error.code : undefined;
  return {
    type: error.name,
    message: error.message.slice(0, 2000),
    ...(typeof code === 'string' ? { code } : {}),
    ...(error.stack === undefined ? {} : { stack: error.stack.slice(0, 4000) }),
  };
}

/** Who only tells how the framework puts itself together: a hundred lines at every start, of use when it does not. */
const BUILDING = new Set(['NestFactory', 'InstanceLoader', 'RoutesResolver', 'RouterExplorer', 'NestApplication']);

/**
 * How the service logs. Addresses, headers and bodies are left out: they carry reset links, invitations, API tokens
 * and session cookies. What a request was is written at its end as route pattern and status (see request-log.ts).
 */
export function logSettings(config: Config, logTo?: DestinationStream): Params {
  const options: Options = {
    level: config.logLevel,
    autoLogging: false,
    wrapSerializers: false,
    hooks: {
      logMethod(args, method, level) {
        if (level <= INFO && config.logLevel === 'info' && BUILDING.has(contextOf(args[0]))) return;
        method.apply(this, args);
      },
    },
    serializers: {
      req: (request: IncomingMessage & { id?: unknown }) => ({ id: request.id, method: request.method }),
      res: () => undefined,
      err: shortError,
      error: shortError,
    },
  };
  return { pinoHttp: logTo === undefined ? options : [options, logTo] };
}

function contextOf(bound: unknown): string {
  const context: unknown = typeof bound === 'object' && bound !== null && 'context' in bound ? bound.context : null;
  return typeof context === 'string' ? context : '';
}
