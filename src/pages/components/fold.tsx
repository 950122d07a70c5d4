import type { ComponentChildren } from 'preact';

interface FoldProps {
  /** What is inside, told while it is folded. */
  readonly summary: string;
  readonly children: ComponentChildren;
}

/** Folded on a phone, where it would be metres long; laid open at a desk. */
export function PhoneFold({ summary, children }: FoldProps) {
  return (
    <details class="fold phone-fold">
      <summary class="strong">{summary}</summary>
      {children}
    </details>
  );
}
