import type { ComponentChildren } from 'preact';

/** Stands beside every result by which someone could be hurt. */
export function Caution({ children }: { readonly children?: ComponentChildren }) {
  return (
    <p class="caution" role="note">
      {children ? <>{children} </> : null}
      This is arithmetic on what was entered. The plate, the maker's manual, local law and a qualified person come
      first.
    </p>
  );
}
