/** Chance with a fixed seed, for simulations in tests. mulberry32, in the public domain. */
export class Chance {
  constructor(private seed: number) {}

  /** Between 0 and 1, never 1. */
  uniform(): number {
    this.seed = (this.seed + 0x6d2b79f5) | 0;
    let t = Math.imul(this.seed ^ (this.seed >>> 15), 1 | this.seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.uniform();
  }

  happens(chance: number): boolean {
    return this.uniform() < chance;
  }

  /** Box and Muller, Ann. Math. Statist. 29 (1958) 610. */
  normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.uniform())) * Math.cos(2 * Math.PI * this.uniform());
  }

  /** Gamma with a mean and a coefficient of variation below 1. Marsaglia and Tsang, ACM Trans. Math. Softw. 26 (2000) 363. */
  gamma(mean: number, variation: number): number {
    const shape = 1 / variation ** 2;
    const d = shape - 1 / 3;
    for (;;) {
      const x = this.normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(1 - this.uniform()) < x ** 2 / 2 + d * (1 - v + Math.log(v))) return (mean * d * v) / shape;
    }
  }
}
