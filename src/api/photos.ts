import { Refusal } from '../http/refusal.js';
import type { Outcome } from '../use-cases/outcome.js';
import type { JsonObject } from './body.js';

/** What a route that takes photos may be sent: a few as a phone makes them, in base64. */
export const WITH_PHOTOS = { bodyLimitBytes: 24 * 1_048_576 };

const BASE64 = /^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$/;

/** JSON cannot hold bytes: photos come in base64, and go on as the bytes that the use case takes. */
export function withPhotoBytes(body: JsonObject): JsonObject {
  const { photos } = body;
  if (!Array.isArray(photos)) return body;
  return { ...body, photos: photos.map((photo, place) => withBytes(photo, `photos[${place}]`)) };
}

/** The same for a check sheet, whose signature is a picture too. */
export function withSheetBytes(body: JsonObject): JsonObject {
  const { signature } = body;
  const photos = withPhotoBytes(body);
  return signature === undefined ? photos : { ...photos, signature: withBytes(signature, 'signature') };
}

function withBytes(photo: unknown, field: string): unknown {
  if (typeof photo !== 'object' || photo === null || Array.isArray(photo)) return photo;
  const { base64, ...rest } = photo as JsonObject;
  if (typeof base64 !== 'string' || !BASE64.test(base64) || 'bytes' in rest) {
    const message = "Give the picture's bytes in base64, in the field base64.";
    throw new Refusal({ kind: 'invalid', fields: [{ field: `${field}.base64`, message }] });
  }
  return { ...rest, bytes: Buffer.from(base64, 'base64') };
}

/** What is wrong with a photo's bytes, said of the field they were sent in. */
export function photosAsSent<T>(outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok || outcome.problem.kind !== 'invalid') return outcome;
  const fields = outcome.problem.fields.map(({ field, message }) => ({
    field: field.replace(/^((?:photos\[\d+\]|signature)\.)bytes$/, '$1base64'),
    message,
  }));
  return { ok: false, problem: { kind: 'invalid', fields } };
}
