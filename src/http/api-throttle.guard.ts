import { type ExecutionContext, HttpException, Injectable } from '@nestjs/common';
import { ThrottlerGuard } from '@nestjs/throttler';
import type { FastifyRequest } from 'fastify';
import { isApi } from './paths.js';

/** How much one client address may ask of the JSON API. Counted by each copy of the service for itself. */
export const API_LIMIT = { windowMs: 60_000, requests: 600 };

/** Keeps one eager program from taking the API from everybody else. Pages are not counted; sign-in has its own count. */
@Injectable()
export class ApiThrottleGuard extends ThrottlerGuard {
  protected override async shouldSkip(context: ExecutionContext): Promise<boolean> {
    return !isApi(context.switchToHttp().getRequest<FastifyRequest>());
  }

  protected override async getTracker(request: { ip?: string }): Promise<string> {
    return request.ip ?? 'unknown';
  }

  /** One count for the whole API instead of one a route. */
  protected override generateKey(_context: ExecutionContext, tracker: string): string {
    return tracker;
  }

  protected override async throwThrottlingException(): Promise<void> {
    throw new HttpException('Too many requests', 429);
  }
}
