import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';

type Schema = Readonly<Record<string, unknown>>;

interface Operation {
  readonly requestBody?: { readonly content: { readonly 'application/json': { readonly schema: Schema } } };
  readonly responses: Readonly<
    Record<string, { readonly content?: { readonly 'application/json'?: { readonly schema: Schema } } }>
  >;
}

export interface ApiDescription {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

/** What the description says of requests and answers, to hold real ones against. */
export class ApiSchema {
  readonly #checks = new Map<object, ValidateFunction>();
  readonly #description: ApiDescription;
  readonly #ajv = new Ajv2020({ strict: false, allErrors: true });

  constructor(description: ApiDescription) {
    this.#description = description;
    addFormats.default(this.#ajv);
  }

  operation(method: string, route: string): Operation {
    const path = route.replace(/:(\w+)/g, '{$1}');
    const found = this.#description.paths[path]?.[method.toLowerCase()];
    if (found === undefined) throw new Error(`${method} ${route} is not described`);
    return found;
  }

  /** What a body has that the description does not allow; empty when it is as described. */
  wrongInRequest(method: string, route: string, body: unknown): readonly string[] {
    const schema = this.operation(method, route).requestBody?.content['application/json'].schema;
    return schema === undefined ? ['no body is described'] : this.#wrong(schema, body);
  }

  /** The same for an answer. Here every field answered must be described, though the description itself is open. */
  wrongInAnswer(method: string, route: string, status: number, json: unknown): readonly string[] {
    const { responses } = this.operation(method, route);
    const schema = (responses[status] ?? responses.default)?.content?.['application/json']?.schema;
    return schema === undefined ? [`no answer ${status} is described`] : this.#wrong(schema, json);
  }

  /** The schema that stands behind a reference, if it is one. */
  behind(schema: Schema): Schema {
    const name = typeof schema.$ref === 'string' ? schema.$ref.split('/').at(-1) : undefined;
    return name === undefined ? schema : (this.#description.components.schemas[name] ?? {});
  }

  #wrong(schema: Schema, value: unknown): readonly string[] {
    let check = this.#checks.get(schema);
    if (check === undefined) {
      check = this.#ajv.compile(closed({ ...schema, components: this.#description.components }) as Schema);
      this.#checks.set(schema, check);
    }
    if (check(value)) return [];
    return (check.errors ?? []).map((one) => `${one.instancePath} ${one.message} ${JSON.stringify(one.params)}`);
  }
}

/** With every object that names its properties taking no others. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const inside = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  const names = 'properties' in schema && (schema as Schema).type === 'object' && !('additionalProperties' in schema);
  return names ? { ...inside, additionalProperties: false } : inside;
}
