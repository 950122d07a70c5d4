import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Asset } from './asset.js';

/** The folder of the .css files: beside this file, or in src/ when this file has been compiled into dist/. */
const FOLDER = ['./', '../../../../src/pages/assets/']
  .map((place) => fileURLToPath(new URL(place, import.meta.url)))
  .find((place) => existsSync(`${place}app.css`));

let kept: Asset | null = null;

/**
 * The one stylesheet, its parts put in line in the order app.css names them. The name carries a hash of what is in it,
 * so that browsers may keep it for ever. Read once; no build step stands between the files and the page.
 */
export function stylesheet(): Asset {
  if (kept !== null) return kept;
  if (FOLDER === undefined) throw new Error('src/pages/assets/app.css is not where it should be');
  const written = readFileSync(`${FOLDER}app.css`, 'utf8').replace(
    /@import url\("\.\/([\w-]+\.css)"\) layer\(([\w-]+)\);/g,
    (_line, file: string, layer: string) => `@layer ${layer} {\n${readFileSync(`${FOLDER}${file}`, 'utf8')}}\n`,
  );
  const body = withoutRemarks(written);
  const hash = createHash('sha256').update(body).digest('hex').slice(0, 12);
  kept = { path: `/assets/axlebook-${hash}.css`, mediaType: 'text/css; charset=utf-8', body };
  return kept;
}

/** As browsers read it: remarks and indents are for us, and weigh a fifth of what a phone would wait for. */
function withoutRemarks(css: string): string {
  return css.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\s+/g, ' ');
}

export function stylesheetPath(): string {
  return stylesheet().path;
}
