import type { Metres } from '../units/length.js';
import { type Kilopascals, kPa } from '../units/pressure.js';
import { absolute, type Celsius, fromAbsolute, type Kelvin } from '../units/temperature.js';

/** Pressure of the standard atmosphere at sea level, kPa, absolute. Source: ISO 2533:1975; U.S. Standard Atmosphere, 1976. */
const SEA_LEVEL_KPA = 101.325;

/** Temperature at sea level, K, its fall with height, K/m, and g·M/(R·lapse), of the same atmosphere below 11 km. */
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const EXPONENT = 5.25588;

/**
 * What the air presses with at a height above the sea, absolute kPa: 101.325 (1 − 0.0065 h / 288.15)^5.25588.
 * Source: ISO 2533:1975 and U.S. Standard Atmosphere, 1976, lowest layer. Weather moves it by about ±3 %, worth less
 * than 1 psi on a tire. Throws RangeError outside −500 to 11,000 m, where no road goes and the formula ends.
 */
export function airPressureAt(heightM: Metres): Kilopascals {
  if (!(heightM >= -500 && heightM <= 11_000)) throw new RangeError(`${heightM} m is no height of a road`);
  return kPa(SEA_LEVEL_KPA * (1 - (LAPSE_K_PER_M * heightM) / SEA_LEVEL_K) ** EXPONENT);
}

/** A tire's gauge pressure, how warm its air was, and how high above the sea it was read. */
export interface AirState {
  readonly gaugeKpa: Kilopascals;
  readonly airC: Celsius;
  /** Null is sea level. */
  readonly heightM?: Metres | null;
}

/**
 * The gauge pressure of the same air at another temperature and height, no air let in or out:
 * (P2 + air2) / (P1 + air1) = T2 / T1, pressures and temperatures absolute.
 * Source: ideal gas law at constant volume; a tire swells by under 1 %. A ratio of gauge pressures, or of degrees
 * Fahrenheit, gives a wrong answer: 80 psi at 70 °F is 71.1 psi at 20 °F, not 72.5.
 */
export function pressureWhen(
  read: AirState,
  airC: Celsius,
  { heightM = read.heightM ?? null }: Pick<AirState, 'heightM'> = {},
): Kilopascals {
  const ratio = kelvin(airC) / kelvin(read.airC);
  return kPa(absolutePressure(read) * ratio - around(heightM));
}

/** How warm the air of a tire has become when its gauge, at the same height, shows `gaugeKpa`. */
export function temperatureWhen(read: AirState, gaugeKpa: Kilopascals): Celsius {
  const ratio = (gaugeKpa + around(read.heightM ?? null)) / absolutePressure(read);
  return fromAbsolute((kelvin(read.airC) * ratio) as Kelvin);
}

function absolutePressure({ gaugeKpa, heightM = null }: AirState): number {
  return gaugeKpa + around(heightM);
}

function around(heightM: Metres | null): number {
  return heightM === null ? SEA_LEVEL_KPA : airPressureAt(heightM);
}

function kelvin(airC: Celsius): Kelvin {
  const temperature = absolute(airC);
  if (!(temperature > 0)) throw new RangeError(`${airC} °C is below absolute zero`);
  return temperature;
}
