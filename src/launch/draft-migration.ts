import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { schemaSql } from './migrate.js';
import { startPostgres } from './postgres.js';
import { projectRoot } from './project-root.js';

/**
 * `npm run draft-migration -- <name>`: writes the next folder of `prisma/migrations` from what has changed in
 * `prisma/schema.prisma` since the copy beside the last one. Only a draft: checks, row level security, rights and the
 * moving of old rows are for its author to add.
 */
const name = process.argv[2] ?? '';
if (!/^[a-z][a-z0-9_]*$/.test(name)) {
  console.error('Give the migration a name in small letters: npm run draft-migration -- trailer_color');
  process.exit(1);
}

const migrations = join(projectRoot(), 'prisma', 'migrations');
const entries = await readdir(migrations, { withFileTypes: true });
const last = entries
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort()
  .at(-1);
const before = last && (await readFile(join(migrations, last, 'schema.prisma'), 'utf8'));
const schema = await readFile(join(projectRoot(), 'prisma', 'schema.prisma'), 'utf8');

const scratch = await mkdtemp(join(tmpdir(), 'axlebook-draft-'));
const server = await startPostgres(scratch, { throwAway: true });
try {
  const sql = await schemaSql(server.url, schema, before);
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
  const folder = join(migrations, `${stamp}_${name}`);
  await mkdir(folder);
  await writeFile(join(folder, 'migration.sql'), sql);
  await writeFile(join(folder, 'schema.prisma'), schema);
  console.log(`${folder}\n\n${sql}`);
} finally {
  await server.stop();
  await rm(scratch, { recursive: true, force: true });
}
