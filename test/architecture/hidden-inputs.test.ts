import { spawnSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/launch/project-root.js';

/** What the import arrows cannot show: a rule that asks for the time, chance or its surroundings by a global. */
const HIDDEN_INPUTS = [
  'Date.now()',
  'new Date()',
  'new Date(2026, 0, 1)',
  'Math.random()',
  'process.env.TZ',
  'console.log(1)',
  "fetch('https://example.com')",
  'setTimeout(() => undefined, 1)',
  'performance.now()',
  'crypto.randomUUID()',
  'globalThis.process',
];

/** A date library is wrapped in rules/calendar, so a given instant may be one there; asking for one may not. */
const HIDDEN_IN_THE_CALENDAR = ['Date.now()', 'new Date()', 'Math.random()', 'process.env.TZ', 'performance.now()'];

describe('a rule has no hidden inputs', () => {
  let folder: string;
  let complaints: string;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'axlebook-lint-'));
    for (const path of ['biome.json', '.gitignore', 'test/architecture/no-chance-in-rules.grit']) {
      await cp(join(projectRoot(), path), join(folder, path), { recursive: true });
    }
    await plant(HIDDEN_INPUTS.map((expression, at) => [`src/rules/tire/planted-${at}.ts`, expression]));
    await plant(HIDDEN_IN_THE_CALENDAR.map((expression, at) => [`src/rules/calendar/planted-${at}.ts`, expression]));
    await plant([
      ['src/rules/tire/honest.ts', 'Math.max(1, 2)'],
      ['src/rules/calendar/honest.ts', 'new Date(Date.UTC(2026, 0, 1))'],
      ['src/http/honest.ts', 'new Date()'],
    ]);
    const tool = join(projectRoot(), 'node_modules/@biomejs/biome/bin/biome');
    const args = [tool, 'lint', '--error-on-warnings', '--reporter=github', '--max-diagnostics=none'];
    const done = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
    complaints = done.stdout + done.stderr;
  });

  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
  });

  it.each(HIDDEN_INPUTS.map((expression, at) => [expression, at]))('%s is refused in a rule', (_expression, at) => {
    expect(complaints).toContain(`/src/rules/tire/planted-${at}.ts`);
  });

  it.each(HIDDEN_IN_THE_CALENDAR.map((expression, at) => [expression, at]))(
    '%s is refused in the calendar too',
    (_expression, at) => {
      expect(complaints).toContain(`/src/rules/calendar/planted-${at}.ts`);
    },
  );

  it('a rule that computes with its arguments only is accepted', () => {
    expect(complaints).not.toContain('honest.ts');
  });

  async function plant(files: readonly (readonly [string, string])[]): Promise<void> {
    for (const [path, expression] of files) {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), `export const planted = ${expression};\n`);
    }
  }
});
