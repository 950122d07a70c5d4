import type { Quantity } from './quantity.js';

/** On the Celsius scale. Ratios of these mean nothing: take `absolute` first. */
export type Celsius = Quantity<'°C'>;
export type Kelvin = Quantity<'K'>;

/** Zero of the Celsius scale, K, exact by definition. Source: BIPM SI Brochure (9th ed.), 2.3.1. */
const ZERO_CELSIUS_K = 273.15;

export function celsius(value: number): Celsius {
  return value as Celsius;
}

/** Source of the conversion: NIST SP 811 (2008), appendix B.8. */
export function fahrenheit(value: number): Celsius {
  return celsius((value - 32) / 1.8);
}

export function toFahrenheit(temperature: Celsius): number {
  return temperature * 1.8 + 32;
}

export function absolute(temperature: Celsius): Kelvin {
  return (temperature + ZERO_CELSIUS_K) as Kelvin;
}

export function fromAbsolute(temperature: Kelvin): Celsius {
  return celsius(temperature - ZERO_CELSIUS_K);
}
