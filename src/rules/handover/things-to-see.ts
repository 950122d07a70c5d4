import type { BuildSheet } from '../facts/build-sheet.js';
import type { Seen } from '../facts/handover.js';
import { wheelPositions } from '../trailer/wheel-positions.js';

/** A thing to look at, and where. */
export type ThingToSee = Pick<Seen, 'thing' | 'position'>;

/**
 * What to look at on this trailer, once round it from the coupler, the same out and back. What a build surely lacks is
 * left out; where nobody knows, it is looked for. The customer's ball is no part of it and is asked about by itself.
 */
export function thingsToSee(build: BuildSheet | null): readonly ThingToSee[] {
  const wheels = build === null ? [] : wheelPositions(build).filter((position) => position !== 'spare');
  const ramps = build?.rear.ramps ?? null;
  const fenders = build?.fenders.kind ?? null;
  return [
    ...once('coupler', 'safety-chain', 'pin'),
    ...(build?.hitch.breakaway === false ? [] : once('breakaway')),
    ...once('plug', 'jack'),
    ...wheels.map((position) => ({ thing: 'tire' as const, position })),
    ...once('wheel', 'spare'),
    ...(fenders === 'none' ? [] : bothSides('fender')),
    ...once('frame', 'deck', 'strap'),
    ...bothSides('lamp'),
    ...(ramps === 'none' ? [] : bothSides('ramp')),
  ];
}

function once(...things: readonly Seen['thing'][]): readonly ThingToSee[] {
  return things.map((thing) => ({ thing, position: null }));
}

function bothSides(thing: Seen['thing']): readonly ThingToSee[] {
  return ['left', 'right'].map((position) => ({ thing, position }));
}
