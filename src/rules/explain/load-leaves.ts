import type { Load, ScaleTicket } from '../facts/load.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import type { LoadLimits } from '../load/load-limits.js';
import { newtons } from '../units/force.js';
import { metres } from '../units/length.js';
import { kg } from '../units/mass.js';
import type { Basis, Leaf } from './working.js';

/** All that a load check rests on. */
export interface LoadCase {
  readonly limits: LoadLimits;
  readonly load: Load;
  readonly policy: YardPolicy;
}

/** Every fact of a load and its trailer that a load check can hang on, each able to be put to another value. */
export function loadLeaves({ limits, load }: LoadCase): readonly Leaf<LoadCase>[] {
  return [...trailerLeaves(limits), ...cargoLeaves(load), ...placeLeaves(load), ...scaleLeaves(load.scale)];
}

function trailerLeaves({ emptyKg, emptyWeighed, emptyTongueN, axleCentreM }: LoadLimits): Leaf<LoadCase>[] {
  const leaves: Leaf<LoadCase>[] = [];
  if (emptyKg !== null) {
    leaves.push({
      ...{ name: 'empty-mass', value: emptyKg, unit: 'kg', basis: emptyWeighed ? 'measured' : 'stated' },
      put: (one, value) => ({ ...one, limits: { ...one.limits, emptyKg: kg(value) } }),
    });
  }
  if (emptyTongueN !== null) {
    leaves.push({
      ...{ name: 'empty-tongue', value: emptyTongueN, unit: 'N', basis: 'stated' },
      put: (one, value) => ({ ...one, limits: { ...one.limits, emptyTongueN: newtons(value) } }),
    });
  }
  if (axleCentreM !== null) {
    leaves.push({
      ...{ name: 'axle-centre', value: axleCentreM, unit: 'm', basis: 'measured' },
      put: (one, value) => ({ ...one, limits: { ...one.limits, axleCentreM: metres(value) } }),
    });
  }
  return leaves;
}

function cargoLeaves(load: Load): Leaf<LoadCase>[] {
  return load.cargo.map((item, place) => ({
    ...{ name: 'cargo', subject: item.name, value: item.massKg, unit: 'kg', basis: BASIS_OF[item.basis] },
    put: (one, value) => ({
      ...one,
      load: {
        ...one.load,
        cargo: one.load.cargo.map((other, at) => (at === place ? { ...other, massKg: kg(value) } : other)),
      },
    }),
  }));
}

const BASIS_OF: Readonly<Record<Load['cargo'][number]['basis'], Basis>> = {
  weighed: 'measured',
  stated: 'stated',
  assumed: 'assumed',
};

/** Where a load sits and how the hitch stands are read off with a tape, to two inches at best. Our choice. */
const TAPE_DOUBT_M = 0.05;

function placeLeaves(load: Load): Leaf<LoadCase>[] {
  const leaves: Leaf<LoadCase>[] = [];
  if (load.balancePointM !== null) {
    leaves.push({
      ...{ name: 'balance-point', value: load.balancePointM, unit: 'm', basis: 'stated', doubt: TAPE_DOUBT_M },
      put: (one, value) => ({ ...one, load: { ...one.load, balancePointM: metres(value) } }),
    });
  }
  if (load.hitchHeightM !== null) {
    leaves.push({
      ...{ name: 'hitch-height', value: load.hitchHeightM, unit: 'm', basis: 'stated', doubt: TAPE_DOUBT_M / 2 },
      put: (one, value) => ({ ...one, load: { ...one.load, hitchHeightM: metres(value) } }),
    });
  }
  if (load.offCentreM !== null) {
    leaves.push({
      ...{ name: 'off-centre', value: load.offCentreM, unit: 'm', basis: 'stated', doubt: TAPE_DOUBT_M },
      put: (one, value) => ({ ...one, load: { ...one.load, offCentreM: metres(value) } }),
    });
  }
  return leaves;
}

function scaleLeaves(scale: ScaleTicket | null): Leaf<LoadCase>[] {
  if (scale === null) return [];
  const leaves: Leaf<LoadCase>[] = [];
  const putScale = (one: LoadCase, changed: Partial<ScaleTicket>): LoadCase =>
    one.load.scale === null ? one : { ...one, load: { ...one.load, scale: { ...one.load.scale, ...changed } } };
  if (scale.grossKg !== null) {
    leaves.push({
      ...{ name: 'scale-gross', value: scale.grossKg, unit: 'kg', basis: 'measured' },
      put: (one, value) => putScale(one, { grossKg: kg(value) }),
    });
  }
  if (scale.tongueN !== null) {
    leaves.push({
      ...{ name: 'scale-tongue', value: scale.tongueN, unit: 'N', basis: 'measured' },
      put: (one, value) => putScale(one, { tongueN: newtons(value) }),
    });
  }
  for (const [place, axleN] of (scale.axleN ?? []).entries()) {
    leaves.push({
      ...{ name: 'scale-axle', subject: String(place + 1), value: axleN, unit: 'N', basis: 'measured' },
      put: (one, value) =>
        putScale(one, {
          axleN: one.load.scale?.axleN?.map((other, at) => (at === place ? newtons(value) : other)) ?? null,
        }),
    });
  }
  return leaves;
}
