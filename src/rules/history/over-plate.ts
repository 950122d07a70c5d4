import type { BuildSheet } from '../facts/build-sheet.js';
import type { Trip } from '../facts/use.js';
import { exceeds } from '../units/compare.js';

/** Whether a trip's gross weight passed the plate; false when either is unknown. The cheap question, asked of every trip ever made. */
export function overPlate(trip: Trip, build: BuildSheet | null): boolean {
  const gvwrKg = build?.plate.gvwrKg ?? null;
  if (build === null || gvwrKg === null) return false;
  const ticketKg = trip.load.scale?.grossKg ?? null;
  if (ticketKg !== null) return exceeds(ticketKg, gvwrKg);
  if (build.empty.massKg === null) return false;
  let grossKg: number = build.empty.massKg;
  for (const item of trip.load.cargo) grossKg += item.massKg;
  return exceeds(grossKg, gvwrKg);
}
