import { type ArgumentMetadata, Injectable, type PipeTransform, Query } from '@nestjs/common';
import type { z } from 'zod';
import { Refusal } from '../http/refusal.js';

/** Reads what follows the question mark by its schema; what does not fit is refused by name, as in a body. */
@Injectable()
class QueryPipe implements PipeTransform {
  transform(value: unknown, { schema }: ArgumentMetadata): unknown {
    const read = (schema as z.ZodType).safeParse(value);
    if (read.success) return read.data;
    const fields = read.error.issues.flatMap((issue) =>
      issue.code === 'unrecognized_keys'
        ? issue.keys.map((field) => ({ field, message: 'There is no parameter of this name. Leave it out.' }))
        : [{ field: issue.path.join('.'), message: issue.message }],
    );
    throw new Refusal({ kind: 'invalid', fields });
  }
}

/** The query of a request, read by `schema` and described by it. */
export const ByQuery = (schema: z.ZodType): ParameterDecorator => Query({ schema, pipes: [new QueryPipe()] });
