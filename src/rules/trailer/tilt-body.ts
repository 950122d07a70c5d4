import type { Body } from '../facts/build-sheet.js';

const TILTS: readonly (Body | null)[] = ['gravity-tilt', 'powered-gravity-tilt', 'full-powered-tilt'];
const TIPPED_BY_LOAD: readonly (Body | null)[] = ['gravity-tilt', 'powered-gravity-tilt'];

/** Whether its deck tilts, so that the deck is the ramp. */
export function isTilt(body: Body | null): boolean {
  return TILTS.includes(body);
}

/** Whether the machine's own weight tips the deck down and lays it flat again. */
export function isTippedByLoad(body: Body | null): boolean {
  return TIPPED_BY_LOAD.includes(body);
}
