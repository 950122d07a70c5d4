import type { Purpose } from './spent.js';
import type { Times } from './times.js';

/** Something that costs money each time, and how often it comes. */
export interface Wanted {
  readonly purpose: Purpose;
  readonly times: Times;
  /** Whether how often hangs on how much the trailer is used. */
  readonly byUse: boolean;
}
