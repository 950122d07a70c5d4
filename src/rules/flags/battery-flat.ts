import type { CheckRecord } from '../facts/check.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/** At rest; a 12 V lead battery below it is flat. Common practice, no source. */
const FLAT_V = 11.9;

/** The check whose battery is the tilt's power unit's, not the breakaway's. */
const POWER_UNIT = 'power-unit';

/**
 * The breakaway battery was last read below 11.9 V at rest. It must put the brakes on and hold them for 15 minutes (49 CFR
 * 393.43(d)); the voltage is a sign that it will not, so severity `limit`. A later pass of the same check, a reading at
 * or above it, or a battery fitted since clears it.
 */
export function batteryFlatFlags({ trailer }: FlagContext): readonly Flag[] {
  const kinds = new Map(trailer.facts.checkKinds.map((kind) => [kind.id, kind.code]));
  let last: { readonly record: CheckRecord; readonly volts: number } | null = null;
  for (const record of trailer.records) {
    const code = kinds.get(record.checkKindId);
    if (code === undefined || code === POWER_UNIT) continue;
    const volts = voltsIn(record);
    if (volts !== null) last = { record, volts };
    else if (record.outcome === 'pass' && last?.record.checkKindId === record.checkKindId) last = null;
  }
  if (last === null || last.volts >= FLAT_V) return [];
  const { record, volts } = last;
  const isRenewed = trailer.facts.parts.some(
    ({ kind, fittedOn }) =>
      kind === 'battery' && fittedOn !== null && fittedOn <= trailer.asOf && fittedOn > record.doneOn,
  );
  if (isRenewed) return [];
  const code = kinds.get(record.checkKindId) ?? record.checkKindId;
  return [
    {
      key: 'battery-flat',
      rule: 'battery-flat',
      severity: 'limit',
      since: record.doneOn,
      evidence: { kind: 'battery-flat', volts, limit: FLAT_V },
      clears: [{ kind: 'pass-check', checkKindId: record.checkKindId, code }],
    },
  ];
}

function voltsIn(record: CheckRecord): number | null {
  const line = record.lines.findLast(({ measured }) => measured?.quantity === 'battery-v');
  return line?.measured?.value ?? null;
}
