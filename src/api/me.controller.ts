import { Get } from '@nestjs/common';
import { FromCaller } from '../http/from-caller.js';
import type { Caller } from '../use-cases/caller.js';
import { Answers, ApiController } from './describe.js';
import { ME } from './schema/answer-schema.js';

@ApiController('Me')
export class MeApi {
  @Get('me')
  @Answers(200, ME, 'Whose key this is, in which yard, with which role')
  me(@FromCaller() { yardId, personId, name, role, today, timeZone }: Caller) {
    return { yardId, personId, name, role, today, timeZone };
  }
}
