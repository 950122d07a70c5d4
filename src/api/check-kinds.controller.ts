import { Get, Param, Post, Put } from '@nestjs/common';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { ShowYard } from '../use-cases/show/show-yard.js';
import { RetireCheckKind } from '../use-cases/yard/retire-check-kind.js';
import { SetCheckKind } from '../use-cases/yard/set-check-kind.js';
import { JsonBody, type JsonObject, refuseFields, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { CHECK_KIND_SET, CHECK_KINDS, WOKEN_YARD } from './schema/answer-schema.js';
import { CHECK_KIND_BODY } from './schema/check-schema.js';
import { NOTHING_BODY } from './schema/use-schema.js';

@ApiController('Check kinds')
export class CheckKindsApi {
  constructor(
    private readonly showYard: ShowYard,
    private readonly setCheckKind: SetCheckKind,
    private readonly retireCheckKind: RetireCheckKind,
  ) {}

  @Get('check-kinds')
  @Answers(200, CHECK_KINDS, 'Kinds of check in force, with their triggers and sheets')
  async list(@FromCaller() caller: Caller) {
    return { rows: valueOrRefuse(await this.showYard.run(caller)).checkKinds };
  }

  @Post('check-kinds')
  @Answers(201, CHECK_KIND_SET, 'Add a kind of check; every trailer is judged anew by it')
  async add(@FromCaller() caller: Caller, @JsonBody(CHECK_KIND_BODY) body: JsonObject) {
    return valueOrRefuse(await this.setCheckKind.run(caller, withAddress(body, { checkKindId: null })));
  }

  @Put('check-kinds/:checkKindId')
  @Answers(200, CHECK_KIND_SET, 'Write a kind of check anew, whole')
  async set(
    @FromCaller() caller: Caller,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @JsonBody(CHECK_KIND_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.setCheckKind.run(caller, withAddress(body, { checkKindId })));
  }

  @Post('check-kinds/:checkKindId/retire')
  @Answers(200, WOKEN_YARD, 'Say that no trailer owes a kind of check any more; its records stay')
  async retire(
    @FromCaller() caller: Caller,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @JsonBody(NOTHING_BODY) body: JsonObject,
  ) {
    refuseFields(body);
    return valueOrRefuse(await this.retireCheckKind.run(caller, { checkKindId }));
  }
}
