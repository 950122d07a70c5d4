import { type INestApplication, Injectable } from '@nestjs/common';
import { DocumentBuilder, type OpenAPIObject, SwaggerModule } from '@nestjs/swagger';
import { z } from 'zod';

const ABOUT = `Every fact and result of a yard. Make a key on the page People and send it as a bearer token.

The API speaks SI with the unit at the end of each name: Kg is a mass, N a force, M a length, Km a distance by road,
Kpa a pressure; money is in cents. A day is YYYY-MM-DD in the yard's own time zone. What nobody knows is null.

Facts are never overwritten: what was told wrong is corrected by a new fact, or withdrawn, and the first stays in the
history. Every answer is arithmetic on what was entered: the plate, the makers' manuals, local law and a qualified
person come first.`;

/** The description of the JSON API, made from its routes when it is first asked for. */
@Injectable()
export class ApiDocument {
  #app: INestApplication | null = null;
  #document: OpenAPIObject | null = null;

  /** Said once, by whoever built the app. */
  describes(app: INestApplication): void {
    this.#app = app;
  }

  get(): OpenAPIObject {
    if (this.#app === null) throw new Error('the API was asked for its description before it was told of the app');
    this.#document ??= describe(this.#app);
    return this.#document;
  }
}

function describe(app: INestApplication): OpenAPIObject {
  const about = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Axlebook')
    .setDescription(ABOUT)
    .setVersion('1')
    .addBearerAuth({ type: 'http', scheme: 'bearer', description: 'An API key.' })
    .build();
  const document = SwaggerModule.createDocument(app, about, {
    operationIdFactory: (controller, method) => `${controller.replace(/Api$/, '')}.${method}`,
    standardSchemaConverter: toJsonSchema,
  });
  // Pages are routes too; they answer people.
  const paths = Object.entries(document.paths).filter(([path]) => path.startsWith('/api/'));
  return { ...document, paths: Object.fromEntries(paths) };
}

/** The form that comes in, for answers too: an answer may gain fields later, so none is described as closed. */
function toJsonSchema(schema: unknown): { schema: unknown; components: Record<string, unknown> } | undefined {
  if (!(schema instanceof z.ZodType)) return undefined;
  const { $schema: _dialect, $defs = {}, ...whole } = z.toJSONSchema(schema, { io: 'input' });
  return { schema: whole, components: $defs };
}
