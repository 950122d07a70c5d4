import '@fastify/multipart';
import type { FastifyRequest } from 'fastify';

interface SentPhoto {
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

export interface SentForm {
  /** Texts by field name, as an ordinary form would have them. */
  readonly body: Readonly<Record<string, string | readonly string[]>>;
  readonly photos: readonly SentPhoto[];
}

/** Reads a form that may carry photos. Files left empty in the browser are passed over. */
export async function readMultipart(request: FastifyRequest): Promise<SentForm> {
  if (!request.isMultipart()) return { body: asBody(request.body), photos: [] };
  const body: Record<string, string[]> = {};
  const photos: SentPhoto[] = [];
  for await (const part of request.parts()) {
    if (part.type === 'file') {
      const bytes = await part.toBuffer();
      if (bytes.length > 0) photos.push({ mediaType: part.mimetype, bytes });
    } else if (typeof part.value === 'string') {
      const before = body[part.fieldname];
      if (before) before.push(part.value);
      else body[part.fieldname] = [part.value];
    }
  }
  return { body, photos };
}

function asBody(body: unknown): SentForm['body'] {
  return typeof body === 'object' && body !== null ? (body as SentForm['body']) : {};
}
