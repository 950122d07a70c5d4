import type { ComponentChildren } from 'preact';
import { islandPath } from '../assets/island-scripts.js';

interface IslandProps {
  /** The name of its file in `islands/`. */
  readonly name: string;
  /** What its script starts from; goes through JSON. */
  readonly data: unknown;
  /** What stands there without script, and until it has come. */
  readonly children: ComponentChildren;
}

/**
 * A part of a page that a script of ours takes over once it is there. The page must answer without it too. The data
 * lies beside it as JSON, which no browser runs, so that the policy against inline scripts holds.
 */
export function Island({ name, data, children }: IslandProps) {
  return (
    <>
      <div data-island={name}>{children}</div>
      <script type="application/json" data-island-data={name} dangerouslySetInnerHTML={{ __html: asJson(data) }} />
      <script type="module" src={islandPath(name)} />
    </>
  );
}

/** JSON that cannot end the element it stands in. */
function asJson(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
