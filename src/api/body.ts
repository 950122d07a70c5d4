import { Body, Injectable, type PipeTransform } from '@nestjs/common';
import type { z } from 'zod';
import { Refusal } from '../http/refusal.js';

export type JsonObject = Readonly<Record<string, unknown>>;

/** A body that is no object has no fields to read. */
@Injectable()
class ObjectPipe implements PipeTransform<unknown, JsonObject> {
  transform(value: unknown): JsonObject {
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value as JsonObject;
    const message = 'Send a JSON object with named fields.';
    throw new Refusal({ kind: 'invalid', fields: [{ field: 'body', message }] });
  }
}

/**
 * The JSON body of a request. `schema` only describes it: the use case reads it field by field, and the same way for
 * every door.
 */
export const JsonBody = (schema: z.ZodType): ParameterDecorator => Body({ schema, pipes: [new ObjectPipe()] });

/**
 * The body with what the address says laid beside it, as a use case takes it: `T` is what it will be read as, not what
 * it is yet. A field of a name that the address decides is refused in the body, so that the two cannot disagree.
 */
export function withAddress<T>(body: JsonObject, address: Readonly<Record<string, unknown>> = {}): T {
  const fields = Object.keys(address)
    .filter((field) => body[field] !== undefined)
    .map((field) => ({ field, message: 'The address of the request says this already; leave it out of the body.' }));
  if (fields.length > 0) throw new Refusal({ kind: 'invalid', fields });
  return { ...body, ...address } as T;
}

/** For a route that takes nothing but its address. */
export function refuseFields(body: JsonObject): void {
  const message = 'This takes no fields; leave it out.';
  const fields = Object.keys(body).map((field) => ({ field, message }));
  if (fields.length > 0) throw new Refusal({ kind: 'invalid', fields });
}
