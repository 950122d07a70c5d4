import type { CivilDate } from '../calendar/civil-date.js';
import type { MeasuredQuantity } from '../facts/check.js';
import type { PartKind } from '../facts/part.js';
import { partsOn } from '../facts/parts-on.js';
import { order } from '../history/order.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { lawOnMeasure, passesWear, type WearLimit } from '../law/wear.js';
import { parseWheelPosition } from '../trailer/wheel-positions.js';

/** A measure last found past what the annual inspection allows. */
export interface WornPart {
  readonly quantity: MeasuredQuantity;
  /** Null where the line was measured once for the whole trailer. */
  readonly position: string | null;
  /** In the unit of its quantity, as is the limit's. */
  readonly value: number;
  readonly limit: WearLimit;
  readonly on: CivilDate;
  readonly checkKindId: string;
}

/** The part whose fitting makes an earlier measure of it void. */
const MEASURED_ON: Readonly<Partial<Record<MeasuredQuantity, PartKind>>> = {
  'tread-depth-mm': 'tire',
  'lining-mm': 'brake-set',
};

/**
 * Every part whose last measure fails the annual inspection (`law/wear.ts`), by quantity and place; a spare's tread does
 * not count, since it does not carry. A part fitted since, or a later pass of the same check, makes a measure void:
 * somebody has seen to it.
 */
export function wornParts(trailer: TrailerOn): readonly WornPart[] {
  const found = new Map<string, WornPart>();
  for (const record of trailer.records) {
    if (record.outcome === 'pass') {
      for (const [key, earlier] of found) if (earlier.checkKindId === record.checkKindId) found.delete(key);
    }
    for (const { position, measured } of record.lines) {
      if (measured === null || position === 'spare') continue;
      const { quantity, value } = measured;
      const limit = lawOnMeasure(quantity, brakesAt(position, trailer));
      if (limit === null) continue;
      const key = `${quantity} ${position ?? ''}`;
      if (passesWear(limit, value)) found.delete(key);
      else found.set(key, { quantity, position, value, limit, on: record.doneOn, checkKindId: record.checkKindId });
    }
  }
  if (found.size === 0) return [];
  return [...found.values()]
    .filter((one) => !isRenewed(one, trailer))
    .sort((a, b) => order(a.quantity, b.quantity) || order(a.position ?? '', b.position ?? ''));
}

function brakesAt(position: string | null, { build }: TrailerOn) {
  const place = position === null ? null : parseWheelPosition(position);
  if (place?.kind !== 'axle') return null;
  return build?.axles.find((axle) => axle.number === place.axle)?.brakes ?? null;
}

function isRenewed({ quantity, position, on }: WornPart, { facts, asOf }: TrailerOn): boolean {
  const kind = MEASURED_ON[quantity];
  if (kind === undefined) return false;
  return partsOn(facts.parts, kind, asOf).some(
    (part) => part.position === position && part.fittedOn !== null && part.fittedOn > on,
  );
}
