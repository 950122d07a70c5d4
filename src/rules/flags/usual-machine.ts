import type { Machine } from '../facts/load.js';
import type { Job, Trip } from '../facts/use.js';
import { order } from '../history/order.js';

/** The machine a haul is about: the one named for it, else the heaviest machine among its cargo. */
export function machineOf(haul: Pick<Trip | Job, 'machineId' | 'load'>): string | null {
  if (haul.machineId !== null) return haul.machineId;
  const machines = haul.load.cargo.filter((item) => item.machineId !== null);
  return machines.toSorted((a, b) => b.massKg - a.massKg)[0]?.machineId ?? null;
}

/** The most frequent id; of equally frequent ones the one that comes first as text. Null when there is none. */
export function mostCommon(ids: readonly (string | null)[]): string | null {
  const counts = new Map<string, number>();
  for (const id of ids) if (id !== null) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || order(a[0], b[0]))[0]?.[0] ?? null;
}

/** The machine that does this one's work today, following replacements to the last. */
export function successorOf(machineId: string, machines: readonly Machine[]): string {
  const seen = new Set([machineId]);
  let current = machineId;
  for (;;) {
    const next = machines
      .filter((machine) => machine.replacesMachineId === current && !seen.has(machine.id))
      .sort((a, b) => order(b.id, a.id))[0];
    if (next === undefined) return current;
    seen.add(next.id);
    current = next.id;
  }
}
