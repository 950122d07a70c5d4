import type { PhonePicture } from './phone-store.js';

/** Long side of a picture as it is sent, pixels: a crack shows, and it goes through on one bar. Our choice. */
const LONG_SIDE = 1_600;

/** JPEG quality at which a browser's encoder leaves no mark that matters. Our choice. */
const QUALITY = 0.8;

/**
 * A picture made smaller on the phone, right side up. What the browser cannot read goes as it is: the service will say
 * whether it can be taken.
 */
export async function shrinkPhoto(file: File): Promise<PhonePicture> {
  const small = await redrawn(file).catch(() => null);
  if (small === null || small.size >= file.size) return pictureOf(file, file.name, file.type);
  return pictureOf(small, file.name.replace(/\.\w+$/, '.jpg'), 'image/jpeg');
}

async function redrawn(file: File): Promise<Blob | null> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, LONG_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
}

export async function pictureOf(blob: Blob, name: string, mediaType: string): Promise<PhonePicture> {
  return { name, mediaType, bytes: await blob.arrayBuffer() };
}
