import { applies } from '../inspection/applies.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';

/**
 * The paper that must ride with the trailer was looked for and not there: its own fault, even when the check is in
 * date. Source for the periodic inspection: 49 CFR 396.17(c), report or decal on the vehicle. When nobody looked, it is
 * listed as unknown instead.
 */
export function missingProofFlags({ trailer, use }: FlagContext): readonly Flag[] {
  return trailer.facts.checkKinds.flatMap((kind) => {
    const pass = use.lastPass.get(kind.id);
    if (kind.proof === null || pass?.proofOnTrailer !== false || !applies(kind.appliesTo, trailer.build)) return [];
    return [
      {
        key: `missing-proof:${kind.code}`,
        rule: 'missing-proof' as const,
        severity: 'limit' as const,
        since: pass.doneOn,
        evidence: { kind: 'proof-missing' as const, checkKindId: kind.id, code: kind.code, what: kind.proof.what },
        clears: [
          { kind: 'carry-proof' as const, checkKindId: kind.id, code: kind.code, what: kind.proof.what },
        ] as const,
      },
    ];
  });
}
