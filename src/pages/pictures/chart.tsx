import type { ComponentChildren } from 'preact';
import { at, Picture } from './picture.js';

/** Size of the plot itself, in the drawing's own units. */
const WIDTH = 620;
const HEIGHT = 250;

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Turns values into places of a drawing. */
export interface Scales {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

export function scalesOf(x: Span, y: Span): Scales {
  return {
    x: (value) => at(((value - x.from) / (x.to - x.from)) * WIDTH),
    y: (value) => at(-((value - y.from) / (y.to - y.from)) * HEIGHT),
  };
}

interface Tick {
  readonly at: number;
  readonly says: string;
}

interface ChartProps {
  readonly title: string;
  readonly scales: Scales;
  readonly across: readonly Tick[];
  readonly up: readonly Tick[];
  /** What the two axes count. */
  readonly acrossSays: string;
  readonly upSays: string;
  readonly words: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Two axes with their numbers, and what is drawn between them. */
export function Chart({ title, scales, across, up, acrossSays, upSays, words, children }: ChartProps) {
  return (
    <Picture title={title} left={-92} top={-HEIGHT - 46} width={WIDTH + 120} height={HEIGHT + 110} words={words}>
      {up.map((tick) => (
        <g key={tick.at}>
          <path class="p-grid" d={`M0 ${scales.y(tick.at)}h${WIDTH}`} />
          <text class="p-tick" x="-8" y={scales.y(tick.at) + 6} text-anchor="end">
            {tick.says}
          </text>
        </g>
      ))}
      {across.map((tick) => (
        <g key={tick.at}>
          <path class="p-grid" d={`M${scales.x(tick.at)} 0v-${HEIGHT}`} />
          <text class="p-tick" x={scales.x(tick.at)} y="26" text-anchor="middle">
            {tick.says}
          </text>
        </g>
      ))}
      <path class="p-ground" d={`M0 0h${WIDTH}`} />
      <text class="p-tick" x={WIDTH} y="54" text-anchor="end">
        {acrossSays}
      </text>
      <text class="p-tick" x="-84" y={-HEIGHT - 20}>
        {upSays}
      </text>
      {children}
    </Picture>
  );
}

/** A line through places, as the path of a drawing. */
export function lineThrough(points: readonly (readonly [number, number])[], { x, y }: Scales): string {
  return `M${points.map(([across, up]) => `${x(across)} ${y(up)}`).join('L')}`;
}

/** Round numbers from one end to the other, some `about` of them. */
export function roundSteps({ from, to }: Span, about: number): readonly number[] {
  const rough = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10) * power;
  const first = Math.ceil(from / step - 1e-9);
  return Array.from({ length: Math.floor(to / step + 1e-9) - first + 1 }, (_, index) => (first + index) * step);
}
