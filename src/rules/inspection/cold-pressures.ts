import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { type Kilopascals, kPa } from '../units/pressure.js';

/** A cold pressure last found in one tire. */
export interface FoundPressure {
  readonly position: string;
  readonly coldKpa: Kilopascals;
  readonly on: CivilDate;
}

/**
 * The cold pressure last found at each wheel. A tire fitted since, or a later pass of the same check that read no
 * pressure there, makes an old finding void: somebody has seen to it.
 */
export function coldPressuresFound(trailer: TrailerOn): ReadonlyMap<string, FoundPressure> {
  const found = new Map<string, FoundPressure & { readonly checkKindId: string }>();
  for (const record of trailer.records) {
    if (record.outcome === 'pass') {
      for (const [position, earlier] of found) if (earlier.checkKindId === record.checkKindId) found.delete(position);
    }
    for (const { position, measured } of record.lines) {
      if (position === null || measured?.quantity !== 'cold-pressure-kpa') continue;
      found.set(position, {
        position,
        coldKpa: kPa(measured.value),
        on: record.doneOn,
        checkKindId: record.checkKindId,
      });
    }
  }
  for (const tire of trailer.tires) {
    const finding = tire.position === null ? undefined : found.get(tire.position);
    if (finding !== undefined && tire.fittedOn !== null && tire.fittedOn > finding.on) found.delete(finding.position);
  }
  return found;
}
