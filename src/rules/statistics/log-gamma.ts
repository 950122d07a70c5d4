/**
 * ln Γ(x) for x > 0, to about 15 significant figures. Throws RangeError for x ≤ 0 or not a number.
 * Source: C. Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86–96, with P. Godfrey's coefficients for g = 607/128, n = 15.
 * Checked against R's lgamma in the tests.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`ln Γ(x) is worked out for x above 0 only, not for ${x}`);
  let sum = COEFFICIENTS[0] as number;
  for (let i = 1; i < COEFFICIENTS.length; i++) sum += (COEFFICIENTS[i] as number) / (x + i - 1);
  const t = x + G - 0.5;
  return (x - 0.5) * Math.log(t) - t + Math.log(sum) + HALF_LN_2_PI;
}

const G = 607 / 128;
const HALF_LN_2_PI = 0.5 * Math.log(2 * Math.PI);
const COEFFICIENTS = [
  0.9999999999999971, 57.15623566586292, -59.59796035547549, 14.136097974741746, -0.4919138160976202,
  3.399464998481189e-5, 4.652362892704858e-5, -9.837447530487956e-5, 0.0001580887032249125, -0.00021026444172410488,
  0.00021743961811521265, -0.0001643181065367639, 8.441822398385275e-5, -2.6190838401581408e-5, 3.6899182659531625e-6,
];
