import { type Kilograms, kg } from '../units/mass.js';
import { FIRST_LOAD_INDEX, LOAD_INDEX_KG } from './load-index-table.js';

/**
 * What a tire of this load index may carry, kg, at the pressure and speed its maker states.
 * Null for an index outside 50 to 180, or one that is no whole number: the table says nothing about it.
 */
export function loadIndexCapacity(loadIndex: number): Kilograms | null {
  const capacity = LOAD_INDEX_KG[loadIndex - FIRST_LOAD_INDEX];
  return capacity === undefined ? null : kg(capacity);
}
