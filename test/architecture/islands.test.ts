import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bundleIslands } from '../../src/launch/island-bundles.js';
import { projectRoot } from '../../src/launch/project-root.js';

/** What is left of the first view's 60 KB once page and stylesheet have come; load check, the largest, holds the whole. */
const MOST_BYTES = 48 * 1024;

describe('the islands', () => {
  let folder: string;

  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'axlebook-islands-'));
  });

  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('are bundled, each small enough for a poor signal', async () => {
    const names = await bundleIslands(projectRoot(), join(folder, 'out'));
    for (const name of names) {
      expect(name).toMatch(/^[a-z-]+-[A-Z0-9]{8}\.js$/);
      const packed = brotliCompressSync(await readFile(join(folder, 'out', name)));
      expect(packed.length, name).toBeLessThan(MOST_BYTES);
    }
  });

  it('are named anew when they change, and the old one goes', async () => {
    await plant('console.log("before");');
    const before = await bundleIslands(folder, join(folder, 'out'));
    await plant('console.log("after");');
    const after = await bundleIslands(folder, join(folder, 'out'));
    expect(after).toHaveLength(1);
    expect(after).not.toEqual(before);
    await expect(readFile(join(folder, 'out', before[0] ?? ''))).rejects.toThrow('ENOENT');
  });

  it.each([
    ['a use case', "import { x } from '../../use-cases/planted.js'; console.log(x);"],
    ['the store, behind a word of the pages', "import { x } from '../words/planted.js'; console.log(x);"],
    ['a file of the assets', "import { x } from '../assets/planted.js'; console.log(x);"],
    ['a package of the server', "import { z } from 'zod'; console.log(z);"],
  ])('are refused when they reach for %s', async (_what, says) => {
    await plant(says);
    await expect(bundleIslands(folder, join(folder, 'out'))).rejects.toThrow('An island imports what only the server');
  });

  it('are refused when they reach for a module of Node', async () => {
    await plant("import { readFileSync } from 'node:fs'; console.log(readFileSync);");
    await expect(bundleIslands(folder, join(folder, 'out'))).rejects.toThrow('node:fs');
  });

  /** A project of one island, and of what it may reach for. */
  async function plant(says: string): Promise<void> {
    const files = {
      'src/pages/islands/planted.ts': says,
      'src/pages/words/planted.ts': "export { x } from '../../store/planted.js';",
      'src/pages/assets/planted.ts': 'export const x = 1;',
      'src/use-cases/planted.ts': 'export const x = 1;',
      'src/store/planted.ts': 'export const x = 1;',
    };
    for (const [file, content] of Object.entries(files)) {
      await mkdir(join(folder, file, '..'), { recursive: true });
      await writeFile(join(folder, file), content);
    }
    await symlink(join(projectRoot(), 'node_modules'), join(folder, 'node_modules')).catch(() => undefined);
    await cp(join(projectRoot(), 'tsconfig.json'), join(folder, 'tsconfig.json'));
  }
});
