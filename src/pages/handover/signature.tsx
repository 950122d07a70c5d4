import type { Signature } from '../../rules/facts/handover.js';
import { Field, type Typed, typedText } from '../components/field.js';
import { Island } from '../components/island.js';

/** The customer's signature as it was drawn or typed; a line to sign on where there is none. */
export function Signed({ signature, by }: { readonly signature: Signature | null; readonly by: string }) {
  const strokes = signature?.strokes ?? [];
  const height = Math.max(200, ...strokes.flatMap(({ points }) => points.filter((_, at) => at % 2 === 1)));
  return (
    <div class="signed">
      {strokes.length > 0 && (
        <svg viewBox={`0 0 1000 ${height + 20}`} role="img" aria-label={`Signature of ${signature?.name ?? by}`}>
          {strokes.map(({ points }) => (
            <polyline
              key={points.join(' ')}
              points={points.join(' ')}
              fill="none"
              stroke="currentColor"
              stroke-width="6"
            />
          ))}
        </svg>
      )}
      {strokes.length === 0 && signature?.name && <p class="signed-name">{signature.name}</p>}
      {signature === null && <p class="signed-line" aria-hidden="true" />}
      <p class="soft small">{signature === null ? `Signature of ${by}` : `Signed by ${signature.name ?? by}`}</p>
    </div>
  );
}

/** A name typed or a signature drawn; the pad comes with script, the name goes without. */
export function SignatureFields({ typed, why }: { readonly typed: Typed; readonly why: string }) {
  return (
    <>
      <Field typed={typed} name="signature.name" label="Customer signs: name typed" hint={why} maxLength={80} wide />
      <div class="pad-place">
        <Island name="signature-pad" data={null}>
          <input type="hidden" name="signature.strokes" value={typedText(typed, 'signature.strokes')} />
        </Island>
      </div>
    </>
  );
}
