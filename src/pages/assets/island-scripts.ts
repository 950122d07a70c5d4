import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Asset } from './asset.js';

/** Where the build puts the bundled islands: in dist/, whether this file runs from there or from src/. */
const FOLDERS = ['../../../islands/', '../../../dist/islands/'];

const NAME = /^([a-z-]+)-[A-Z0-9]{8}\.js$/;

let kept: ReadonlyMap<string, Asset> | null = null;

/** The scripts of the islands by name, as the build left them. Read once. */
export function islandScripts(): ReadonlyMap<string, Asset> {
  kept ??= read();
  return kept;
}

/** Where the script of an island is served; the name is that of its file in `islands/`. */
export function islandPath(name: string): string {
  return islandAsset(name).path;
}

export function islandAsset(name: string): Asset {
  const script = islandScripts().get(name);
  if (script === undefined) throw new Error(`No island "${name}" was built: is it in src/pages/islands?`);
  return script;
}

function read(): ReadonlyMap<string, Asset> {
  const places = FOLDERS.map((place) => fileURLToPath(new URL(place, import.meta.url)));
  const folder = places.find(existsSync);
  if (folder === undefined) throw new Error('The scripts of the pages have not been built: node src/launch/up.mjs');
  return new Map(
    readdirSync(folder).flatMap((file): [string, Asset][] => {
      const [, name] = NAME.exec(file) ?? [];
      if (name === undefined) return [];
      const body = readFileSync(`${folder}${file}`, 'utf8');
      return [[name, { path: `/assets/${file}`, mediaType: 'text/javascript; charset=utf-8', body }]];
    }),
  );
}
