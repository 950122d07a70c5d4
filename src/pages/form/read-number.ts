/**
 * A number as people write it: `14,000`, `2 5/16`, `-3.5`, or with its unit after it, such as `14,000 lb`.
 * Returns null for an empty field, which means unknown, and NaN for what is no number: the use case then says the fix.
 */
export function readNumber(text: string, units: readonly string[] = []): number | null {
  const bare = stripUnit(text.trim(), units);
  if (bare === '') return text.trim() === '' ? null : Number.NaN;
  const mixed = /^(\d+)[ -](\d+)\/(\d+)$/.exec(bare) ?? /^()(\d+)\/(\d+)$/.exec(bare);
  if (mixed) {
    const [whole, over, under] = [Number(mixed[1] || 0), Number(mixed[2]), Number(mixed[3])];
    return under === 0 ? Number.NaN : whole + over / under;
  }
  // Groups of three, or no groups at all: "1,5" is a slip, not fifteen.
  if (!/^[+-]?(\d{1,3}([, ]\d{3})+|\d+)?(\.\d+)?$/.test(bare)) return Number.NaN;
  return /\d/.test(bare) ? Number(bare.replace(/[, ]/g, '')) : Number.NaN;
}

/** Inches, where feet may be written too: `92`, `92.5 in`, `20 ft`, `18' 6"`, `18 ft 6 in`. */
export function readInches(text: string): number | null {
  const feet = /^(.+?)\s*(?:ft|feet|foot|['′])\s*(?:(.*?)\s*(?:in|inch|inches|["″])?)?$/i.exec(text.trim());
  if (!feet) return readNumber(text, ['in', 'inch', 'inches', '"', '″']);
  const whole = readNumber(feet[1] ?? '');
  const rest = readNumber(feet[2] ?? '');
  return whole === null ? Number.NaN : whole * 12 + (rest ?? 0);
}

function stripUnit(text: string, units: readonly string[]): string {
  const lower = text.toLowerCase();
  const unit = units.find((one) => lower.endsWith(one));
  return unit === undefined ? text : text.slice(0, -unit.length).trim();
}
