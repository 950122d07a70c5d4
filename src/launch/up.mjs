// Makes the project ready to run, so that `npm start` and `npm test` each work alone on a clean clone: installs what
// the lock file names, generates the database client, compiles. Runs on the machine's own Node, before anything is
// installed, and therefore imports nothing but Node itself. Steps whose inputs have not changed are skipped.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const STAMPS = join(ROOT, 'node_modules', '.axlebook');

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  fail(`Axlebook needs Node 20.19 or newer to start; this is ${process.versions.node}. Any current Node will do.`);
}

process.chdir(ROOT);
takeTurns();
// npm removes the whole folder first, and with it our note of what it holds: an interrupted install counts as none.
// Tests that start the service say --installed: nobody may pull away the packages they run on.
if (!process.argv.includes('--installed')) step('packages', ['package-lock.json'], 'node_modules', install);
const sources = filesUnder('src').filter((file) => !file.includes('/generated/'));
step('client', ['prisma/schema.prisma', 'package-lock.json'], 'src/store/generated/client.ts', generateClient);
step(
  'build',
  [...sources, ...filesUnder('seeds'), 'prisma/schema.prisma', 'tsconfig.json', 'package-lock.json'],
  'dist/src/main.js',
  compile,
);

/** Two starts at once on a fresh clone would install over each other; the second waits for the first to be ready. */
function takeTurns() {
  const lock = join(tmpdir(), `axlebook-up-${createHash('sha256').update(ROOT).digest('hex').slice(0, 16)}`);
  for (let waited = false; ; waited = true) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      process.on('exit', () => rmSync(lock, { force: true }));
      return;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    if (!isAlive(Number(readFileSync(lock, 'utf8')))) rmSync(lock, { force: true });
    else if (!waited) say('Waiting for another start that is installing or compiling here …');
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
  }
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

function install() {
  say('Installing the packages of package-lock.json (about half a minute) …');
  // The npm that runs us, or the one on the path when this file was started by hand.
  const npm = process.env.npm_execpath ? [process.execPath, process.env.npm_execpath] : ['npm'];
  // Packages that name a newer Node run on the one installed here; npm's fifty warnings about that would hide real ones.
  run(...npm, 'ci', '--loglevel=error', '--no-audit', '--no-fund');
}

function generateClient() {
  say('Generating the database client …');
  // A stand-in for Prisma's native engine, which only the migrate commands use: without it a download is attempted.
  const nothing = ['/bin/true', '/usr/bin/true'].find(existsSync);
  const environment = {
    PRISMA_SCHEMA_ENGINE_BINARY: nothing,
    CHECKPOINT_DISABLE: '1',
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
  };
  runQuietly(
    environment,
    'node_modules/prisma/build/index.js',
    'generate',
    '--no-hints',
    '--schema',
    'prisma/schema.prisma',
  );
}

/** Into a new folder, then swapped: a service that is running goes on reading whole files, and nothing stale stays. */
function compile() {
  say('Compiling …');
  const fresh = 'dist.new';
  const clear = () => rmSync(fresh, { recursive: true, force: true });
  clear();
  process.on('exit', clear);
  runQuietly({}, 'node_modules/@typescript/native/bin/tsc', '-p', 'src/launch/tsconfig.build.json', '--outDir', fresh);
  runQuietly({}, `${fresh}/src/launch/bundle-islands.js`, `${fresh}/islands`);
  rmSync('dist', { recursive: true, force: true });
  renameSync(fresh, 'dist');
}

/** Does `work` unless it was done before with the same inputs and its result is still there. */
function step(name, inputs, result, work) {
  const hash = createHash('sha256');
  for (const input of inputs) hash.update(input).update('\0').update(readFileSync(input)).update('\0');
  const digest = hash.digest('hex');
  const stamp = join(STAMPS, name);
  if (existsSync(result) && existsSync(stamp) && readFileSync(stamp, 'utf8') === digest) return;
  work();
  mkdirSync(STAMPS, { recursive: true });
  writeFileSync(stamp, digest);
}

function filesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

/** Runs a script of node_modules under the pinned Node; its output is shown only when it fails. */
function runQuietly(environment, ...command) {
  const node = join(ROOT, 'node_modules', 'node', 'bin', 'node');
  const done = spawnSync(node, command, { encoding: 'utf8', env: { ...process.env, ...environment } });
  if (done.status === 0) return;
  fail(`${done.stdout ?? ''}${done.stderr ?? ''}${done.error?.message ?? ''}\nThis step failed: ${command.join(' ')}`);
}

function run(command, ...args) {
  const done = spawnSync(command, args, { stdio: 'inherit' });
  if (done.status !== 0) fail(`This step failed: ${[command, ...args].join(' ')}`);
}

function say(text) {
  console.log(text);
}

function fail(text) {
  console.error(text);
  process.exit(1);
}
