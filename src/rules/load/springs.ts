import { type Newtons, newtons } from '../units/force.js';
import { type Metres, metres } from '../units/length.js';
import type { Resultant } from './statics.js';

/**
 * Statics of a trailer on independent axles: torsion axles, each its own spring on a rigid frame that is hinged at a
 * coupler of fixed height. Places rearward from the coupler; heights positive upward; pitch positive with the rear up.
 *
 *     F_i = k_i (h + g_i − z − θ x_i) ≥ 0        Σ F_i x_i = M        T = W − Σ F_i
 *
 * k_i the rate of an axle, h the free offset (how far every axle is pressed up at level), g_i the ground under it,
 * z how far the coupler is raised above level, θ the pitch, M the moment of all weights about the coupler.
 *
 * Source: plane statics of a rigid beam on springs that push and never pull, pitch small (sin θ = θ; at 3 degrees the
 * error is 0.05 %). It leaves out the frame's own bending, which evens the shares a little, and damping and speed.
 */
export interface SpringAxle {
  readonly fromCouplerM: Metres;
  /** Of the whole axle, both wheels together, N per metre of travel. */
  readonly rateNPerM: number;
}

/** How the trailer stands on the ground. */
export interface Stance {
  /** Coupler above the height at which the frame is level; nose high is positive. */
  readonly raisedM: Metres;
  /** Ground under each axle against the ground under the tow vehicle: a bump is positive, a dip negative. Null is flat. */
  readonly groundM: readonly Metres[] | null;
}

interface SpringLoads {
  /** Each axle from the front, never below zero. */
  readonly axleN: readonly Newtons[];
  readonly onAxlesN: Newtons;
  readonly tongueN: Newtons;
  /** Pitch against level, radians; rear up is positive. */
  readonly pitch: number;
  /** Whether any axle has left the ground. */
  readonly lifted: boolean;
}

/**
 * How far every axle is pressed up when the trailer stands level under this moment: h = M / Σ k_i x_i, metres.
 * That is what "level" fixes: the height of the coupler at which it was found level holds for this load.
 * Throws RangeError for a moment that does not press the axles down, and for axles without a rate or not behind the coupler.
 */
export function freeOffset(axles: readonly SpringAxle[], momentNm: number): Metres {
  requireSprings(axles);
  requirePressed(momentNm, 'N·m');
  let sumKx = 0;
  for (const { fromCouplerM, rateNPerM } of axles) sumKx += rateNPerM * fromCouplerM;
  return metres(momentNm / sumKx);
}

function requireSprings(axles: readonly SpringAxle[]): void {
  if (axles.length === 0) throw new RangeError('no axles: at least one must carry the trailer');
  for (const { fromCouplerM, rateNPerM } of axles) {
    if (!(fromCouplerM > 0)) throw new RangeError(`an axle ${fromCouplerM} m behind the coupler: must be above 0`);
    if (!(rateNPerM > 0)) throw new RangeError(`a spring rate of ${rateNPerM} N/m: must be above 0`);
  }
}

function requirePressed(value: number, unit: string): void {
  if (!(value > 0)) throw new RangeError(`${value} ${unit} does not press the axles down: must be above 0`);
}

/**
 * What each axle and the tongue carry. `offsetM` is the free offset of the trailer as built (`freeOffset` of the load
 * under which it was level). Throws RangeError as `freeOffset` does.
 *
 * An axle that would have to pull is off the ground: it is set to zero and the rest solved again. Taking one away raises
 * the rear, so one that has lifted never comes down again and at most as many rounds as axles are needed.
 */
export function springLoads(
  axles: readonly SpringAxle[],
  { weightN, momentNm }: Resultant,
  offsetM: Metres,
  { raisedM, groundM }: Stance,
): SpringLoads {
  requireSprings(axles);
  requirePressed(momentNm, 'N·m');
  const pressed = axles.map((_, index) => offsetM + (groundM?.[index] ?? 0) - raisedM);
  const touches = axles.map(() => true);
  let pitch = 0;
  for (let settled = false; !settled; ) {
    pitch = pitchFor(axles, pressed, touches, momentNm);
    settled = true;
    for (let index = 0; index < axles.length; index++) {
      const { fromCouplerM } = axles[index] as SpringAxle;
      if (!touches[index] || (pressed[index] as number) - pitch * fromCouplerM >= 0) continue;
      touches[index] = false;
      settled = false;
    }
  }
  let onAxlesN = 0;
  const axleN = axles.map(({ fromCouplerM, rateNPerM }, index) => {
    const force = touches[index] ? rateNPerM * ((pressed[index] as number) - pitch * fromCouplerM) : 0;
    onAxlesN += force;
    return newtons(force);
  });
  const tongueN = newtons(weightN - onAxlesN);
  return { axleN, onAxlesN: newtons(onAxlesN), tongueN, pitch, lifted: touches.includes(false) };
}

