/**
 * Numbers from 0 up to 1 that look scattered and are the same every time for the same name,
 * so that two fresh demo yards never differ. A linear congruential generator with the constants of
 * Numerical Recipes (2nd ed., §7.1); good enough to scatter dates, for nothing else.
 */
export function spread(name: string): () => number {
  let state = [...name].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) >>> 0, 7);
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
