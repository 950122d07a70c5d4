/** What is known with what was told laid over it. Left out (undefined) changes nothing; null makes a field unknown. */
export function merged(known: object, told: object): object {
  return { ...known, ...Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined)) };
}
