import { type CivilDate, dayOfWeek } from '../../rules/calendar/civil-date.js';
import { type Kilometres, toMiles } from '../../rules/units/distance.js';
import { type Newtons, toLbf } from '../../rules/units/force.js';
import { type Metres, toInch } from '../../rules/units/length.js';
import { type Kilograms, toLb } from '../../rules/units/mass.js';
import { type Kilopascals, toPsi } from '../../rules/units/pressure.js';

// This is the door at which SI becomes what the reader's gauges show: pounds, miles, psi, inches.

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `Mon 9 Jun`, with the year only when it is another than `asOf`'s. Never "today": a letter is read later. */
export function onDay(date: CivilDate, asOf: CivilDate): string {
  const [year = '', month = '', day = ''] = date.split('-');
  const near = `${DAYS[dayOfWeek(date)]} ${Number(day)} ${MONTHS[Number(month) - 1]}`;
  return year === asOf.slice(0, 4) ? near : `${near} ${year}`;
}

/** `Mon 9 Jun`, or `Mon 9 Jun to Wed 11 Jun`. */
export function onDays(from: CivilDate, to: CivilDate, asOf: CivilDate): string {
  return from === to ? onDay(from, asOf) : `${onDay(from, asOf)} to ${onDay(to, asOf)}`;
}

export function pounds(mass: Kilograms): string {
  return `${number(toLb(mass))} lb`;
}

/** The least of something: rounded up, so that what is done by it is never too little. A millionth of a pound is noise. */
export function poundsUp(mass: Kilograms): string {
  return `${number(Math.ceil(toLb(mass) - 1e-6))} lb`;
}

/** A force, as a scale would show it. */
export function poundsOf(force: Newtons): string {
  return `${number(toLbf(force))} lb`;
}

export function milesOf(distance: Kilometres): string {
  const miles = toMiles(distance);
  return `${number(miles, miles < 20 ? 1 : 0)} mi`;
}

export function psiOf(pressure: Kilopascals): string {
  return `${number(toPsi(pressure))} psi`;
}

export function inches(length: Metres): string {
  return `${number(toInch(length), 1)} in`;
}

/** As balls are stamped, in sixteenths: `2-5/16 in`, `2 in`. What is no sixteenth is told in decimals. */
export function ballSize(length: Metres): string {
  const sixteenths = Math.round(toInch(length) * 16);
  if (Math.abs(toInch(length) * 16 - sixteenths) > 0.1) return `${number(toInch(length), 2)} in`;
  const whole = Math.floor(sixteenths / 16);
  let [top, bottom] = [sixteenths % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const fraction = top === 0 ? [] : [`${top}/${bottom}`];
  return `${[...(whole === 0 ? [] : [whole]), ...fraction].join('-')} in`;
}

export function percent(share: number): string {
  return `${number(share * 100, 1)} %`;
}

export function hours(value: number): string {
  return value < 1 ? `${Math.round(value * 60)} min` : `${number(value, 1)} h`;
}

export function number(value: number, decimals = 0): string {
  // Adding 0 turns -0 into 0.
  return (Number(value.toFixed(decimals)) + 0).toLocaleString('en-US', { maximumFractionDigits: decimals });
}

export function count(many: number, one: string): string {
  return `${number(many)} ${many === 1 ? one : `${one}s`}`;
}

/** `seals`, `seals and shoes`, `seals, shoes and magnets`. */
export function list(items: readonly string[]): string {
  return items.length <= 1 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** What somebody wrote, as a sentence: with a capital and one full stop. */
export function sentence(text: string): string {
  return `${capital(text.trim().replace(/[.\s]+$/, ''))}.`;
}

/** `1L` → `axle 1 left`; `2RO` → `axle 2 right outer`; `spare` → `the spare`. */
export function wheel(position: string): string {
  if (position === 'spare') return 'the spare';
  const match = /^(\d+)([LR])([IO])?$/.exec(position);
  if (match === null) return position;
  const side = match[2] === 'L' ? 'left' : 'right';
  const place = match[3] === undefined ? '' : match[3] === 'I' ? ' inner' : ' outer';
  return `axle ${match[1]} ${side}${place}`;
}
