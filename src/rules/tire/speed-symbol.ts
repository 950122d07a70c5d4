import { type KilometresPerHour, kmPerHour } from '../units/speed.js';

/**
 * Greatest speed in km/h by speed symbol. H stands between U and V, so letters never give the order.
 * Source: speed symbols of UN Regulations No. 30 and No. 54 (their annexes were not read); B to Y agree in four public
 * copies, A1 to A8 are from memory, unverified. I, O and X are not used; Z stands only inside a size such as ZR.
 */
const SPEED_SYMBOL_KMH: ReadonlyMap<string, number> = new Map([
  ['A1', 5],
  ['A2', 10],
  ['A3', 15],
  ['A4', 20],
  ['A5', 25],
  ['A6', 30],
  ['A7', 35],
  ['A8', 40],
  ['B', 50],
  ['C', 60],
  ['D', 65],
  ['E', 70],
  ['F', 80],
  ['G', 90],
  ['J', 100],
  ['K', 110],
  ['L', 120],
  ['M', 130],
  ['N', 140],
  ['P', 150],
  ['Q', 160],
  ['R', 170],
  ['S', 180],
  ['T', 190],
  ['U', 200],
  ['H', 210],
  ['V', 240],
  ['W', 270],
  ['Y', 300],
]);

/** The speed up to which a tire carries its rated load; null for a symbol the table does not have. Small letters are read as large ones. */
export function speedOfSymbol(symbol: string): KilometresPerHour | null {
  const speed = SPEED_SYMBOL_KMH.get(symbol.trim().toUpperCase());
  return speed === undefined ? null : kmPerHour(speed);
}
