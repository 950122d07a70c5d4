import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/launch/project-root.js';

interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string };
  /** The files of a circle; it is reported once, from whichever of them comes first. */
  readonly cycle?: readonly { readonly name: string }[];
}

interface Cruise {
  readonly modules: readonly { source: string }[];
  readonly summary: {
    readonly violations: readonly Violation[];
    readonly ruleSetUsed: { readonly forbidden: readonly { name: string }[] };
  };
}

/** One mistake for each rule: the file it is made in, and what that file would say. */
const MISTAKES: readonly { rule: string; file: string; says: string }[] = [
  { rule: 'rules-stay-pure', file: 'src/rules/tire/planted-node.ts', says: "import 'node:fs';" },
  { rule: 'rules-stay-pure', file: 'src/rules/tire/planted-date.ts', says: "import 'date-fns';" },
  { rule: 'rules-stay-pure', file: 'src/rules/flags/planted-type.ts', says: typeOf('../../config.js', 'Config') },
  { rule: 'calendar-wraps-date-fns-only', file: 'src/rules/calendar/planted-zod.ts', says: "import 'zod';" },
  { rule: 'statistics-wraps-distributions-only', file: 'src/rules/statistics/planted-zod.ts', says: "import 'zod';" },
  {
    rule: 'distributions-wrapped-once',
    file: 'src/use-cases/planted-normal.ts',
    says: "import '@stdlib/stats-base-dists-normal-cdf';",
  },
  {
    rule: 'rules-stay-pure',
    file: 'src/rules/tire/planted-normal.ts',
    says: "import '@stdlib/stats-base-dists-normal-cdf';",
  },
  { rule: 'toolbox-at-the-bottom', file: 'src/rules/units/planted-up.ts', says: "import '../load/planted.js';" },
  {
    rule: 'facts-above-units-and-calendar',
    file: 'src/rules/units/planted-fact.ts',
    says: "import '../facts/part.js';",
  },
  { rule: 'load-below-parts', file: 'src/rules/load/planted-part.ts', says: "import '../tire/planted.js';" },
  { rule: 'load-below-parts', file: 'src/rules/load/planted-envelope.ts', says: "import '../envelope/planted.js';" },
  { rule: 'envelope-above-load', file: 'src/rules/envelope/planted-part.ts', says: "import '../tire/planted.js';" },
  { rule: 'law-stands-on-the-toolbox', file: 'src/rules/law/planted-load.ts', says: "import '../load/planted.js';" },
  { rule: 'law-is-held-against-the-whole', file: 'src/rules/tire/planted-law.ts', says: "import '../law/planted.js';" },
  { rule: 'parts-know-no-other-part', file: 'src/rules/tire/planted-axle.ts', says: "import '../axle/planted.js';" },
  { rule: 'parts-below-the-whole', file: 'src/rules/tire/planted-whole.ts', says: "import '../trailer/planted.js';" },
  { rule: 'parts-below-the-whole', file: 'src/rules/axle/planted-assess.ts', says: "import '../assess.js';" },
  {
    rule: 'trailer-below-the-judgements',
    file: 'src/rules/trailer/planted-flag.ts',
    says: "import '../flags/planted.js';",
  },
  { rule: 'store-and-mail-look-down', file: 'src/store/planted-up.ts', says: "import '../use-cases/caller.js';" },
  { rule: 'store-and-mail-look-down', file: 'src/mail/planted-type.ts', says: typeOf('../http/clock.js', 'Clock') },
  { rule: 'store-and-mail-stand-apart', file: 'src/mail/planted-store.ts', says: "import '../store/planted.js';" },
  {
    rule: 'use-cases-do-not-know-their-caller',
    file: 'src/use-cases/trips/planted-up.ts',
    says: "import '../../http/clock.js';",
  },
  { rule: 'use-cases-stand-alone', file: 'src/use-cases/trips/planted-other.ts', says: "import './planted.js';" },
  { rule: 'doors-use-use-cases', file: 'src/pages/planted-store.ts', says: "import '../store/planted.js';" },
  { rule: 'doors-use-use-cases', file: 'src/jobs/planted-mail.ts', says: "import '../mail/planted.js';" },
  { rule: 'doors-use-use-cases', file: 'src/http/planted-store.ts', says: "import '../store/planted.js';" },
  { rule: 'doors-stand-alone', file: 'src/api/planted-page.ts', says: "import '../pages/planted.js';" },
  {
    rule: 'islands-run-in-the-browser',
    file: 'src/pages/islands/planted-use-case.ts',
    says: "import '../../use-cases/trips/planted.js';",
  },
  { rule: 'islands-run-in-the-browser', file: 'src/pages/islands/planted-node.ts', says: "import 'node:fs';" },
  {
    rule: 'islands-run-in-the-browser',
    file: 'src/pages/islands/planted-door.ts',
    says: "import '../gate/gate.controller.js';",
  },
  { rule: 'http-below-the-doors', file: 'src/http/planted-page.ts', says: "import '../pages/planted.js';" },
  { rule: 'launch-stands-beside', file: 'src/launch/planted-rule.ts', says: "import '../rules/assess.js';" },
  { rule: 'only-main-launches', file: 'src/use-cases/planted-launch.ts', says: "import '../launch/planted.js';" },
  {
    rule: 'generated-client-stays-in-the-store',
    file: 'src/use-cases/planted-prisma.ts',
    says: "import '@prisma/client';",
  },
  {
    rule: 'service-does-not-lean-on-tests',
    file: 'src/pages/planted-test.ts',
    says: "import '../../test/planted.js';",
  },
  { rule: 'service-runs-without-development-packages', file: 'src/http/planted-dev.ts', says: "import 'fast-check';" },
  { rule: 'every-import-is-found', file: 'src/http/planted-gone.ts', says: "import './no-such-file.js';" },
  { rule: 'no-cycles', file: 'src/http/planted-round.ts', says: "import './planted-and-round.js';" },
];

