/**
 * Whether a value is past its limit by more than arithmetic noise.
 *
 * Converting pounds to kilograms and adding leaves errors near 1e-15 of the value; without this a load of
 * exactly the rating could read "over by 0". One part in a billion is a million times that noise and
 * a millionth of what any scale can show, so no real overload hides in it.
 */
export function exceeds(value: number, limit: number): boolean {
  return value - limit > Math.abs(limit) * 1e-9;
}
