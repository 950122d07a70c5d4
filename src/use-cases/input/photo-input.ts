import type { Given } from './given.js';

export interface Photo {
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

const MOST_PHOTOS = 12;
const MOST_BYTES = 8 * 1024 * 1024;

/** What a file of each kind starts with. Sources: PNG (W3C, section 5.2), JPEG (ITU-T T.81, B.1.1.3), WebP container. */
const SIGNATURES: Readonly<Record<string, (bytes: Uint8Array) => boolean>> = {
  'image/png': (bytes) => starts(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
  'image/jpeg': (bytes) => starts(bytes, [0xff, 0xd8, 0xff]),
  'image/webp': (bytes) =>
    starts(bytes, [0x52, 0x49, 0x46, 0x46]) && starts(bytes.subarray(8), [0x57, 0x45, 0x42, 0x50]),
};

/** Photos shown back to people later: only pictures, and what they claim to be. */
export function readPhotos(given: Given): readonly Photo[] {
  return given.list('photos', 'photos', MOST_PHOTOS).map(readPhoto);
}

/** A signature drawn with a finger: a picture too. Null when none was drawn. */
export function readSignature(given: Given): Photo | null {
  return given.has('signature') ? readPhoto(given.object('signature')) : null;
}

export function readPhoto(photo: Given): Photo {
  const mediaType = photo.needChoice('mediaType', 'the kind of picture', ['image/jpeg', 'image/png', 'image/webp']);
  const bytes = photo.bytes('bytes') ?? new Uint8Array();
  if (bytes.length > MOST_BYTES) photo.refuse('bytes', 'Send a picture of at most 8 MB.');
  else if (!SIGNATURES[mediaType]?.(bytes)) photo.refuse('bytes', `Send a picture that is ${mediaType}; this is not.`);
  return { mediaType, bytes };
}

function starts(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, place) => bytes[place] === byte);
}