/** θ = (Σ k_i x_i p_i − M) / Σ k_i x_i² over the axles that touch, p_i being how far axle i is pressed at zero pitch. */
function pitchFor(
  axles: readonly SpringAxle[],
  pressed: readonly number[],
  touches: readonly boolean[],
  momentNm: number,
): number {
  let moment = -momentNm;
  let stiffness = 0;
  for (let index = 0; index < axles.length; index++) {
    if (!touches[index]) continue;
    const { fromCouplerM, rateNPerM } = axles[index] as SpringAxle;
    moment += rateNPerM * fromCouplerM * (pressed[index] as number);
    stiffness += rateNPerM * fromCouplerM * fromCouplerM;
  }
  return moment / stiffness;
}

/** Where independent axles carry together, standing level: Σ k_i x_i / Σ k_i, rearward from the coupler. */
export function springCentre(axles: readonly SpringAxle[]): Metres {
  let [sumK, sumKx] = [0, 0];
  for (const { fromCouplerM, rateNPerM } of axles) {
    sumK += rateNPerM;
    sumKx += rateNPerM * fromCouplerM;
  }
  return metres(sumKx / sumK);
}

/** The most an axle can ever carry, N: all of the moment on it alone, every other axle off the ground. */
export function aloneOn(axle: Pick<SpringAxle, 'fromCouplerM'>, momentNm: number): Newtons {
  return newtons(momentNm / axle.fromCouplerM);
}

/**
 * What each axle carries when it is known what they carry together (a scale said so, at this hitch height), N. The
 * load's moment is then unknown in place of that sum: the two conditions Σ F_i = S and Σ F_i x_i = h Σ k_i x_i, the
 * second being that the trailer was found level under this load, give h and θ. Lifted axles as in `springLoads`.
 * Throws RangeError for a sum not above 0, and for axles without a rate or not behind the coupler.
 */
export function springsUnder(
  axles: readonly SpringAxle[],
  onAxlesN: Newtons,
  raisedM: Metres,
): Pick<SpringLoads, 'axleN' | 'lifted'> {
  requireSprings(axles);
  requirePressed(onAxlesN, 'N');
  const touches = axles.map(() => true);
  for (;;) {
    const { offset, pitch } = offsetAndPitchFor(axles, touches, onAxlesN, raisedM);
    const forces = axles.map(({ fromCouplerM, rateNPerM }) => rateNPerM * (offset - raisedM - pitch * fromCouplerM));
    const pulling = forces.map((force, index) => (touches[index] as boolean) && force < 0);
    if (!pulling.includes(true)) {
      const axleN = forces.map((force, index) => newtons(touches[index] ? force : 0));
      return { axleN, lifted: touches.includes(false) };
    }
    for (const [index, pulls] of pulling.entries()) if (pulls) touches[index] = false;
  }
}

function offsetAndPitchFor(
  axles: readonly SpringAxle[],
  touches: readonly boolean[],
  onAxlesN: number,
  raisedM: number,
): { offset: number; pitch: number } {
  let [sumK, sumKx, sumKxx, allKx] = [0, 0, 0, 0];
  for (const [index, { fromCouplerM, rateNPerM }] of axles.entries()) {
    allKx += rateNPerM * fromCouplerM;
    if (!touches[index]) continue;
    sumK += rateNPerM;
    sumKx += rateNPerM * fromCouplerM;
    sumKxx += rateNPerM * fromCouplerM * fromCouplerM;
  }
  const lifted = allKx - sumKx;
  const sum = onAxlesN + sumK * raisedM;
  const determinant = sumK * sumKxx + sumKx * lifted;
  return {
    offset: (sum * sumKxx - sumKx * sumKx * raisedM) / determinant,
    pitch: -(sumK * sumKx * raisedM + lifted * sum) / determinant,
  };
}
