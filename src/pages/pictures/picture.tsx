import type { ComponentChildren } from 'preact';

interface PictureProps {
  /** What it shows, in a few words: its name for whoever does not see it. */
  readonly title: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly children: ComponentChildren;
  /** What it says, in words, for everybody. */
  readonly words: ComponentChildren;
  /** The words are folded away, where something to handle must stand right under the drawing. */
  readonly isFolded?: boolean | undefined;
}

/** A drawing made on the server, with the same told in words below it. */
export function Picture({ title, left, top, width, height, children, words, isFolded }: PictureProps) {
  const box = [left, top, width, height].map((one) => Math.round(one)).join(' ');
  return (
    <figure class="picture">
      <svg viewBox={box} role="img" aria-label={title}>
        {children}
      </svg>
      <figcaption class="small soft">
        {isFolded ? (
          <details class="more">
            <summary>In words</summary>
            {words}
          </details>
        ) : (
          words
        )}
      </figcaption>
    </figure>
  );
}

/** A number of a drawing: a tenth is finer than any screen, and keeps the page small. */
export function at(value: number): number {
  return Math.round(value * 10) / 10;
}
