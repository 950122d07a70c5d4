import { Get } from '@nestjs/common';
import type { OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';
import { Open } from '../../http/open.js';
import { Answers, ApiController } from '../describe.js';
import { ApiDocument } from './api-document.js';

const DOCUMENT = z.object({ openapi: z.string(), paths: z.record(z.string(), z.unknown()) });

@ApiController('Description')
export class OpenApi {
  constructor(private readonly document: ApiDocument) {}

  /** Open to everybody: it tells how the API is spoken, and nothing of any yard. */
  @Get('openapi.json')
  @Open()
  @Answers(200, DOCUMENT, 'This description, in OpenAPI 3.1')
  read(): OpenAPIObject {
    return this.document.get();
  }
}
