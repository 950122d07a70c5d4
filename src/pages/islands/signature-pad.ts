/**
 * A pad to sign on with a finger. It fills the hidden field of the form, so the form is sent as any other; whoever
 * cannot draw types a name beside it.
 */

const SVG = 'http://www.w3.org/2000/svg';

/** As wide as the field allows; twice and a half as wide as high. */
const WIDTH = 1_000;
const HEIGHT = 400;

/** Nearer points than this tell nothing new of a line. */
const STEP = 6;

/** What one stroke, and a whole signature, may hold; the service takes no more. */
const MOST_NUMBERS = 400;
const MOST_STROKES = 60;

interface Stroke {
  readonly points: number[];
}

for (const place of document.querySelectorAll<HTMLElement>('[data-island="signature-pad"]')) {
  const field = place.querySelector<HTMLInputElement>('input[type=hidden]');
  if (field !== null) startPad(place, field);
}

function startPad(place: HTMLElement, field: HTMLInputElement): void {
  const pad = document.createElementNS(SVG, 'svg');
  pad.setAttribute('viewBox', `0 0 ${WIDTH} ${HEIGHT}`);
  pad.setAttribute('class', 'pad');
  pad.setAttribute('role', 'img');
  pad.setAttribute('aria-label', 'Sign here with a finger, or type the name above');
  const clear = document.createElement('button');
  clear.type = 'button';
  clear.className = 'button';
  clear.textContent = 'Clear the pad';
  place.append(pad, clear);

  let strokes = kept(field.value);
  for (const stroke of strokes) draw(pad, stroke);
  let line: { readonly stroke: Stroke; readonly shape: SVGPolylineElement } | null = null;

  pad.addEventListener('pointerdown', (event) => {
    if (strokes.length >= MOST_STROKES) return;
    pad.setPointerCapture(event.pointerId);
    const stroke = { points: [...pointOf(pad, event)] };
    strokes.push(stroke);
    line = { stroke, shape: draw(pad, stroke) };
    event.preventDefault();
  });
  pad.addEventListener('pointermove', (event) => {
    if (line === null) return;
    const { points } = line.stroke;
    const [x, y] = pointOf(pad, event);
    if (points.length >= MOST_NUMBERS || Math.hypot(x - (points.at(-2) ?? 0), y - (points.at(-1) ?? 0)) < STEP) return;
    points.push(x, y);
    line.shape.setAttribute('points', points.join(' '));
  });
  const lift = () => {
    line = null;
    field.value = strokes.length === 0 ? '' : JSON.stringify(strokes);
  };
  pad.addEventListener('pointerup', lift);
  pad.addEventListener('pointercancel', lift);
  clear.addEventListener('click', () => {
    strokes = [];
    pad.replaceChildren();
    lift();
  });
}

/** What was drawn before the form came back. */
function kept(value: string): Stroke[] {
  try {
    return value === '' ? [] : (JSON.parse(value) as Stroke[]);
  } catch {
    return [];
  }
}

function draw(pad: SVGSVGElement, { points }: Stroke): SVGPolylineElement {
  const shape = document.createElementNS(SVG, 'polyline');
  shape.setAttribute('points', points.join(' '));
  pad.append(shape);
  return shape;
}

/** In thousandths of the pad's width, held to the pad. */
function pointOf(pad: SVGSVGElement, event: PointerEvent): readonly [number, number] {
  const box = pad.getBoundingClientRect();
  const scale = WIDTH / box.width;
  const held = (value: number, most: number) => Math.round(Math.min(Math.max(value, 0), most));
  return [held((event.clientX - box.left) * scale, WIDTH), held((event.clientY - box.top) * scale, HEIGHT)];
}
