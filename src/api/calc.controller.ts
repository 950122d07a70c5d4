import { Get, Param, Post } from '@nestjs/common';
import { z } from 'zod';
import { Refusal, valueOrRefuse } from '../http/refusal.js';
import { calculate, computationNamed } from '../use-cases/calc/calculate.js';
import { COMPUTATIONS } from '../use-cases/calc/computations.js';
import { JsonBody, type JsonObject } from './body.js';
import { Answers, ApiController } from './describe.js';
import { CALC_ANSWER, CALC_INPUT, COMPUTATION, COMPUTATION_LIST } from './schema/calc-schema.js';

/** Each computation by name, on what is sent; nothing of the yard is read and nothing is kept. */
@ApiController('Calculate')
export class CalcApi {
  @Get('calc')
  @Answers(200, COMPUTATION_LIST, 'Every computation, by name')
  list() {
    return { rows: COMPUTATIONS.map(({ name, about, source }) => ({ name, about, source })) };
  }

  @Get('calc/:computation')
  @Answers(200, COMPUTATION, 'What a computation takes and gives, as JSON Schema, with an example')
  describe(@Param('computation') name: string) {
    const found = computationNamed(name);
    if (found === null) throw new Refusal({ kind: 'not-found', what: 'computation' });
    const { about, source, example } = found;
    return {
      ...{ name, about, source, example },
      input: z.toJSONSchema(found.input.strict(), { io: 'input' }),
      output: z.toJSONSchema(found.output, { io: 'output' }),
    };
  }

  @Post('calc/:computation')
  @Answers(200, CALC_ANSWER, 'Work out one computation')
  calculate(@Param('computation') name: string, @JsonBody(CALC_INPUT) body: JsonObject) {
    return valueOrRefuse(calculate(name, body));
  }
}
