import { earliest } from '../calendar/civil-date.js';
import { type WornPart, wornParts } from '../inspection/worn-parts.js';
import type { Clearance } from './clearance.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/**
 * Treads and linings last measured at or past what the annual inspection allows: one flag a measure. Severity `limit`:
 * in commerce it fails the vehicle (Appendix A to Part 396 of 49 CFR), and a worn brake or tire is no better elsewhere.
 */
export function wornPastLimitFlags({ trailer }: FlagContext): readonly Flag[] {
  return [...Map.groupBy(wornParts(trailer), ({ quantity }) => quantity)].flatMap(([quantity, worn]) => {
    const [first] = worn;
    if (first === undefined) return [];
    return [
      {
        key: `worn-past-limit:${quantity}`,
        rule: 'worn-past-limit' as const,
        severity: 'limit' as const,
        since: earliest(worn.map((one) => one.on)),
        evidence: {
          kind: 'worn-past-limit' as const,
          quantity,
          limit: first.limit.value,
          passesAtLimit: first.limit.fails === 'past',
          source: first.limit.source,
          parts: worn.map(({ position, value, on }) => ({ position, value, on })),
        },
        clears: [renewal(worn), passed(first, trailer.facts.checkKinds)] as const,
      },
    ];
  });
}

function renewal(worn: readonly WornPart[]): Clearance {
  const positions = worn.flatMap(({ position }) => position ?? []);
  if (worn[0]?.quantity === 'tread-depth-mm' && positions.length > 0) return { kind: 'replace-tires', positions };
  return {
    kind: 'replace-part',
    part: 'brake-lining',
    position: positions.length === 1 ? (positions[0] ?? null) : null,
  };
}

function passed(
  { checkKindId }: WornPart,
  kinds: readonly { readonly id: string; readonly code: string }[],
): Clearance {
  return { kind: 'pass-check', checkKindId, code: kinds.find((kind) => kind.id === checkKindId)?.code ?? checkKindId };
}
