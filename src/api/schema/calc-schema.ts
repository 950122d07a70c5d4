import { z } from 'zod';

const NAMED = {
  name: z.string().describe('Name of the computation.'),
  about: z.string().describe('What it answers.'),
  source: z.string().describe('Where its formula or limit comes from.'),
};

const ANY_OBJECT = z.record(z.string(), z.unknown());

export const COMPUTATION_LIST = z.object({ rows: z.array(z.object(NAMED)) }).meta({ id: 'ComputationList' });

export const COMPUTATION = z
  .object({
    ...NAMED,
    input: ANY_OBJECT.describe('JSON Schema of what it takes.'),
    output: ANY_OBJECT.describe('JSON Schema of what it gives.'),
    example: ANY_OBJECT.describe('A published or worked case, ready to send.'),
  })
  .meta({ id: 'Computation' });

export const CALC_INPUT = ANY_OBJECT.describe('As the schema of the computation says, in SI.').meta({
  id: 'CalcInput',
});
export const CALC_ANSWER = ANY_OBJECT.describe('As the schema of the computation says, in SI.').meta({
  id: 'CalcAnswer',
});
