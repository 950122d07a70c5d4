import type { Load, ScaleTicket } from '../facts/load.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import type { LoadLimits } from '../load/load-limits.js';
import { axlesMoved, type Torsion } from '../load/torsion.js';
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

function trailerLeaves({ emptyKg, emptyWeighed, emptyTongueN, axleCentreM, torsion }: LoadLimits): Leaf<LoadCase>[] {
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
      put: (one, value) => ({
        ...one,
        limits: {
          ...one.limits,
          axleCentreM: metres(value),
          torsion: torsion === null ? null : axlesMoved(torsion, metres(value - axleCentreM)),
        },
      }),
    });
  }
  return torsion === null ? leaves : [...leaves, ...torsionLeaves(torsion)];
}

/** What splits torsion axles. A stiffness nobody entered is no fact to be put to another value. */
function torsionLeaves(torsion: Torsion): Leaf<LoadCase>[] {
  const put = (one: LoadCase, changed: Partial<Torsion>): LoadCase => ({
    ...one,
    limits: { ...one.limits, torsion: { ...torsion, ...changed } },
  });
  const leaves: Leaf<LoadCase>[] = [];
  if (torsion.levelHeightM !== null) {
    leaves.push({
      ...{ name: 'level-height', value: torsion.levelHeightM, unit: 'm', basis: 'stated', doubt: TAPE_DOUBT_M / 2 },
      put: (one, value) => put(one, { levelHeightM: metres(value) }),
    });
  }
  const springs = torsion.rates?.known ? torsion.rates.softest : [];
  for (const [place, { rateNPerM }] of springs.entries()) {
    leaves.push({
      ...{ name: 'spring-rate', subject: String(place + 1), value: rateNPerM, unit: 'N/m', basis: 'stated' },
      put: (one, value) => {
        const axles = springs.map((spring, at) => (at === place ? { ...spring, rateNPerM: value } : spring));
        return put(one, { rates: { known: true, softest: axles, stiffest: axles } });
      },
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
  const leaves = itemPlaceLeaves(load);
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

function itemPlaceLeaves(load: Load): Leaf<LoadCase>[] {
  return load.cargo.flatMap((item, place) => {
    if (item.fromCouplerM === null) return [];
    const leaf: Leaf<LoadCase> = {
      ...{ name: 'cargo-place', subject: item.name, value: item.fromCouplerM, unit: 'm' },
      ...{ basis: 'stated', doubt: TAPE_DOUBT_M },
      put: (one, value) => ({
        ...one,
        load: {
          ...one.load,
          cargo: one.load.cargo.map((other, at) => (at === place ? { ...other, fromCouplerM: metres(value) } : other)),
        },
      }),
    };
    return [leaf];
  });
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
