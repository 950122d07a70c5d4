import { applyDecorators, Controller, HttpCode, UseGuards } from '@nestjs/common';
import { ApiBearerAuth, ApiOperation, ApiResponse, ApiTags } from '@nestjs/swagger';
import type { z } from 'zod';
import { JsonOnlyGuard } from './json-only.guard.js';
import { PROBLEM } from './schema/problem-schema.js';

/** A controller of the JSON API: JSON in, JSON out, and the same problems everywhere. */
export function ApiController(subject: string): ClassDecorator {
  return applyDecorators(
    Controller('api'),
    ApiTags(subject),
    ApiBearerAuth(),
    UseGuards(JsonOnlyGuard),
    ApiResponse({ status: 'default', description: 'Why nothing was done.', standardSchema: PROBLEM }),
  );
}

/** Says what a route does and what it answers. */
export function Answers(status: 200 | 201, schema: z.ZodType, summary: string): MethodDecorator {
  return applyDecorators(
    HttpCode(status),
    ApiOperation({ summary }),
    ApiResponse({ status, description: status === 201 ? 'Recorded.' : 'Done.', standardSchema: schema }),
  );
}
