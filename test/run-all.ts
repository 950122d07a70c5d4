import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/**
 * `npm test`: every check and every test, each as a step that says its name, and a closing line with the counts.
 * All steps run even when one fails, so that one run shows everything there is to mend. A check counts as one.
 */

interface Counts {
  readonly passed: number;
  readonly failed: number;
}

const NODE = process.execPath;
const NODE_OPTIONS = ['--disable-warning=ExperimentalWarning'];

const check = async (title: string, script: string, ...args: string[]): Promise<Counts> => {
  announce(title);
  const code = await run(NODE, [...NODE_OPTIONS, join('node_modules', script), ...args]);
  return code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
};

const vitest = async (title: string, ...args: string[]): Promise<Counts> => {
  announce(title);
  const folder = mkdtempSync(join(tmpdir(), 'axlebook-report-'));
  try {
    const report = join(folder, 'report.json');
    const code = await run(NODE, [
      ...[...NODE_OPTIONS, 'node_modules/vitest/vitest.mjs', 'run', '--config', 'test/vitest.config.ts', ...args],
      ...['--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    ]);
    return counted(report, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** A run that ends badly without a failed test (a file that does not load, no report at all) still counts as failed. */
const counted = (report: string, code: number | null): Counts => {
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { numPassedTests: passed, numFailedTests: failed } = JSON.parse(readFileSync(report, 'utf8')) as {
    numPassedTests: number;
    numFailedTests: number;
  };
  return { passed, failed: code !== 0 && failed === 0 ? 1 : failed };
};

const CHROMIUM_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const CHROMIUM_ON_MACOS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * Finds a Chromium for the tests that open every page, or installs Debian's when it is missing and we may. Tells the
 * tests by CHROMIUM_PATH. Ends the run when there is none: a run without them would say "passed" of less than all.
 */
const ensureChromium = async (): Promise<void> => {
  announce('Chromium');
  let path = findChromium();
  if (path === undefined && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('None found; installing Debian’s, because this is root: apt-get install chromium');
    const quiet = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    await run('apt-get', ['update', '-qq'], quiet);
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet);
    path = findChromium();
  }
  if (path === undefined) {
    console.error('The page tests need Chromium, and none was found. Either of these helps:');
    console.error('  sudo apt-get install chromium                  (Debian, Ubuntu; npm test does it itself as root)');
    console.error('  CHROMIUM_PATH=/path/to/chromium npm test       (any Chromium or Chrome already on this machine)');
    return finish({ passed: 0, failed: 1 });
  }
  process.env.CHROMIUM_PATH = path;
  console.log(`${path}: ${spawnSync(path, ['--version'], { encoding: 'utf8' }).stdout?.trim()}`);
};

const findChromium = (): string | undefined => {
  const given = process.env.CHROMIUM_PATH;
  if (given) return existsSync(given) ? given : undefined;
  const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin', '/snap/bin'];
  const candidates = CHROMIUM_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...candidates, ...CHROMIUM_ON_MACOS].find((path) => existsSync(path));
};

const run = (command: string, args: readonly string[], env = process.env): Promise<number | null> =>
  new Promise((done) => {
    const child = spawn(command, args, { stdio: 'inherit', env });
    child.on('error', (error) => {
      console.error(error.message);
      done(1);
    });
    child.on('close', (code) => done(code));
  });

const announce = (title: string): void => console.log(`\n── ${title} ${'─'.repeat(Math.max(4, 90 - title.length))}\n`);

function finish({ passed, failed }: Counts): never {
  console.log(`\n${passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}

const ARROWS = ['--config', 'test/architecture/arrows.mjs', '--output-type', 'err-long', 'src', 'seeds'];
await ensureChromium();
const results = [
  await check('Lint and format', '@biomejs/biome/bin/biome', 'ci', '--error-on-warnings'),
  await check('Types', '@typescript/native/bin/tsc', '--noEmit', '-p', '.'),
  await check('Arrows between the folders', 'dependency-cruiser/bin/dependency-cruiser.mjs', ...ARROWS),
  await check('Dead code', 'knip/bin/knip.js'),
  await vitest('Migrations', 'test/migrations'),
  await vitest('Tests', '--exclude', 'test/migrations/**'),
];
finish({
  passed: results.reduce((sum, { passed }) => sum + passed, 0),
  failed: results.reduce((sum, { failed }) => sum + failed, 0),
});