/** Files the mistakes import, so that they fail for their arrow and not because nothing is there. */
const TARGETS = {
  ...Object.fromEntries(
    [
      'rules/load',
      'rules/envelope',
      'rules/law',
      'rules/tire',
      'rules/axle',
      'rules/trailer',
      'rules/flags',
      'store',
      'mail',
      'pages',
      'launch',
    ].map((folder) => [`src/${folder}/planted.ts`, 'export {};']),
  ),
  'test/planted.ts': 'export {};',
  'src/http/planted-and-round.ts': "import './planted-round.js';",
  'src/use-cases/trips/planted.ts':
    "import { Injectable } from '@nestjs/common';\n@Injectable()\nexport class Planted {}",
};

const ROOT = projectRoot();

describe('the arrows between the folders', () => {
  let spoiled: string;
  let found: Cruise;

  beforeAll(async () => {
    spoiled = await mkdtemp(join(tmpdir(), 'axlebook-arrows-'));
    for (const path of ['src', 'package.json', 'tsconfig.json', 'test/architecture/arrows.mjs']) {
      await cp(join(ROOT, path), join(spoiled, path), { recursive: true });
    }
    await symlink(join(ROOT, 'node_modules'), join(spoiled, 'node_modules'));
    const planted = MISTAKES.map(({ file, says }): [string, string] => [file, says]);
    for (const [file, says] of [...Object.entries(TARGETS), ...planted]) {
      await mkdir(dirname(join(spoiled, file)), { recursive: true });
      await writeFile(join(spoiled, file), `${says}\n`);
    }
    found = await cruise(spoiled);
  });

  afterAll(async () => {
    await rm(spoiled, { recursive: true, force: true });
  });

  it.each(MISTAKES)('$rule catches $file', ({ rule, file }) => {
    const caught = found.summary.violations.filter(
      ({ from, cycle }) => from === file || cycle?.some(({ name }) => name === file),
    );
    expect(caught.map((each) => each.rule.name)).toContain(rule);
  });

  it('no rule goes without a planted mistake', () => {
    const rules = found.summary.ruleSetUsed.forbidden.map(({ name }) => name).sort();
    expect([...new Set(MISTAKES.map(({ rule }) => rule))].sort()).toEqual(rules);
  });

  it('the tree as it is keeps them all, and every file of it was read', async () => {
    const { modules, summary } = await cruise(ROOT);
    const read = new Set(modules.map(({ source }) => source));
    // A check that reads nothing also passes: the wrong compiler makes the tool skip every TypeScript file.
    expect((await sourceFiles()).filter((file) => !read.has(file))).toEqual([]);
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`)).toEqual([]);
  });
});

function typeOf(path: string, name: string): string {
  return `import type { ${name} } from '${path}';\nexport type Planted = ${name};`;
}

async function cruise(folder: string): Promise<Cruise> {
  const tool = join(ROOT, 'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs');
  const folders = (await readdir(folder)).filter((name) => ['src', 'seeds'].includes(name));
  const args = [tool, '--config', 'test/architecture/arrows.mjs', '--output-type', 'json', ...folders];
  const { stdout } = await promisify(execFile)(process.execPath, args, { cwd: folder, maxBuffer: 2 ** 28 });
  return JSON.parse(stdout) as Cruise;
}

async function sourceFiles(): Promise<string[]> {
  const files: string[] = [];
  for (const folder of ['src', 'seeds']) {
    for (const entry of await readdir(join(ROOT, folder), { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name).slice(ROOT.length + 1);
      if (entry.isFile() && /\.(tsx?|mjs)$/.test(path) && !path.includes('/generated/')) files.push(path);
    }
  }
  return files;
}
