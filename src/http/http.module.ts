import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { ThrottlerModule } from '@nestjs/throttler';
import { UseCasesModule } from '../use-cases/use-cases.module.js';
import { API_LIMIT, ApiThrottleGuard } from './api-throttle.guard.js';
import { Callers } from './callers.js';
import { HealthController } from './health.controller.js';
import { SameOriginGuard } from './same-origin.guard.js';
import { SignIn } from './sign-in/sign-in.js';
import { SignInGuard } from './sign-in.guard.js';

/** What pages and the JSON API share: who asks, how problems become answers, and what every answer carries. */
@Module({
  imports: [UseCasesModule, ThrottlerModule.forRoot([{ ttl: API_LIMIT.windowMs, limit: API_LIMIT.requests }])],
  controllers: [HealthController],
  providers: [
    Callers,
    SignIn,
    // They run in this order: the cheapest refusal first, the one that asks the database last.
    { provide: APP_GUARD, useClass: SameOriginGuard },
    { provide: APP_GUARD, useClass: ApiThrottleGuard },
    { provide: APP_GUARD, useClass: SignInGuard },
  ],
  exports: [SignIn],
})
export class HttpModule {}
