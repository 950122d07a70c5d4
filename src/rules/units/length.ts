import type { Quantity } from './quantity.js';

export type Metres = Quantity<'m'>;

/** International inch, exact by definition. Source: NIST Handbook 44 (2024), appendix C. */
const M_PER_INCH = 0.0254;

export function metres(value: number): Metres {
  return value as Metres;
}

export function inch(value: number): Metres {
  return (value * M_PER_INCH) as Metres;
}

export function feet(value: number): Metres {
  return inch(value * 12);
}

export function toInch(length: Metres): number {
  return length / M_PER_INCH;
}

export function toFeet(length: Metres): number {
  return toInch(length) / 12;
}
