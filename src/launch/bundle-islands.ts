import { join } from 'node:path';
import { bundleIslands } from './island-bundles.js';
import { projectRoot } from './project-root.js';

/** `bundle-islands FOLDER`: a step of the build, run by up.mjs. */
const [folder = 'dist/islands'] = process.argv.slice(2);
await bundleIslands(projectRoot(), join(projectRoot(), folder));
