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
  /** The field that each of them was sent in. */
  readonly photoFields: readonly string[];
  /** The picture of a signature drawn on the page. */
  readonly signature: SentPhoto | null;
}

/**
 * Reads a form that may carry photos. Files left empty in the browser are passed over; they count among `files` all the
 * same, for which a form with many fields for photos asks more.
 */
export async function readMultipart(request: FastifyRequest, files?: number): Promise<SentForm> {
  if (!request.isMultipart()) return { body: asBody(request.body), photos: [], photoFields: [], signature: null };
  const body: Record<string, string[]> = {};
  const photos: SentPhoto[] = [];
  const photoFields: string[] = [];
  let signature: SentPhoto | null = null;
  for await (const part of request.parts(files === undefined ? {} : { limits: { files } })) {
    if (part.type === 'file') {
      const bytes = await part.toBuffer();
      if (bytes.length === 0) continue;
      const picture = { mediaType: part.mimetype, bytes };
      if (part.fieldname === 'signature') {
        signature = picture;
        continue;
      }
      photos.push(picture);
      photoFields.push(part.fieldname);
    } else if (typeof part.value === 'string') {
      const before = body[part.fieldname];
      if (before) before.push(part.value);
      else body[part.fieldname] = [part.value];
    }
  }
  return { body, photos, photoFields, signature };
}

function asBody(body: unknown): SentForm['body'] {
  return typeof body === 'object' && body !== null ? (body as SentForm['body']) : {};
}
