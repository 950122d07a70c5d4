import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { projectRoot } from '../../src/launch/project-root.js';

/** One whole service in a process of its own, as `npm start` runs it. */
export interface Service {
  readonly process: ChildProcess;
  readonly address: string;
  /** All it has printed so far. */
  readonly said: () => string;
  /** Resolves when it says it is ready; rejects with what it printed when it ends instead. */
  readonly ready: Promise<void>;
  /** Its exit code, once it has ended; null when a signal ended it. */
  readonly ended: Promise<number | null>;
}

/** Compiles what `npm start` would run. Does nothing when that is up to date. */
export const buildService = async (): Promise<void> => {
  await promisify(execFile)(process.execPath, ['src/launch/up.mjs', '--installed'], {
    cwd: projectRoot(),
    timeout: 300_000,
  });
};

/** Starts it on a free port. `settings` are environment variables; nothing else of them comes from the test's own. */
export const startService = async (settings: Record<string, string>): Promise<Service> => {
  const port = settings.PORT ?? String(await freePort());
  const main = join(projectRoot(), 'dist', 'src', 'main.js');
  const child = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', main], {
    env: { PATH: process.env.PATH, LOG_LEVEL: 'warn', ...settings, PORT: port },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return watch(child, `http://127.0.0.1:${port}`);
};

/** Reads what a started service prints, and tells from that when it is ready. */
export const watch = (child: ChildProcess, address: string): Service => {
  let text = '';
  const ended = new Promise<number | null>((done) => child.once('close', (code) => done(code)));
  const ready = new Promise<void>((done, fail) => {
    const listen = (chunk: Buffer): void => {
      text += chunk.toString();
      if (text.includes('Axlebook is ready')) done();
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    void ended.then((code) => fail(new Error(`The service ended with ${code} before it was ready:\n${text}`)));
  });
  // Whoever only waits for the end must not be troubled by a start that fails as expected.
  ready.catch(() => undefined);
  return { process: child, address, said: () => text, ready, ended };
};

export const freePort = (): Promise<number> =>
  new Promise((done, fail) => {
    const server = createServer();
    server.once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address ? address.port : 0));
    });
  });
