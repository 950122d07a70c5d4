import { type PhonePicture } from './phone-store.js';
import { pictureOf } from './shrink-photo.js';

/** Width of the stroke in the picture, which is 640 wide. */
const STROKE = 4;

/** Where a signature is drawn with a finger, a pen or a mouse. */
export class SignPad {
  readonly #canvas: HTMLCanvasElement;
  readonly #pen: CanvasRenderingContext2D;
  #drawn = false;

  constructor(place: HTMLElement, changed: () => void) {
    const canvas = place.querySelector('canvas');
    const pen = canvas?.getContext('2d');
    if (!canvas || !pen) throw new Error('no canvas to sign on');
    this.#canvas = canvas;
    this.#pen = pen;
    this.clear();
    this.#listen(changed);
    place.querySelector('button')?.addEventListener('click', () => {
      this.clear();
      changed();
    });
    place.hidden = false;
  }

  get isEmpty(): boolean {
    return !this.#drawn;
  }

  clear(): void {
    // Dark on white whatever the scheme: it is kept and printed.
    this.#pen.fillStyle = '#ffffff';
    this.#pen.fillRect(0, 0, this.#canvas.width, this.#canvas.height);
    this.#drawn = false;
  }

  async show({ bytes, mediaType }: PhonePicture): Promise<void> {
    this.#pen.drawImage(await createImageBitmap(new Blob([bytes], { type: mediaType })), 0, 0);
    this.#drawn = true;
  }

  async picture(): Promise<PhonePicture | null> {
    if (!this.#drawn) return null;
    const blob = await new Promise<Blob | null>((resolve) => this.#canvas.toBlob(resolve, 'image/png'));
    return blob && pictureOf(blob, 'signature.png', 'image/png');
  }

  #listen(changed: () => void): void {
    let last: { x: number; y: number } | null = null;
    this.#canvas.addEventListener('pointerdown', (event) => {
      this.#canvas.setPointerCapture(event.pointerId);
      last = this.#at(event);
      this.#draw(last, last);
    });
    this.#canvas.addEventListener('pointermove', (event) => {
      if (last === null) return;
      const next = this.#at(event);
      this.#draw(last, next);
      last = next;
    });
    for (const end of ['pointerup', 'pointercancel'] as const) {
      this.#canvas.addEventListener(end, () => {
        if (last !== null) changed();
        last = null;
      });
    }
  }

  #at(event: PointerEvent): { x: number; y: number } {
    const box = this.#canvas.getBoundingClientRect();
    const scale = this.#canvas.width / box.width;
    return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale };
  }

  #draw(from: { x: number; y: number }, to: { x: number; y: number }): void {
    this.#pen.lineWidth = STROKE;
    this.#pen.lineCap = 'round';
    this.#pen.strokeStyle = '#14181b';
    this.#pen.beginPath();
    this.#pen.moveTo(from.x, from.y);
    this.#pen.lineTo(to.x, to.y);
    this.#pen.stroke();
    this.#drawn = true;
  }
}
