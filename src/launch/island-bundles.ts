import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { build } from 'esbuild';

/** Where the islands lie: each file directly in it becomes one script, with everything it imports. */
const ISLANDS = 'src/pages/islands';

/** What may go to a browser: rules and pages, but for the pages' doors and files, and the packages these stand on. */
const FOR_BROWSERS =
  /^(src\/rules\/|src\/pages\/(?!assets\/)(?!.*\.controller\.)|node_modules\/(preact|idb|date-fns|@date-fns|@stdlib)\/)/;

/**
 * Bundles the scripts that run in the browser into `folder`, one file for each island, with a hash of its content in
 * its name, and removes those of before. Throws, naming the file, when an island reaches for what only the server has.
 */
export async function bundleIslands(root: string, folder: string): Promise<readonly string[]> {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: await islandsIn(join(root, ISLANDS)),
    // Said here, since a project's settings for the compiler may lie elsewhere in a test.
    jsx: 'automatic',
    jsxImportSource: 'preact',
    outdir: folder,
    entryNames: '[name]-[hash]',
    bundle: true,
    write: false,
    metafile: true,
    minify: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    legalComments: 'none',
    logLevel: 'silent',
  });
  const foreign = Object.keys(metafile.inputs).filter((file) => !FOR_BROWSERS.test(withinProject(file, root)));
  if (foreign.length > 0) {
    throw new Error(`An island imports what only the server may: ${foreign.join(', ')}. Hand it the value as data.`);
  }
  await mkdir(folder, { recursive: true });
  const names = outputFiles.map(({ path }) => basename(path));
  for (const [index, { contents }] of outputFiles.entries()) {
    // Written aside, then swapped: a service that starts meanwhile reads a whole file or none.
    const path = join(folder, names[index] as string);
    await writeFile(`${path}.${process.pid}`, contents);
    await rename(`${path}.${process.pid}`, path);
  }
  const stale = (await readdir(folder)).filter((name) => name.endsWith('.js') && !names.includes(name));
  await Promise.all(stale.map((name) => rm(join(folder, name), { force: true })));
  return names;
}

async function islandsIn(folder: string): Promise<string[]> {
  const files = await readdir(folder, { withFileTypes: true });
  return files.filter((file) => file.isFile()).map((file) => join(folder, file.name));
}

/** The path of a bundled file from the project's folder; packages may lie elsewhere, behind a link. */
function withinProject(file: string, root: string): string {
  const at = file.lastIndexOf('node_modules/');
  return at === -1 ? relative(root, join(root, file)) : file.slice(at);
}
