import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The folder that holds package.json and prisma/: two levels above src/launch when run by the tests, three above
 * dist/src/launch when run as built. Looked for rather than counted, so that both find the same migrations.
 */
export const projectRoot = (): string => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error('No package.json above the launch code: the project folder is incomplete.');
    folder = parent;
  }
  return folder;
};
